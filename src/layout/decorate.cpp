// SPDX-License-Identifier: MIT
// Passes: dots and hops. Inside a component a dot stands where three directions of line meet. Where two components cross, the level
// wire hops over the upright one, always the same way round; hops that nearly touch join into one flat bridge.
#include "layout/decorate.h"

#include <algorithm>
#include <map>

#include "layout/segments.h"

namespace loomfolio::laying {
namespace {

constexpr Grid hop_half = 100, join_gap = 40;

enum Direction : unsigned { to_right = 1, to_left = 2, down = 4, up = 8 };

unsigned direction_of(GridPoint from, GridPoint to) {
  if (from.y == to.y) return to.x > from.x ? to_right : to_left;
  return to.y > from.y ? down : up;
}

int count_bits(unsigned v) { return static_cast<int>((v & 1) + (v >> 1 & 1) + (v >> 2 & 1) + (v >> 3 & 1)); }

/// Where a segment of the same component runs straight through `p`, that adds both its directions.
unsigned directions_through(const std::vector<Segment>& segments, GridPoint p) {
  unsigned out = 0;
  for (const Segment& s : segments) {
    if (s.at != (s.is_level ? p.y : p.x)) continue;
    const Grid along = s.is_level ? p.x : p.y;
    if (along < s.low || along > s.high) continue;
    if (along > s.low) out |= s.is_level ? to_left : up;
    if (along < s.high) out |= s.is_level ? to_right : down;
  }
  return out;
}

void join_hops(std::vector<Hop>& hops) {
  std::sort(hops.begin(), hops.end(), [](const Hop& a, const Hop& b) { return a.at < b.at; });
  std::stable_sort(hops.begin(), hops.end(), [](const Hop& a, const Hop& b) { return a.at.y < b.at.y; });
  std::vector<Hop> out;
  for (const Hop& h : hops) {
    if (!out.empty() && out.back().at.y == h.at.y && h.at.x - h.half - (out.back().at.x + out.back().half) < join_gap) {
      const Grid left = out.back().at.x - out.back().half, right = std::max(out.back().at.x + out.back().half, h.at.x + h.half);
      out.back().half = (right - left + 1) / 2;
      out.back().at.x = left + out.back().half;
      continue;
    }
    out.push_back(h);
  }
  hops = std::move(out);
}

}  // namespace

void add_dots(const Plan& plan, Laid& laid) {
  for (const Component& c : plan.components) {
    if (c.wires.size() < 2) continue;
    std::vector<Segment> segments;
    std::vector<GridPoint> corners;
    for (int w : c.wires) {
      const auto& points = laid.courses[w].points;
      for (std::size_t i = 0; i < points.size(); ++i) {
        corners.push_back(points[i]);
        if (i == 0) continue;
        const GridPoint a = points[i - 1], b = points[i];
        const bool level = direction_of(a, b) == to_right || direction_of(a, b) == to_left;
        segments.push_back({w, static_cast<int>(i) - 1, level, level ? a.y : a.x, level ? std::min(a.x, b.x) : std::min(a.y, b.y),
                            level ? std::max(a.x, b.x) : std::max(a.y, b.y)});
      }
    }
    std::sort(corners.begin(), corners.end());
    corners.erase(std::unique(corners.begin(), corners.end()), corners.end());
    for (GridPoint p : corners)
      if (count_bits(directions_through(segments, p)) >= 3) laid.dots.push_back(p);
  }
}

void add_hops(const Plan& plan, Laid& laid) {
  for (Course& c : laid.courses) c.hops.clear();
  const std::vector<Segment> segments = find_segments(laid);
  for_each_meeting(segments, [&](const Segment& level, const Segment& upright) {
    const int a = plan.pins[plan.pin_of_wire_from[level.wire]].component;
    const int b = plan.pins[plan.pin_of_wire_from[upright.wire]].component;
    if (a != b) laid.courses[level.wire].hops.push_back({{upright.at, level.at}, hop_half});
  });
  for (Course& c : laid.courses) {
    std::sort(c.hops.begin(), c.hops.end(), [](const Hop& a, const Hop& b) { return a.at < b.at; });
    c.hops.erase(std::unique(c.hops.begin(), c.hops.end(), [](const Hop& a, const Hop& b) { return a.at == b.at; }), c.hops.end());
    join_hops(c.hops);
  }
}

}  // namespace loomfolio::laying
