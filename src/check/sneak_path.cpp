// SPDX-License-Identifier: MIT
// A load half fed through another load: lamps that glow, relays that hum. Most often an earth is missing or two feeds
// meet. Elements of one part may stand in series on purpose.
#include <algorithm>
#include <cmath>

#include "check/rules.h"
#include "check/ways.h"

namespace loomfolio::rules {

constexpr double least_sneak_share = 0.08,
                 greatest_sneak_share = 0.7;  ///< of the rated or nominal volts: more than nothing, less than work

namespace {

bool is_half_fed(const Electrics& electrics, const Inside& inside, const InsideState& state) {
  if (inside.type == InsideType::coil && inside.drop_out && std::fabs(state.volts.number()) < inside.drop_out->number())
    return false;  // it lets go all the same
  const Volts rated = inside.at_voltage.value_or(electrics.nominal);
  const double share = std::fabs(state.volts.number()) / rated.number();
  return share >= least_sneak_share && share <= greatest_sneak_share;
}

bool is_load(const Inside& inside) {
  return inside.type == InsideType::load || inside.type == InsideType::lamp || inside.type == InsideType::coil ||
         inside.type == InsideType::motor;
}

void name_way(const Facts& facts, const Way& way, const std::string& where, Diagnostic& finding) {
  const std::string names = say_way_with_wires(facts.build, facts.paths, way);
  if (!names.empty()) add_note(finding, {}, "its way " + where + ": " + names);
}

}  // namespace

void sneak_path(const Facts& facts, Diagnostics& findings) {
  for (const SettledSituation& settled : settled_situations(facts)) {
    WayFinder finder({facts, *settled.situation, *settled.solution});
    each_inside(facts.build, [&](InsideRef ref, const Part& part, const Inside& inside) {
      const InsideState& state = settled.solution->insides[ref.part.at()][static_cast<std::size_t>(ref.inside)];
      if (!is_load(inside) || !is_half_fed(facts.build.electrics, inside, state)) return;
      const LoadWays ways = finder.find(ref);
      std::vector<InsideRef> loads = ways.to_supply.loads;
      loads.insert(loads.end(), ways.to_earth.loads.begin(), ways.to_earth.loads.end());
      std::erase_if(loads, [&](InsideRef other) { return other.part == ref.part; });
      if (loads.empty()) return;
      Diagnostic finding = make_diagnostic(
          DiagnosticId::sneak_path, part.origin.table,
          say_inside(facts.build, ref) + " is half fed, " + say(Volts(std::fabs(state.volts.number()))) +
              ", through load " + say_inside(facts.build, loads.front()) + " in " + say_situation(*settled.situation),
          "look for a missing earth, or put a diode where two feeds meet");
      add_note(finding, facts.build.part(loads.front().part).origin.table, "the current passes this load");
      name_way(facts, ways.to_supply, "to the supply", finding);
      name_way(facts, ways.to_earth, "to earth", finding);
      findings.push_back(std::move(finding));
    });
  }
}

}  // namespace loomfolio::rules
