// SPDX-License-Identifier: MIT
// A diode that carries more than it is made for.
#include <cmath>

#include "check/rules.h"

namespace loomfolio::rules {

void diode_overloaded(const Facts& facts, Diagnostics& findings) {
  each_inside(facts.build, [&](InsideRef ref, const Part& part, const Inside& inside) {
    if (inside.type != InsideType::diode || !inside.rating) return;
    const Peak peak = greatest_amperes(facts, ref);
    if (!peak.situation || peak.amperes.number() <= inside.rating->number() * rating_tolerance) return;
    findings.push_back(make_diagnostic(DiagnosticId::diode_overloaded, part.origin.table,
                                       "diode " + say_inside(facts.build, ref) + " carries " + say(peak.amperes) +
                                           " in " + say_situation(*peak.situation) + "; it is made for " +
                                           say(*inside.rating),
                                       "fit a diode of a higher rating"));
  });
}

}  // namespace loomfolio::rules
