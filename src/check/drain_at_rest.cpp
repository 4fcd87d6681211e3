// SPDX-License-Identifier: MIT
// What the battery gives with everything at rest. Above 25 mA is a fault by workshop practice; days to half charge are
// half the ampere-hours over the current, self-discharge not counted.
#include <cmath>

#include "base/text.h"
#include "check/rules.h"

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
    if (inside.capacity)
      days = ", which leaves half its charge after " +
             shortest(inside.capacity->number() * 0.5 / (drain.number() * 24), 1) + " days";
    findings.push_back(
        make_diagnostic(DiagnosticId::drain_at_rest, part.origin.table,
                        say_inside(facts.build, ref) + " gives " + say(drain) + " with every switch at rest" + days,
                        "feed what stays on behind the key switch"));
  });
}

}  // namespace loomfolio::rules
