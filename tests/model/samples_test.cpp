// SPDX-License-Identifier: MIT
// Every sample is read without a finding, and every variant of it passes every rule without an error.
#include <doctest/doctest.h>

#include "check/check.h"
#include "model/shipped.h"

using namespace loomfolio;
using test::shipped;
using test::source_folder;

namespace {

std::vector<std::string> sample_files() {
  std::vector<std::string> found;
  for (const std::string folder : {"/samples", "/tests/machines"})
    for (const std::string& name : DiskFiles().list(source_folder + folder))
      if (name.ends_with(".toml")) found.push_back(source_folder + folder + "/" + name);
  return found;
}

}  // namespace

TEST_CASE("every sample is read without a finding and has no error") {
  CHECK(sample_files().size() >= 8);
  for (const std::string& path : sample_files()) {
    CAPTURE(path);
    std::string why;
    const auto text = DiskFiles().read(path, why);
    REQUIRE(text);
    Sources sources = shipped().sources;
    Diagnostics findings;
    const Project project = read_spec(path, *text, shipped().library, sources, findings);
    CHECK(print_diagnostics(findings, sources, Paint::plain) == "");
    for (const Build& build : project.builds) {
      Diagnostics errors;
      for (const Diagnostic& found : check_build({build, solve_all(build)}))
        if (found.severity == Severity::error) errors.push_back(found);
      CAPTURE(build.variant);
      CHECK(print_diagnostics(errors, sources, Paint::plain) == "");
    }
  }
}
