// SPDX-License-Identifier: MIT
// A lamp, load or motor of a 6 V machine in a 12 V one, or the other way about.
#include "check/rules.h"

namespace loomfolio::rules {

constexpr double least_rated_share = 0.75, greatest_rated_share = 1.35;  ///< of the machine's nominal volts

void rated_for_other_volts(const Facts& facts, Diagnostics& findings) {
  const Volts nominal = facts.build.electrics.nominal;
  each_inside(facts.build, [&](InsideRef ref, const Part& part, const Inside& inside) {
    const bool is_load =
        inside.type == InsideType::lamp || inside.type == InsideType::load || inside.type == InsideType::motor;
    if (!is_load || !inside.at_voltage || nominal.number() <= 0) return;
    const double share = *inside.at_voltage / nominal;
    if (share >= least_rated_share && share <= greatest_rated_share) return;
    findings.push_back(make_diagnostic(
        DiagnosticId::rated_for_other_volts, part.origin.table,
        say_inside(facts.build, ref) + " is rated at " + say(*inside.at_voltage) + " on a machine of " + say(nominal),
        "fit one made for " + say(nominal)));
  });
}

}  // namespace loomfolio::rules
