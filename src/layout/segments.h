// SPDX-License-Identifier: MIT
// Straight stretches of drawn wires, and which of them meet.
#pragma once

#include <functional>
#include <vector>

#include "layout/laid.h"

namespace loomfolio::laying {

struct Segment {
  int wire = -1, index = 0;  ///< from point `index` of the course to the next
  bool is_level = false;
  Grid at = 0;             ///< y when level, x when upright
  Grid low = 0, high = 0;  ///< along it, low <= high
  bool is_end = false;     ///< the first or the last of its course: reaches a terminal
};

/// True when both run straight on through the point where they meet.
inline bool crosses(const Segment& level, const Segment& upright) {
  return upright.at > level.low && upright.at < level.high && level.at > upright.low && level.at < upright.high;
}

/// One step out of a box at that side.
inline GridPoint step_of(Side side) {
  switch (side) {
    case Side::top: return {0, -1};
    case Side::right: return {1, 0};
    case Side::bottom: return {0, 1};
    case Side::left: return {-1, 0};
  }
  return {};
}

std::vector<Segment> find_segments(const Laid& laid);

/// Calls `found` for each level and upright segment of different wires that share a point, ends included, in a fixed
/// order.
void for_each_meeting(const std::vector<Segment>& segments,
                      const std::function<void(const Segment& level, const Segment& upright)>& found);

/// Calls `found` for each pair of parallel segments nearer than `reach` that run beside each other, ends included.
void for_each_parallel(const std::vector<Segment>& segments, Grid reach,
                       const std::function<void(const Segment&, const Segment&)>& found);

}  // namespace loomfolio::laying
