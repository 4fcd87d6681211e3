// SPDX-License-Identifier: MIT
// Every distance kept again in a drawing whose lines are in the right order but partly too near each other. Only
// keep*.cpp include this.
#pragma once

#include <vector>

#include "layout/laid.h"
#include "layout/weights.h"

namespace loomfolio::laying {

struct Crowded {
  const Graph& graph;               ///< with the sizes and terminals that parts shall have
  const std::vector<int>& figure;   ///< by wire: wires that share a terminal
  const std::vector<char>& is_new;  ///< by wire: must get its full distances; others keep at least what they have
  std::vector<PlacedBox>& boxes;    ///< those of no width are not placed
  std::vector<Course>& courses;     ///< empty ones are not drawn
  std::vector<GridBox>& bands;
  std::vector<GridPoint> lean = {};  ///< by part: how far left of and above where it was it would rather stand; or empty
};

/// Pushes runs aside, and parts only when runs cannot give way; no course changes its shape and nothing its order.
/// False when the order leaves no room; then everything is as it was.
bool make_room(Crowded& drawing, const Spacing& spacing);

}  // namespace loomfolio::laying
