// SPDX-License-Identifier: MIT
// What findings say beside their place: on files of the suite, which compares ids and lines alone.
#include "check/check.h"
#include "doctest/doctest.h"
#include "model/shipped.h"

using namespace loomfolio;
using test::shipped;
using test::source_folder;

namespace {

/// The findings of that id in a suite file of check/.
Diagnostics findings_of(const std::string& file, DiagnosticId id) {
  std::string why;
  const auto text = DiskFiles().read(source_folder + "/tests/suite/check/" + file, why);
  REQUIRE_MESSAGE(text, why);
  Diagnostics findings;
  Sources sources = shipped().sources;
  const Project project = read_spec(file, *text, shipped().library, sources, findings);
  const Build& build = project.builds.front();
  Diagnostics found = check_build({build, solve_all(build)});
  std::erase_if(found, [&](const Diagnostic& finding) { return finding.id != id; });
  return found;
}

bool has_note(const Diagnostic& finding, const std::string& text) {
  return std::any_of(finding.notes.begin(), finding.notes.end(),
                     [&](const DiagnosticNote& note) { return note.message == text; });
}

}  // namespace

TEST_CASE("a sneak path is named wire by wire, to the supply and to earth") {
  const Diagnostics findings = findings_of("sneak-path.toml", DiagnosticId::sneak_path);
  REQUIRE(findings.size() == 2);
  // The tail lamp is fed from the stop lamp's side, and returns through the plate lamp to its own earth.
  CHECK(has_note(findings[0], "its way to the supply: `tail.stop`, wire `3`, `button`, wires `6`, `2`, `fuse`, wire `1`"));
  CHECK(has_note(findings[0], "its way to earth: wires `9`, `10`, `plate`, wires `11`, `5`"));
}

TEST_CASE("more than one steady state: every relay that may stand either way is named") {
  const Diagnostics findings = findings_of("situation-several-states.toml", DiagnosticId::situation_unsettled);
  REQUIRE(findings.size() == 1);
  CHECK(findings[0].message.find("more than one steady state at `left.coil`, `right.coil`") != std::string::npos);
}
