// SPDX-License-Identifier: MIT
// A coil that is fed but below its pull-in volts: it does not close, or holds only because it closed before.
#include <cmath>

#include "check/rules.h"

namespace loomfolio::rules {

constexpr double fed_share = 0.4;  ///< of nominal volts: below, the coil is not meant to be fed

void coil_too_weak(const Facts& facts, Diagnostics& findings) {
  const double fed = facts.build.electrics.nominal.number() * fed_share;
  for (const SettledSituation& settled : settled_situations(facts))
    each_inside(facts.build, [&](InsideRef ref, const Part& part, const Inside& inside) {
      if (inside.type != InsideType::coil || !inside.pull_in) return;
      const InsideState& state = settled.solution->insides[ref.part.at()][static_cast<std::size_t>(ref.inside)];
      const double volts = std::fabs(state.volts.number());
      if (volts < fed || volts >= inside.pull_in->number()) return;
      findings.push_back(make_diagnostic(DiagnosticId::coil_too_weak, part.origin.table,
                                         "coil " + say_inside(facts.build, ref) + " gets " + say(Volts(volts)) +
                                             " in " + say_situation(*settled.situation) + "; it pulls in at " +
                                             say(*inside.pull_in),
                                         state.is_on ? "it holds, but would not pull in again: find the lost volts"
                                                     : "find the lost volts, or fit a relay that pulls in lower"));
    });
}

}  // namespace loomfolio::rules
