// SPDX-License-Identifier: MIT
#include "solve/charging_extremes.h"

#include <algorithm>

#include "solve/battery.h"
#include "solve/defaults.h"

namespace loomfolio {
namespace {

constexpr Watts dead_power{1e-6};

bool gives_charge(const Build& build, const Solution& solution) {
  for (std::size_t p = 0; p < build.parts.size(); ++p)
    for (std::size_t i = 0; i < build.parts[p].insides.size(); ++i)
      if (build.parts[p].insides[i].type == InsideType::charger && solution.insides[p][i].is_on) return true;
  return false;
}

template <class Change>
Build with_changed(const Build& build, InsideType type, const Change& change) {
  Build changed = build;
  for (Part& part : changed.parts)
    for (Inside& inside : part.insides)
      if (inside.type == type) change(inside);
  return changed;
}

/// Without a stated capacity the solver charges it over its own resistance.
Build with_empty_battery(const Build& build) {
  Build empty = with_changed(build, InsideType::source, [](Inside& inside) {
    if (!inside.cranking && inside.capacity) inside.cranking = Amperes(inside.capacity->number() * standard::cranking_per_ampere_hour);
    inside.capacity.reset();
  });
  empty.electrics.resting = rest_volts(BatteryType::flooded, 0, build.electrics.nominal);
  return empty;
}

}  // namespace

std::vector<ChargingExtreme> solve_charging_extremes(const Build& build, const std::vector<Solution>& solutions) {
  std::vector<ChargingExtreme> extremes;
  if (std::none_of(solutions.begin(), solutions.end(), [&](const Solution& s) { return gives_charge(build, s); })) return extremes;
  const Build dead = with_changed(build, InsideType::charger, [](Inside& inside) { inside.power = dead_power; });
  const Build empty = with_empty_battery(build);
  for (const Solution& solution : solutions) {
    if (!gives_charge(build, solution)) continue;
    for (const auto& [state, changed] : {std::pair{ChargeState::dead, &dead}, std::pair{ChargeState::into_empty, &empty}}) {
      ChargingExtreme extreme{state, solve_situation(*changed, solution.situation)};
      if (extreme.solution.settling == Settling::settled) extremes.push_back(std::move(extreme));
    }
  }
  return extremes;
}

}  // namespace loomfolio
