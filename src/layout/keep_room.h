// SPDX-License-Identifier: MIT
// Free room in a finished drawing. Only keep*.cpp include this.
#pragma once

#include <vector>

#include "layout/laid.h"

namespace loomfolio::laying {

struct RoomRequest {
  GridBox area;  ///< where the box must stand; it may reach below as far as it likes
  Grid width = 0, height = 0;
  Grid clear = 0;                   ///< free of anything, all around
  std::vector<GridPoint> partners;  ///< what its wires lead to
};

/// Top left corners of free places, nearest to the partners first, apart from each other; never empty, as there is
/// always room below.
std::vector<GridPoint> find_room(const RoomRequest& request, const std::vector<GridBox>& taken, std::size_t most);

}  // namespace loomfolio::laying
