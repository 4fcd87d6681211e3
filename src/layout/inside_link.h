// SPDX-License-Identifier: MIT
// Dashed links between what moves together. Only inside_*.cpp include this.
#pragma once

#include <vector>

#include "layout/inside_flow.h"

namespace loomfolio::inside {

struct GangMember {
  Gang gang;
  GridPoint at;
  int row = 0;
  bool is_bridge = false;
  Grid drive_x = 0;  ///< where the link meets it, on the low side of its centre
  bool is_mirrored = false;
};

/// Two lines between a primary and a secondary winding that stand side by side: they share a core.
void put_cores(const Plan& plan, PartDrawing& drawing);

void link_gangs(PartDrawing& drawing, const std::vector<GangMember>& members);

}  // namespace loomfolio::inside
