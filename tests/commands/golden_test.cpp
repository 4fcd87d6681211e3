// SPDX-License-Identifier: MIT
// Every page of the samples as text, compared with tests/golden/<sample>/sheet-NN.txt to the letter. `sh tests/bless
// SAMPLE` accepts what one sample prints now, afresh; look at its pages first. Here they are printed with the drawings of the sample's
// PDF, which was drawn afresh: so no page changes by being printed again either.
#include <doctest/doctest.h>

#include "base/text.h"
#include "memory_files.h"
#include "render/attachments.h"
#include "sample_prints.h"

using namespace loomfolio;

namespace {

const std::string source = LOOMFOLIO_SOURCE_FOLDER;

/// The first line in which they differ, both ways.
std::string first_difference(const std::string& expected, const std::string& actual) {
  const auto a = split(expected, '\n'), b = split(actual, '\n');
  for (std::size_t i = 0; i < std::max(a.size(), b.size()); ++i) {
    const std::string left = i < a.size() ? a[i] : "(no line)", right = i < b.size() ? b[i] : "(no line)";
    if (left != right) return "line " + std::to_string(i + 1) + "\n  golden: " + left + "\n  now:    " + right;
  }
  return {};
}

}  // namespace

TEST_CASE("every page of the samples is as it was accepted") {
  const DiskFiles disk;
  int samples = 0;
  for (const std::string& name : disk.list(source + "/tests/golden")) {
    CAPTURE(name);
    ++samples;
    MemoryFiles files;
    std::string why;
    const auto places = extract_attachment(sample_pdf(name), "placement.json");
    REQUIRE(places.has_value());
    files.held["spec.toml"] = sample_text(name);
    files.held["places"] = *places;
    REQUIRE(run_with(files, {"print", "spec.toml", "--placement", "places", "-o", "sheet.txt"}).code == 0);
    CHECK(files.held.at("places") == *places);
    files.held.erase("places");
    const std::string folder = source + "/tests/golden/" + name;
    CHECK(files.held.size() - 1 == disk.list(folder).size());
    std::string all;
    for (const auto& [path, content] : files.held) {
      if (path == "spec.toml") continue;
      all += content;
      CAPTURE(path);
      CHECK(first_difference(disk.read(folder + "/" + path, why).value_or(""), content) == "");
    }
    // Its longest story, which fits a sheet in the printed face.
    if (name == "street-single") CHECK(all.find("Situation 15: ") != std::string::npos);
  }
  CHECK(samples >= 3);
}
