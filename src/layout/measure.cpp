// SPDX-License-Identifier: MIT
#include "layout/measure.h"

#include <algorithm>

#include "layout/segments.h"

namespace loomfolio::laying {

Quality measure(const Laid& laid) {
  Quality q;
  for (const Course& c : laid.courses) {
    q.bends += std::max<long>(0, static_cast<long>(c.points.size()) - 2);
    for (std::size_t i = 1; i < c.points.size(); ++i)
      q.length += std::abs(c.points[i].x - c.points[i - 1].x) + std::abs(c.points[i].y - c.points[i - 1].y);
  }
  for_each_meeting(find_segments(laid), [&](const Segment& level, const Segment& upright) { q.crossings += crosses(level, upright); });
  return q;
}

}  // namespace loomfolio::laying
