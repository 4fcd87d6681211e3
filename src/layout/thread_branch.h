// SPDX-License-Identifier: MIT
// Where a new wire may begin: at its terminal, or off a wire that is drawn to the same terminal. Only thread*.cpp
// include this.
#pragma once

#include <vector>

#include "layout/thread_lines.h"

namespace loomfolio::laying {

struct Branch {
  GridPoint at;  ///< where the search begins: a crossing of two lines
  LineAxis axis = LineAxis::level;
  long cost = 0;
  std::vector<GridPoint> path;  ///< from the terminal to there, without `at`
};

/// The terminal itself first, then places along the wires that share it.
std::vector<Branch> find_branches(const ThreadRequest& request, const ThreadEnd& end, ThreadLines& lines,
                                  const RouteWeights& weights);

}  // namespace loomfolio::laying
