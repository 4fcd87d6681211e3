// SPDX-License-Identifier: MIT
#include "sheets/diagram_tags.h"

#include <algorithm>

namespace loomfolio {
namespace {

constexpr Grid step = 50, clear = 30, wire_shown = 120, tag_pad = 60;

GridBox box_between(GridPoint a, GridPoint b) {
  return {std::min(a.x, b.x), std::min(a.y, b.y), std::max(a.x, b.x), std::max(a.y, b.y)};
}

/// What a tag must not lie on: parts, labels, and wires other than its own.
struct Obstacles {
  std::vector<GridBox> fixed;
  std::vector<std::pair<std::size_t, GridBox>> wires;

  bool is_free(GridBox box, std::size_t own) const {
    return std::none_of(fixed.begin(), fixed.end(), [&](GridBox o) { return o.overlaps(box); }) &&
           std::none_of(wires.begin(), wires.end(), [&](auto& w) { return w.first != own && w.second.overlaps(box); });
  }
};

Obstacles collect(const DiagramGraph& diagram, const Laid& laid) {
  Obstacles found;
  for (const PlacedBox& placed : laid.boxes) found.fixed.push_back(placed.box.grown(clear));
  for (const PlacedLabel& label : laid.labels) found.fixed.push_back(label.box.grown(clear));
  for (std::size_t w = 0; w < laid.courses.size(); ++w) {
    const auto& points = laid.courses[w].points;
    for (std::size_t i = 1; i < points.size(); ++i)
      found.wires.emplace_back(w, box_between(points[i - 1], points[i]).grown(diagram.graph.wires[w].pen / 2 + clear));
    for (const Hop& hop : laid.courses[w].hops)
      found.fixed.push_back(GridBox{hop.at.x, hop.at.y, hop.at.x, hop.at.y}.grown(hop.half));
  }
  return found;
}

struct Stretch {
  GridPoint a, b;
  Grid length() const { return std::abs(a.x - b.x) + std::abs(a.y - b.y); }
  bool is_level() const { return a.y == b.y; }
};

/// The free place nearest the middle of the stretch.
bool place_on(const Stretch& stretch, Grid width, Grid height, const Obstacles& obstacles, std::size_t wire,
              GridBox& found) {
  const Grid room = stretch.length() - width - 2 * wire_shown;
  for (Grid off = 0; off * 2 <= room; off += step)
    for (const Grid side : {off, -off}) {
      const Grid x = (stretch.a.x + stretch.b.x) / 2 + (stretch.is_level() ? side : 0);
      const Grid y = (stretch.a.y + stretch.b.y) / 2 + (stretch.is_level() ? 0 : side);
      const Grid half_x = (stretch.is_level() ? width : height) / 2, half_y = (stretch.is_level() ? height : width) / 2;
      const GridBox box{x - half_x, y - half_y, x - half_x + 2 * half_x, y - half_y + 2 * half_y};
      if (!obstacles.is_free(box, wire)) continue;
      found = box;
      return true;
    }
  return false;
}

}  // namespace

std::vector<SpareTag> find_spare_tags(const DiagramGraph& diagram, const Laid& laid) {
  Obstacles obstacles = collect(diagram, laid);
  std::vector<SpareTag> tags;
  for (std::size_t w = 0; w < laid.courses.size(); ++w) {
    const bool is_labelled =
        std::any_of(laid.labels.begin(), laid.labels.end(), [w](auto& l) { return l.wire == static_cast<int>(w); });
    if (is_labelled) continue;
    const WireLabel& label = diagram.labels[w];
    std::vector<Stretch> stretches;
    const auto& points = laid.courses[w].points;
    for (std::size_t i = 1; i < points.size(); ++i) stretches.push_back({points[i - 1], points[i]});
    std::stable_sort(stretches.begin(), stretches.end(),
                     [](const Stretch& a, const Stretch& b) { return a.length() > b.length(); });
    for (const bool is_number_only : {false, true}) {
      const Grid width = is_number_only ? label.number_width + 2 * tag_pad : label.width;
      SpareTag tag{w, {}, false, is_number_only};
      const auto on = std::find_if(stretches.begin(), stretches.end(), [&](const Stretch& s) {
        return place_on(s, width, label.height, obstacles, w, tag.box);
      });
      if (on == stretches.end()) continue;
      tag.is_upright = !on->is_level();
      obstacles.fixed.push_back(tag.box.grown(clear));
      tags.push_back(tag);
      break;
    }
  }
  return tags;
}

}  // namespace loomfolio
