// SPDX-License-Identifier: MIT
// A switch that carries more than it is made for: its contacts burn.
#include <cmath>

#include "check/rules.h"

namespace loomfolio::rules {

void switch_overloaded(const Facts& facts, Diagnostics& findings) {
  each_inside(facts.build, [&](InsideRef ref, const Part& part, const Inside& inside) {
    if (inside.type != InsideType::switch_ || !inside.rating) return;
    const Peak peak = greatest_amperes(facts, ref);
    if (!peak.situation || peak.amperes.number() <= inside.rating->number() * rating_tolerance) return;
    findings.push_back(make_diagnostic(DiagnosticId::switch_overloaded, part.origin.table,
                                       "switch " + say_inside(facts.build, ref) + " carries " + say(peak.amperes) +
                                           " in " + say_situation(*peak.situation) + "; it is made for " +
                                           say(*inside.rating),
                                       "put a relay in its place, and let the switch work the relay"));
  });
}

}  // namespace loomfolio::rules
