// SPDX-License-Identifier: MIT
// A relay's contact that carries more than it is made for: it welds.
#include <cmath>

#include "check/rules.h"

namespace loomfolio::rules {

void contact_overloaded(const Facts& facts, Diagnostics& findings) {
  each_inside(facts.build, [&](InsideRef ref, const Part& part, const Inside& inside) {
    if (inside.type != InsideType::contact || !inside.rating) return;
    const Peak peak = greatest_amperes(facts, ref);
    if (!peak.situation || peak.amperes.number() <= inside.rating->number() * rating_tolerance) return;
    findings.push_back(make_diagnostic(DiagnosticId::contact_overloaded, part.origin.table,
                                       "contact " + say_inside(facts.build, ref) + " carries " + say(peak.amperes) +
                                           " in " + say_situation(*peak.situation) + "; it is made for " +
                                           say(*inside.rating),
                                       "fit a relay of a higher rating, or split the load"));
  });
}

}  // namespace loomfolio::rules
