// SPDX-License-Identifier: MIT
// What the battery gives with everything at rest. Above 25 mA is a fault by workshop practice; the
// days until it no longer cranks are from full charge, self-discharge counted (solve/battery.h).
#include <cmath>

#include "base/text.h"
#include "check/rules.h"
#include "solve/battery.h"

namespace loomfolio::rules {

constexpr Amperes most_drain{0.025};

void drain_at_rest(const Facts& facts, Diagnostics& findings) {
  if (!facts.at_rest) return;
  each_inside(facts.build, [&](InsideRef ref, const Part& part, const Inside& inside) {
    if (inside.type != InsideType::source) return;
    const InsideState& state = facts.at_rest->insides[ref.part.at()][static_cast<std::size_t>(ref.inside)];
    const Amperes drain(std::fabs(state.amperes.number()));
    if (drain <= most_drain) return;
    std::string days;
    const auto rest = study_battery(facts.build, facts.solutions).rest;
    if (inside.capacity && rest) days = "; after " + shortest(rest->days_to_no_crank, 1) + " days it no longer cranks";
    findings.push_back(
        make_diagnostic(DiagnosticId::drain_at_rest, part.origin.table,
                        say_inside(facts.build, ref) + " gives " + say(drain) + " with every switch at rest" + days,
                        "feed what stays on behind the key switch"));
  });
}

}  // namespace loomfolio::rules
