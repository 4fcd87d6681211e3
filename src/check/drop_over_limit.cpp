// SPDX-License-Identifier: MIT
// Volts lost between the battery's poles and a load, over the whole loop and in the worst situation, against the limit
// of the load's function. Loads that stand in series with others, or behind a diode or a resistor, get less on
// purpose; one behind an output at its limit gets less because of that, which output_overloaded says. One finding a
// function: its worst load, with the others as notes.
#include <algorithm>
#include <cmath>
#include <map>

#include "check/rules.h"
#include "check/ways.h"
#include "solve/conductor.h"
#include "solve/drops.h"

namespace loomfolio::rules {

namespace {

struct Loss {
  const SettledSituation* settled = nullptr;
  Volts volts;
  LoadWays ways;
};

bool is_judged(const Inside& inside) {
  switch (inside.type) {
    case InsideType::load:
    case InsideType::lamp:
    case InsideType::motor:
    case InsideType::coil:
    case InsideType::charger:
      return true;
    default:
      return false;
  }
}

/// Volts that diodes and series resistors on the ways take on purpose.
Volts taken_on_purpose(const Facts& facts, const Solution& solution, const LoadWays& ways) {
  Volts taken;
  for (const Way* way : {&ways.to_supply, &ways.to_earth})
    for (const int b : way->bridges) {
      const InsideRef ref = facts.paths.bridges[static_cast<std::size_t>(b)].inside;
      if (!ref.part.is_set()) continue;
      const InsideType type = inside_of(facts.build, ref).type;
      if (type != InsideType::diode && type != InsideType::resistor) continue;
      taken += Volts(std::fabs(solution.insides[ref.part.at()][static_cast<std::size_t>(ref.inside)].volts.number()));
    }
  return taken;
}

/// A control unit's output on the way is held at its limit.
bool is_limited(const Facts& facts, const Solution& solution, const LoadWays& ways) {
  for (const Way* way : {&ways.to_supply, &ways.to_earth})
    for (const int b : way->bridges) {
      const InsideRef ref = facts.paths.bridges[static_cast<std::size_t>(b)].inside;
      if (ref.part.is_set() && solution.insides[ref.part.at()][static_cast<std::size_t>(ref.inside)].is_limiting) return true;
    }
  return false;
}

/// A situation, its battery's volts, and ways in it.
struct Place {
  SettledSituation settled;
  Volts battery;
  WayFinder ways;
};

std::vector<Place> find_places(const Facts& facts) {
  std::vector<Place> places;
  for (const SettledSituation& settled : settled_situations(facts))
    if (const auto battery = battery_volts(facts, *settled.solution))
      places.push_back({settled, *battery, WayFinder({facts, *settled.situation, *settled.solution})});
  return places;
}

Loss worst_loss(const Facts& facts, std::vector<Place>& places, InsideRef ref) {
  Loss worst;
  const bool gives = inside_of(facts.build, ref).type == InsideType::charger;
  for (Place& place : places) {
    const InsideState& state = place.settled.solution->insides[ref.part.at()][static_cast<std::size_t>(ref.inside)];
    if (!state.is_on) continue;
    const double own = std::fabs(state.volts.number());
    Volts lost(gives ? own - place.battery.number() : place.battery.number() - own);
    if (worst.settled && lost <= worst.volts) continue;
    LoadWays ways = place.ways.find(ref);
    if (!ways.to_supply.loads.empty() || !ways.to_earth.loads.empty()) continue;
    if (is_limited(facts, *place.settled.solution, ways)) continue;
    lost -= taken_on_purpose(facts, *place.settled.solution, ways);
    if (!worst.settled || lost > worst.volts) worst = {&place.settled, lost, std::move(ways)};
  }
  return worst;
}

Volts lost_over(const Facts& facts, const Loss& loss, const Bridge& bridge) {
  const Solution& solution = *loss.settled->solution;
  if (bridge.wire.is_set()) {
    const Amperes amperes(std::fabs(solution.wire_amperes[bridge.wire.at()].number()));
    return amperes * wire_resistance(facts.build.wire(bridge.wire), facts.build.electrics.ambient);
  }
  if (!bridge.inside.part.is_set()) return {};
  const InsideType type = inside_of(facts.build, bridge.inside).type;
  if (type != InsideType::contact && type != InsideType::output && type != InsideType::fuse) return {};
  const InsideState& state = solution.insides[bridge.inside.part.at()][static_cast<std::size_t>(bridge.inside.inside)];
  return Volts(std::fabs(state.volts.number()));
}

/// What on the load's ways loses most: a wire's copper, or a contact, an output or a fuse.
void name_worst_place(const Facts& facts, const Loss& loss, Diagnostic& finding) {
  const Bridge* worst = nullptr;
  Volts most;
  for (const Way* way : {&loss.ways.to_supply, &loss.ways.to_earth})
    for (const int b : way->bridges) {
      const Bridge& bridge = facts.paths.bridges[static_cast<std::size_t>(b)];
      const Volts lost = lost_over(facts, loss, bridge);
      if (lost <= most) continue;
      worst = &bridge;
      most = lost;
    }
  if (worst == nullptr) return;
  if (worst->wire.is_set())
    add_note(finding, facts.build.wire(worst->wire).origin.table,
             say_wire(facts.build, worst->wire) + " loses most, " + say(most) + " in its copper");
  else
    add_note(finding, facts.build.part(worst->inside.part).origin.table,
             say_inside(facts.build, worst->inside) + " loses most, " + say(most));
}

struct Finding {
  InsideRef load;
  Loss loss;
};

Diagnostic report(const Facts& facts, DropFunction function, const std::vector<Finding>& over) {
  const auto worst = std::max_element(over.begin(), over.end(),
                                      [](const Finding& a, const Finding& b) { return a.loss.volts < b.loss.volts; });
  const Volts limit = drop_limit(facts.build.electrics.drop_limits, function);
  Diagnostic finding = make_diagnostic(DiagnosticId::drop_over_limit, facts.build.part(worst->load.part).origin.table,
                                       say(worst->loss.volts) + " are lost between the battery and " +
                                           say_inside(facts.build, worst->load) + " in " +
                                           say_situation(*worst->loss.settled->situation) + "; " + say(limit) +
                                           " is the limit of `drop." + std::string(word_of(function)) + "`",
                                       "use a thicker or shorter wire, or feed it through a relay");
  name_worst_place(facts, worst->loss, finding);
  for (const Finding& other : over)
    if (&other != &*worst)
      add_note(finding, facts.build.part(other.load.part).origin.table,
               say_inside(facts.build, other.load) + " loses " + say(other.loss.volts) + " in " +
                   say_situation(*other.loss.settled->situation));
  return finding;
}

}  // namespace

void drop_over_limit(const Facts& facts, Diagnostics& findings) {
  std::map<DropFunction, std::vector<Finding>> over;
  std::vector<Place> places = find_places(facts);
  each_inside(facts.build, [&](InsideRef ref, const Part&, const Inside& inside) {
    if (!is_judged(inside)) return;
    const DropFunction function = drop_function_of(facts.build, ref);
    const Volts limit = drop_limit(facts.build.electrics.drop_limits, function);
    const Loss loss = worst_loss(facts, places, ref);
    if (loss.settled && loss.volts.number() > limit.number() * rating_tolerance) over[function].push_back({ref, loss});
  });
  for (const auto& [function, losses] : over) findings.push_back(report(facts, function, losses));
}

}  // namespace loomfolio::rules
