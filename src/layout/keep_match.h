// SPDX-License-Identifier: MIT
// What of an earlier graph is still there. Only keep*.cpp include this.
#pragma once

#include <vector>

#include "layout/graph.h"

namespace loomfolio::laying {

struct KeepMatch {
  std::vector<int> box;           ///< by box: its number in the earlier graph, or -1
  std::vector<char> is_same_box;  ///< by box: size and terminals are what they were
  std::vector<int> wire;          ///< by wire: the earlier wire whose course it can keep, or -1
  bool is_small_edit = false;     ///< little enough is new to be worked into the drawing
};

KeepMatch match_graphs(const Graph& graph, const Graph& earlier);

}  // namespace loomfolio::laying
