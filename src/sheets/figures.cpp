// SPDX-License-Identifier: MIT
#include "sheets/figures.h"

#include <algorithm>
#include <cmath>

namespace loomfolio {
namespace {

bool is_consumer(const Inside& inside) {
  switch (inside.type) {
    case InsideType::load:
    case InsideType::lamp:
    case InsideType::motor:
    case InsideType::coil:
    case InsideType::output:
      return true;
    default:
      return false;
  }
}

/// The part that owns the terminal, when it takes something from it.
PartId consumer_at(const Build& build, TerminalId id) {
  const Terminal& terminal = build.terminal(id);
  if (terminal.owner != OwnerType::part) return {};
  const Part& part = build.parts[static_cast<std::size_t>(terminal.owner_index)];
  const bool takes = std::any_of(part.insides.begin(), part.insides.end(), is_consumer);
  return takes ? PartId{terminal.owner_index} : PartId{};
}

}  // namespace

MostCurrent most_through(const SolvedBuild& solved, InsideRef ref) {
  MostCurrent most;
  for (const Solution& solution : solved.solutions) {
    const InsideState& state = solution.insides[ref.part.at()][static_cast<std::size_t>(ref.inside)];
    const Amperes amperes(std::abs(state.amperes.number()));
    if (amperes.number() > 1e-6 && amperes > most.amperes) most = {amperes, solution.situation};
  }
  return most;
}

std::vector<WireId> wires_behind(const SolvedBuild& solved, InsideRef fuse) {
  std::vector<WireId> wires;
  for (std::size_t w = 0; w < solved.wire_loads.size(); ++w)
    if (solved.wire_loads[w].fuse.part.is_set() && solved.wire_loads[w].fuse == fuse)
      wires.push_back(WireId{static_cast<std::int32_t>(w)});
  return wires;
}

WireId smallest_wire_behind(const SolvedBuild& solved, InsideRef fuse) {
  WireId smallest;
  for (const WireId wire : wires_behind(solved, fuse))
    if (!smallest.is_set() || solved.build.wire(wire).area < solved.build.wire(smallest).area) smallest = wire;
  return smallest;
}

std::vector<PartId> parts_behind(const SolvedBuild& solved, InsideRef fuse) {
  std::vector<PartId> parts;
  for (const WireId id : wires_behind(solved, fuse))
    for (const TerminalId end : {solved.build.wire(id).from, solved.build.wire(id).to}) {
      const PartId part = consumer_at(solved.build, end);
      if (part.is_set()) parts.push_back(part);
    }
  std::sort(parts.begin(), parts.end());
  parts.erase(std::unique(parts.begin(), parts.end()), parts.end());
  return parts;
}

}  // namespace loomfolio
