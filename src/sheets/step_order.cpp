// SPDX-License-Identifier: MIT
#include "sheets/step_order.h"

namespace loomfolio {

std::size_t choose_next(const std::vector<Millimetres>& heights, Millimetres room) {
  if (heights.empty() || heights.front() <= room) return 0;
  std::size_t best = 0;
  for (std::size_t i = 1; i < heights.size(); ++i)
    if (heights[i] <= room && (best == 0 || heights[i] > heights[best])) best = i;
  return best;
}

}  // namespace loomfolio
