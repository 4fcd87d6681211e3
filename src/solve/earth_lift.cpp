// SPDX-License-Identifier: MIT
#include "solve/earth_lift.h"

#include <cmath>

#include "solve/plain_metal.h"

namespace loomfolio {
namespace {

/// Joins the earthed poles to the frame as well, whether a wire does or not.
PlainMetal join_earthed_metal(const Build& build) {
  PlainMetal metal = join_plain_metal(build);
  for (std::size_t p = 0; p < build.parts.size(); ++p)
    for (const Inside& inside : build.parts[p].insides)
      if (inside.type == InsideType::source && inside.nodes.size() >= 2) {
        const Inside::Node& earthed = inside.nodes[build.electrics.is_positive_earth ? 0 : 1];
        metal.islands.join(metal.point(build.parts[p], p, earthed), metal.frame);
      }
  return metal;
}

std::vector<bool> wired_terminals(const Build& build) {
  std::vector<bool> is_wired(build.terminals.size(), false);
  for (const Wire& wire : build.wires) is_wired[wire.from.at()] = is_wired[wire.to.at()] = true;
  return is_wired;
}

}  // namespace

std::vector<EarthLift> find_earth_lifts(const Build& build, const std::vector<Solution>& solutions) {
  PlainMetal metal = join_earthed_metal(build);
  const std::vector<bool> is_wired = wired_terminals(build);
  std::vector<EarthLift> lifts;
  for (std::size_t p = 0; p < build.parts.size(); ++p) {
    const Part& part = build.parts[p];
    if (build.kind_of(part).is_connector) continue;
    EarthLift worst{PartId{static_cast<std::int32_t>(p)}, {}, {}, most_earth_lift};
    for (const TerminalId terminal : part.terminals) {
      if (!is_wired[terminal.at()] || !metal.islands.are_joined(terminal.index, metal.frame)) continue;
      for (const Solution& solution : solutions) {
        const bool cranks = build.situations[solution.situation.at()].engine == EngineState::cranking;
        const double volts = std::fabs(solution.terminal_volts[terminal.at()].number());
        if (cranks || solution.settling != Settling::settled || std::isnan(volts) || volts <= worst.volts.number())
          continue;
        worst.terminal = terminal, worst.situation = solution.situation, worst.volts = Volts(volts);
      }
    }
    if (worst.terminal.is_set()) lifts.push_back(worst);
  }
  return lifts;
}

}  // namespace loomfolio
