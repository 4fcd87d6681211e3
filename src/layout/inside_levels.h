// SPDX-License-Identifier: MIT
// Which way current is drawn through an element: each node gets a level between the start side (0) and the end side.
#pragma once

#include <vector>

#include "layout/inside_flow.h"

namespace loomfolio::inside {

constexpr int end_level = 1'000'000;

/// Where a node is held by the terminals that stand on it.
enum class Hold : std::uint8_t { none, start, end, side };

struct Levels {
  std::vector<int> level;  ///< by node
  std::vector<Hold> hold;  ///< by node
};

Levels find_levels(const Plan& plan, const std::vector<FlowTerminal>& terminals, const std::vector<int>& earthed_nodes);

/// How an element between two nodes lies.
enum class Lie : std::uint8_t { along, against, bridge_start, bridge_end };
Lie lie_between(const Levels& levels, int a, int b);

}  // namespace loomfolio::inside
