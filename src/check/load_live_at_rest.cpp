// SPDX-License-Identifier: MIT
// A lamp, motor, coil or load that works with everything at rest: it empties the battery in days.
#include <cmath>

#include "check/rules.h"

namespace loomfolio::rules {

constexpr Amperes a_clock{0.05};  ///< what a clock, an alarm or a unit asleep may draw

void load_live_at_rest(const Facts& facts, Diagnostics& findings) {
  if (!facts.at_rest) return;
  each_inside(facts.build, [&](InsideRef ref, const Part& part, const Inside& inside) {
    const bool is_load = inside.type == InsideType::load || inside.type == InsideType::lamp ||
                         inside.type == InsideType::motor || inside.type == InsideType::coil;
    if (!is_load) return;
    const InsideState& state = facts.at_rest->insides[ref.part.at()][static_cast<std::size_t>(ref.inside)];
    if (std::fabs(state.amperes.number()) <= a_clock.number()) return;
    findings.push_back(make_diagnostic(DiagnosticId::load_live_at_rest, part.origin.table,
                                       say_inside(facts.build, ref) + " draws " +
                                           say(Amperes(std::fabs(state.amperes.number()))) +
                                           " with every switch at rest and the engine stopped",
                                       "feed it behind the key switch"));
  });
}

}  // namespace loomfolio::rules
