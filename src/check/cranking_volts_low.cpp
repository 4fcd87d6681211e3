// SPDX-License-Identifier: MIT
// The battery's own volts while it cranks, below what the build calls its least.
#include <cmath>

#include "check/rules.h"
#include "solve/supply.h"

namespace loomfolio::rules {

void cranking_volts_low(const Facts& facts, Diagnostics& findings) {
  for (const SettledSituation& settled : settled_situations(facts)) {
    if (settled.situation->engine != EngineState::cranking) continue;
    each_inside(facts.build, [&](InsideRef ref, const Part& part, const Inside& inside) {
      if (inside.type != InsideType::source) return;
      const InsideState& state = settled.solution->insides[ref.part.at()][static_cast<std::size_t>(ref.inside)];
      // Of batteries in series each bears its share.
      const Volts least = facts.build.electrics.cranking * nominal_share(facts.build.electrics, inside);
      if (std::fabs(state.volts.number()) >= least.number()) return;
      findings.push_back(make_diagnostic(DiagnosticId::cranking_volts_low, part.origin.table,
                                         say_inside(facts.build, ref) + " sags to " + say(state.volts) + " in " +
                                             say_situation(*settled.situation) + "; " +
                                             say(least) + " is the least",
                                         "fit a battery of more cold cranking amperes"));
    });
  }
}

}  // namespace loomfolio::rules
