// SPDX-License-Identifier: MIT
#include "sample_prints.h"

#include <doctest/doctest.h>

#include "memory_files.h"

namespace loomfolio {

std::string sample_text(const std::string& name) {
  std::string why;
  const auto text = DiskFiles().read(std::string(LOOMFOLIO_SOURCE_FOLDER) + "/samples/" + name + ".toml", why);
  REQUIRE(text.has_value());
  return *text;
}

const std::string& sample_pdf(const std::string& name) {
  static std::map<std::string, std::string> printed;
  if (const auto known = printed.find(name); known != printed.end()) return known->second;
  MemoryFiles files;
  files.held["spec.toml"] = sample_text(name);
  REQUIRE(run_with(files, {"print", "spec.toml"}).code == 0);
  return printed[name] = files.held.at("spec.pdf");
}

}  // namespace loomfolio
