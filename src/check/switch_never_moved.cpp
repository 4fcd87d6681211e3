// SPDX-License-Identifier: MIT
// A switch that no situation moves: what it does is neither solved nor shown.
#include "check/rules.h"

namespace loomfolio::rules {

void switch_never_moved(const Facts& facts, Diagnostics& findings) {
  if (facts.build.situations.empty()) return;
  each_inside(facts.build, [&](InsideRef ref, const Part& part, const Inside& inside) {
    if (inside.type != InsideType::switch_ || !is_wired(facts, ref)) return;
    for (const Situation& situation : facts.build.situations)
      for (const Setting& setting : situation.settings)
        if (setting.actuator == ref && setting.position != inside.rest_position) return;
    findings.push_back(make_diagnostic(DiagnosticId::switch_never_moved, part.origin.table,
                                       "switch " + say_inside(facts.build, ref) + " is moved by no situation",
                                       "add a situation that moves it, with what should then be on"));
  });
}

}  // namespace loomfolio::rules
