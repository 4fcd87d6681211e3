// SPDX-License-Identifier: MIT
// What the starter's loop of cables and earth loses without motor and relay. SAE J541, light and medium duty: 0.20 V
// per 100 A at 12 V, 0.12 V per 100 A at 6 V, joints and return counted.
#include <cmath>

#include "check/rules.h"
#include "check/ways.h"
#include "solve/defaults.h"

namespace loomfolio::rules {

namespace {

/// Volts over every relay contact on the way.
Volts over_contacts(const Facts& facts, const Solution& solution, const Way& way) {
  Volts over;
  for (const int b : way.bridges) {
    const InsideRef ref = facts.paths.bridges[static_cast<std::size_t>(b)].inside;
    if (!ref.part.is_set() || inside_of(facts.build, ref).type != InsideType::contact) continue;
    over += Volts(std::fabs(solution.insides[ref.part.at()][static_cast<std::size_t>(ref.inside)].volts.number()));
  }
  return over;
}

bool is_body(const Build& build, const Bridge& bolt) {
  const auto is_of_part = [&](PathPoint p) {
    return p < static_cast<PathPoint>(build.terminals.size()) &&
           build.terminals[static_cast<std::size_t>(p)].owner == OwnerType::part;
  };
  return is_of_part(bolt.a) || is_of_part(bolt.b);
}

/// Volts over bolts whose resistance nobody gave, of earths and of the motor's body: an assumption is no finding.
Volts over_assumed_bolts(const Facts& facts, const Solution& solution, const Way& way, Amperes motor) {
  Volts over;
  for (const int b : way.bridges) {
    const Bridge& bridge = facts.paths.bridges[static_cast<std::size_t>(b)];
    if (bridge.wire.is_set() || bridge.inside.part.is_set()) continue;
    if (is_body(facts.build, bridge)) over += Volts(std::fabs((motor * standard::body).number()));
    for (const Earth& earth : facts.build.earths) {
      if (earth.resistance || (bridge.a != earth.terminal.index && bridge.b != earth.terminal.index)) continue;
      Amperes sum;
      for (const WireId id : facts.wires_at[earth.terminal.at()])
        sum += facts.build.wire(id).to == earth.terminal ? solution.wire_amperes[id.at()]
                                                         : -solution.wire_amperes[id.at()];
      over += Volts(std::fabs((sum * standard::earth).number()));
    }
  }
  return over;
}

}  // namespace

void starter_loop_lossy(const Facts& facts, Diagnostics& findings) {
  const double per_100_amperes = facts.build.electrics.nominal.number() < 9 ? 0.12 : 0.20;
  each_inside(facts.build, [&](InsideRef ref, const Part& part, const Inside&) {
    if (!is_starter_motor(facts.build, ref)) return;
    for (const SettledSituation& settled : settled_situations(facts)) {
      const InsideState& state = settled.solution->insides[ref.part.at()][static_cast<std::size_t>(ref.inside)];
      const std::optional<Volts> battery = battery_volts(facts, *settled.solution);
      if (!state.is_on || !battery) continue;
      const LoadWays ways = find_load_ways({facts, *settled.situation, *settled.solution}, ref);
      const Volts lost = *battery - Volts(std::fabs(state.volts.number())) -
                         over_contacts(facts, *settled.solution, ways.to_supply) -
                         over_contacts(facts, *settled.solution, ways.to_earth) -
                         over_assumed_bolts(facts, *settled.solution, ways.to_earth, state.amperes);
      const Volts limit(per_100_amperes * std::fabs(state.amperes.number()) / 100);
      if (lost.number() <= limit.number() * rating_tolerance) continue;
      findings.push_back(make_diagnostic(DiagnosticId::starter_loop_lossy, part.origin.table,
                                         "cables and earth lose " + say(lost) + " at the " +
                                             say(Amperes(std::fabs(state.amperes.number()))) + " of " +
                                             say_inside(facts.build, ref) + "; " + say(limit) + " is the most",
                                         "use thicker or shorter battery cable, and clean earths"));
      return;
    }
  });
}

}  // namespace loomfolio::rules
