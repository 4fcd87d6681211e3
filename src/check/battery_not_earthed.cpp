// SPDX-License-Identifier: MIT
// A machine with earths whose battery has no strap to them, or has it at the wrong pole: rectifiers and control units
// do not live through that.
#include "check/rules.h"

namespace loomfolio::rules {

void battery_not_earthed(const Facts& facts, Diagnostics& findings) {
  if (facts.build.earths.empty()) return;
  const std::vector<bool> bolted = reach(facts.paths, {facts.paths.frame},
                                         [&](const Bridge& bridge) { return is_plain_metal(facts.build, bridge); });
  each_inside(facts.build, [&](InsideRef ref, const Part& part, const Inside& inside) {
    if (inside.type != InsideType::source || inside.nodes.size() < 2) return;
    const std::vector<PathPoint> poles = facts.paths.points(facts.build, ref);
    const std::size_t earthed = facts.build.electrics.is_positive_earth ? 0 : 1;
    if (bolted[static_cast<std::size_t>(poles[earthed])]) return;
    if (facts.paths.is_live(poles[earthed])) return;  // in series with another
    Diagnostic finding = make_diagnostic(DiagnosticId::battery_not_earthed, part.origin.table,
                                         "the earthed pole of " + say_part(part) + " is wired to no earth",
                                         "add the earth strap from the battery to an earth on engine or frame");
    if (bolted[static_cast<std::size_t>(poles[1 - earthed])]) {
      finding.severity = Severity::error;
      finding.message = "the " + std::string(earthed == 0 ? "negative" : "positive") + " pole of " + say_part(part) +
                        " is wired to the frame, but the " + (earthed == 0 ? "positive" : "negative") +
                        " one is the earthed pole of this machine";
      finding.hint = "change the battery's cables over, or set `electrics.earth`";
    }
    findings.push_back(std::move(finding));
  });
}

}  // namespace loomfolio::rules
