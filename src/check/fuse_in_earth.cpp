// SPDX-License-Identifier: MIT
// A fuse in the earth side: when it opens, the machine is dead yet live. Only live wires are fused (46 CFR 111.05-37).
#include "check/rules.h"

namespace loomfolio::rules {

void fuse_in_earth(const Facts& facts, Diagnostics& findings) {
  each_inside(facts.build, [&](InsideRef ref, const Part& part, const Inside& inside) {
    if (inside.type != InsideType::fuse) return;
    for (const PathPoint point : facts.paths.points(facts.build, ref)) {
      if (!facts.paths.is_earthed(point)) continue;
      findings.push_back(make_diagnostic(DiagnosticId::fuse_in_earth, part.origin.table,
                                         "fuse " + say_inside(facts.build, ref) + " stands in an earth wire",
                                         "move it to the live side, next to the battery"));
      return;
    }
  });
}

}  // namespace loomfolio::rules
