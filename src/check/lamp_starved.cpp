// SPDX-License-Identifier: MIT
// A lamp that burns with the engine running below nine tenths of its test volts gives under seven tenths of its light
// (flux goes with the 3.4th power of volts, Standard Handbook for Electrical Engineers).
#include <cmath>

#include "check/rules.h"

namespace loomfolio::rules {

constexpr double starved_share = 0.9;  ///< of its test volts

void lamp_starved(const Facts& facts, Diagnostics& findings) {
  for (const SettledSituation& settled : settled_situations(facts)) {
    if (settled.situation->engine != EngineState::running) continue;
    each_inside(facts.build, [&](InsideRef ref, const Part& part, const Inside& inside) {
      if (inside.type != InsideType::lamp || !inside.at_voltage) return;
      const InsideState& state = settled.solution->insides[ref.part.at()][static_cast<std::size_t>(ref.inside)];
      const double share = std::fabs(state.volts.number()) / inside.at_voltage->number();
      if (!state.is_on || share >= starved_share) return;
      findings.push_back(make_diagnostic(DiagnosticId::lamp_starved, part.origin.table,
                                         "lamp " + say_inside(facts.build, ref) + " burns at " + say(state.volts) +
                                             " in " + say_situation(*settled.situation) + "; it is tested at " +
                                             say(*inside.at_voltage),
                                         "use thicker or shorter wire, or feed it through a relay"));
    });
  }
}

}  // namespace loomfolio::rules
