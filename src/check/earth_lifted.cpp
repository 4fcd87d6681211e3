// SPDX-License-Identifier: MIT
// The earth end of a part well above the battery's earthed pole: its return is thin, long or shared with something
// heavy (solve/earth_lift.h).
#include "solve/earth_lift.h"

#include "check/rules.h"

namespace loomfolio::rules {

void earth_lifted(const Facts& facts, Diagnostics& findings) {
  for (const EarthLift& lift : find_earth_lifts(facts.build, facts.solutions)) {
    const Part& part = facts.build.part(lift.part);
    findings.push_back(make_diagnostic(DiagnosticId::earth_lifted, part.origin.table,
                                       "the earth of " + say_part(part) + " is " + say(lift.volts) +
                                           " off the battery's in " +
                                           say_situation(facts.build.situations[lift.situation.at()]) + "; " +
                                           say(most_earth_lift) + " is the most",
                                       "use a thicker earth wire, or one of its own"));
  }
}

}  // namespace loomfolio::rules
