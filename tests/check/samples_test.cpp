// SPDX-License-Identifier: MIT
// The street single is held to more than the other machines: no finding of any severity, and the size that it promises.
#include "check/check.h"
#include "doctest/doctest.h"
#include "model/shipped.h"

using namespace loomfolio;
using test::shipped;
using test::source_folder;

namespace {

Build read_street_single(Sources& sources) {
  std::string why;
  const std::string path = source_folder + "/samples/street-single.toml";
  const auto text = DiskFiles().read(path, why);
  REQUIRE(text);
  Diagnostics findings;
  const Project project = read_spec("street-single.toml", *text, shipped().library, sources, findings);
  REQUIRE(print_diagnostics(findings, sources, Paint::plain) == "");
  REQUIRE(project.builds.size() == 1);
  return project.builds.front();
}

}  // namespace

TEST_CASE("the street single is a whole machine, and no rule finds anything in it") {
  Sources sources = shipped().sources;
  const Build build = read_street_single(sources);
  CHECK(build.parts.size() >= 45);
  CHECK(build.wires.size() >= 110);
  CHECK(build.situations.size() >= 12);
  for (const Wire& wire : build.wires) CHECK_MESSAGE(wire.length.has_value(), wire.id);
  for (const Situation& situation : build.situations) CHECK_MESSAGE(!situation.expectations.empty(), situation.name);
  CHECK(print_diagnostics(check_build({build, solve_all(build)}), sources, Paint::plain) == "");
}

TEST_CASE("a cut wire of each function of the street single is noticed") {
  Sources sources = shipped().sources;
  const Build whole = read_street_single(sources);
  for (const std::string id : {"9", "12", "26", "34", "54", "74", "85", "103", "119", "141", "152", "174"}) {
    Build cut = whole;
    std::erase_if(cut.wires, [&](const Wire& wire) { return wire.id == id; });
    REQUIRE_MESSAGE(cut.wires.size() + 1 == whole.wires.size(), id);
    bool noticed = false;
    for (const Diagnostic& finding : check_build({cut, solve_all(cut)}))
      noticed = noticed || finding.severity != Severity::note;
    CHECK_MESSAGE(noticed, id);
  }
}
