// SPDX-License-Identifier: MIT
// What of an earlier graph is still there. Only keep*.cpp include this.
#pragma once

#include <vector>

#include "layout/graph.h"

namespace loomfolio::laying {

struct KeepMatch {
  std::vector<int> box;           ///< by box: its number in the earlier graph, or -1
  std::vector<char> is_same_box;  ///< by box: it is alike, so that its wires can stay
  std::vector<int> wire;          ///< by wire: the earlier wire whose course it can keep, or -1
  bool is_small_edit = false;     ///< little enough is new to be worked into the drawing
};

/// When a part is what it was: with the same terminals on its sides, or also with the same size and places.
enum class Likeness : std::uint8_t { terminals, sizes };

bool has_same_size(const GraphBox& a, const GraphBox& b);  ///< and its terminals stand at the same places

KeepMatch match_graphs(const Graph& graph, const Graph& earlier, Likeness likeness);

}  // namespace loomfolio::laying
