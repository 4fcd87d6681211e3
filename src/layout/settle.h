// SPDX-License-Identifier: MIT
// Places on one axis: the best whole numbers under "this at least so far after that".
#pragma once

#include <vector>

#include "base/geometry.h"

namespace loomfolio::laying {

/// place[to] >= place[from] + gap
struct SettleArc {
  int from = 0, to = 0;
  Grid gap = 0;
};

/// Costs weight * |place[to] - place[from] - gap|.
struct SettlePull {
  int from = 0, to = 0;
  Grid gap = 0;
  int weight = 1;
};

struct SettleProblem {
  int count = 0;
  std::vector<SettleArc> arcs;
  std::vector<SettlePull> pulls;
};

/// The places of least cost, the least of them 0. Empty when the arcs contradict each other (a cycle of positive length).
std::vector<Grid> settle(const SettleProblem& problem);

}  // namespace loomfolio::laying
