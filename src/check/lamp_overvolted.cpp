// SPDX-License-Identifier: MIT
// A lamp above its volts: five per cent more halves its life (UN R37 lamp practice). Charging volts alone are seven
// per cent above a headlamp's test volts and are let pass.
#include <cmath>

#include "check/rules.h"

namespace loomfolio::rules {

constexpr double overvolted_share = 1.12;  ///< of its test volts

void lamp_overvolted(const Facts& facts, Diagnostics& findings) {
  each_inside(facts.build, [&](InsideRef ref, const Part& part, const Inside& inside) {
    if (inside.type != InsideType::lamp || !inside.at_voltage) return;
    const Peak peak = greatest_volts(facts, ref);
    if (!peak.situation || peak.volts.number() <= inside.at_voltage->number() * overvolted_share) return;
    findings.push_back(make_diagnostic(DiagnosticId::lamp_overvolted, part.origin.table,
                                       "lamp " + say_inside(facts.build, ref) + " has " + say(peak.volts) + " in " +
                                           say_situation(*peak.situation) + "; it is tested at " +
                                           say(*inside.at_voltage),
                                       "see the regulator, or fit a lamp for these volts"));
  });
}

}  // namespace loomfolio::rules
