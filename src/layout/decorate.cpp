// SPDX-License-Identifier: MIT
// Passes: dots and hops. Wires of one figure part at a dot: where three directions of line meet. Where two wires cross, the level
// one hops over the upright one, always the same way round; hops that nearly touch join into one flat bridge.
#include "layout/decorate.h"

#include <algorithm>
#include <bit>
#include <map>

#include "layout/segments.h"

namespace loomfolio::laying {
namespace {

constexpr Grid hop_half = 100, join_gap = 40;

enum Direction : unsigned { to_right = 1, to_left = 2, down = 4, up = 8 };

/// Where a segment of the same figure runs straight through `p`, that adds both its directions.
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
  std::map<int, std::vector<Segment>> figures;
  for (const Segment& s : find_segments(laid)) figures[plan.figure[s.wire]].push_back(s);
  for (const auto& [figure, segments] : figures) {
    std::vector<GridPoint> corners;
    for (const Segment& s : segments)
      for (Grid along : {s.low, s.high}) corners.push_back(s.is_level ? GridPoint{along, s.at} : GridPoint{s.at, along});
    std::sort(corners.begin(), corners.end());
    corners.erase(std::unique(corners.begin(), corners.end()), corners.end());
    for (GridPoint p : corners)
      if (std::popcount(directions_through(segments, p)) >= 3) laid.dots.push_back(p);
  }
}

void add_hops(Laid& laid) {
  for (Course& c : laid.courses) c.hops.clear();
  for_each_meeting(find_segments(laid), [&](const Segment& level, const Segment& upright) {
    if (crosses(level, upright)) laid.courses[level.wire].hops.push_back({{upright.at, level.at}, hop_half});
  });
  for (Course& c : laid.courses) {
    std::sort(c.hops.begin(), c.hops.end(), [](const Hop& a, const Hop& b) { return a.at < b.at; });
    c.hops.erase(std::unique(c.hops.begin(), c.hops.end(), [](const Hop& a, const Hop& b) { return a.at == b.at; }), c.hops.end());
    join_hops(c.hops);
  }
}

}  // namespace loomfolio::laying
