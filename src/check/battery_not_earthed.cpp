// SPDX-License-Identifier: MIT
// A machine with earths whose battery has no strap to them.

#include "check/rules.h"

namespace loomfolio::rules {

void battery_not_earthed(const Facts& facts, Diagnostics& findings) {
  if (facts.build.earths.empty()) return;
  const std::vector<bool> bolted = reach(facts.paths, {facts.paths.frame},
                                         [&](const Bridge& bridge) { return is_plain_metal(facts.build, bridge); });
  each_inside(facts.build, [&](InsideRef ref, const Part& part, const Inside& inside) {
    if (inside.type != InsideType::source || inside.nodes.size() < 2) return;
    const std::vector<PathPoint> poles = facts.paths.points(facts.build, ref);
    const PathPoint pole = poles[facts.build.electrics.is_positive_earth ? 0 : 1];
    if (bolted[static_cast<std::size_t>(pole)]) return;
    findings.push_back(make_diagnostic(DiagnosticId::battery_not_earthed, part.origin.table,
                                       "the earthed pole of " + say_part(part) + " is wired to no earth",
                                       "add the earth strap from the battery to an earth on engine or frame"));
  });
}

}  // namespace loomfolio::rules
