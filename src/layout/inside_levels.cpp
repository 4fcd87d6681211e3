// SPDX-License-Identifier: MIT
// Levels are those of water in pipes: terminals hold their node at the side they stand on, every other node takes the
// mean of its neighbours. Whole numbers and a fixed count of rounds keep the result the same everywhere.
#include "layout/inside_levels.h"

namespace loomfolio::inside {
namespace {

constexpr int low_side_level = 400'000, high_side_level = 600'000, rounds = 60;

int held_level(FlowSide side) {
  switch (side) {
    case FlowSide::start:
      return 0;
    case FlowSide::end:
      return end_level;
    case FlowSide::low:
      return low_side_level;
    case FlowSide::high:
      return high_side_level;
  }
  return 0;
}

Hold hold_of(FlowSide side) {
  if (side == FlowSide::start) return Hold::start;
  return side == FlowSide::end ? Hold::end : Hold::side;
}

}  // namespace

Levels find_levels(const Plan& plan, const std::vector<FlowTerminal>& terminals,
                   const std::vector<int>& earthed_nodes) {
  const auto count = static_cast<std::size_t>(plan.nodes);
  Levels found{std::vector<int>(count, end_level / 2), std::vector<Hold>(count, Hold::none)};
  for (const FlowTerminal& terminal : terminals) {
    const auto n = static_cast<std::size_t>(terminal.node);
    if (found.hold[n] != Hold::none) continue;
    found.hold[n] = hold_of(terminal.side);
    found.level[n] = held_level(terminal.side);
  }
  for (int node : earthed_nodes) {
    const auto n = static_cast<std::size_t>(node);
    if (found.hold[n] != Hold::none) continue;
    found.hold[n] = Hold::end;
    found.level[n] = end_level;
  }
  std::vector<std::vector<std::size_t>> near(count);
  for (const Shown& shown : plan.shown)
    for (std::size_t i = 1; i < shown.nodes.size(); ++i) {
      if (shown.nodes[0] < 0 || shown.nodes[i] < 0 || shown.nodes[0] == shown.nodes[i]) continue;
      near[static_cast<std::size_t>(shown.nodes[0])].push_back(static_cast<std::size_t>(shown.nodes[i]));
      near[static_cast<std::size_t>(shown.nodes[i])].push_back(static_cast<std::size_t>(shown.nodes[0]));
    }
  for (int round = 0; round < rounds; ++round)
    for (std::size_t n = 0; n < count; ++n) {
      if (found.hold[n] != Hold::none || near[n].empty()) continue;
      long sum = 0;
      for (std::size_t other : near[n]) sum += found.level[other];
      found.level[n] = static_cast<int>(sum / static_cast<long>(near[n].size()));
    }
  return found;
}

Lie lie_between(const Levels& levels, int a, int b) {
  const auto na = static_cast<std::size_t>(a), nb = static_cast<std::size_t>(b);
  const Hold ha = levels.hold[na], hb = levels.hold[nb];
  if (ha == Hold::start && hb == Hold::start) return Lie::bridge_start;
  if (ha == Hold::end && hb == Hold::end) return Lie::bridge_end;
  constexpr int near = end_level / 100;
  const int apart = levels.level[nb] - levels.level[na];
  if (apart > near) return Lie::along;
  if (apart < -near) return Lie::against;
  // Equal levels: an inner point keeps away from the side its terminals stand on.
  if (ha == Hold::end || hb == Hold::start) return Lie::against;
  return Lie::along;
}

}  // namespace loomfolio::inside
