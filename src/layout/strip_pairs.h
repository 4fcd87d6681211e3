// SPDX-License-Identifier: MIT
// What the order of two pieces of a strip costs. Only strip*.cpp include this.
#pragma once

#include <vector>

#include "layout/strip.h"

namespace loomfolio::laying {

constexpr int strip_crossing_cost = 64;  ///< against 1 for standing on the wrong side: only a tie-break

struct StripPairs {
  int count = 0;
  std::vector<int> cost;            ///< cost[a * count + b]: a before b
  std::vector<char> must;           ///< a must stand before b
  int& cost_of(int a, int b) { return cost[static_cast<std::size_t>(a) * count + b]; }
  char& must_of(int a, int b) { return must[static_cast<std::size_t>(a) * count + b]; }
};

/// Of orders that cross as little, takes one in which mates, pieces of wires with the same bundle word, run side by side.
void bring_mates_together(Strip& strip, const Graph& graph, StripPairs& pairs);

}  // namespace loomfolio::laying
