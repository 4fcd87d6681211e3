// SPDX-License-Identifier: MIT
#include "sheets/diagram_tags.h"

#include <algorithm>

#include "sheets/diagram_wire.h"

namespace loomfolio {
namespace {

constexpr Grid least_seen = 700;  // of a wire beside its labels
constexpr Grid tag_step = 50, tag_clear = 30, wire_shown = 120;

GridBox box_between(GridPoint a, GridPoint b) {
  return {std::min(a.x, b.x), std::min(a.y, b.y), std::max(a.x, b.x), std::max(a.y, b.y)};
}

/// What a tag must not lie on: parts, labels, and wires other than its own.
struct Obstacles {
  std::vector<GridBox> fixed;
  std::vector<std::pair<std::size_t, GridBox>> wires;

  Grid width = 0, height = 0;  ///< of the drawing, which tags must not leave

  static constexpr auto none = static_cast<std::size_t>(-1);

  /// Its own wire, if any, may lie under it.
  bool is_free(GridBox box, std::size_t own) const {
    if (box.x0 < 0 || box.y0 < 0 || box.x1 > width || box.y1 > height) return false;
    return std::none_of(fixed.begin(), fixed.end(), [&](GridBox o) { return o.overlaps(box); }) &&
           std::none_of(wires.begin(), wires.end(), [&](auto& w) { return w.first != own && w.second.overlaps(box); });
  }
};

Obstacles collect(const DiagramGraph& diagram, const Laid& laid) {
  Obstacles found;
  found.width = laid.width;
  found.height = laid.height;
  for (const PlacedBox& placed : laid.boxes) found.fixed.push_back(placed.box.grown(tag_clear));
  for (const PlacedLabel& label : laid.labels) found.fixed.push_back(label.box.grown(tag_clear));
  for (std::size_t w = 0; w < laid.courses.size(); ++w) {
    const auto& points = laid.courses[w].points;
    for (std::size_t i = 1; i < points.size(); ++i)
      found.wires.emplace_back(w, box_between(points[i - 1], points[i]).grown(diagram.graph.wires[w].pen / 2 + tag_clear));
    for (const DrawnHop& hop : course_of(diagram.graph, laid, w).hops)
      found.fixed.push_back(
          GridBox{hop.at.x, hop.at.y, hop.at.x, hop.at.y}.grown(hop.half + diagram.graph.wires[w].pen / 2 + tag_clear));
  }
  return found;
}

struct WireStretch {
  GridPoint a, b;
  Grid length() const { return std::abs(a.x - b.x) + std::abs(a.y - b.y); }
  bool is_level() const { return a.y == b.y; }
};

struct TagSize {
  Grid width = 0, height = 0;  ///< as it reads: from left to right, and of one line
  Grid pen = 0;                ///< of the wire
};

/// The free place nearest the middle of the stretch.
bool place_on(const WireStretch& stretch, Grid width, Grid height, const Obstacles& obstacles, std::size_t wire,
              GridBox& found) {
  const Grid room = stretch.length() - width - 2 * wire_shown;
  for (Grid off = 0; off * 2 <= room; off += tag_step)
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

/// Beside a stretch that the tag would all but cover, words level: the free place nearest its middle, on either side.
bool place_beside(const WireStretch& stretch, const TagSize& size, const Obstacles& obstacles, GridBox& found) {
  const Grid off = size.pen / 2 + tag_clear + 10;
  for (Grid slide = 0; slide * 2 <= stretch.length(); slide += tag_step)
    for (const Grid side : {slide, -slide})
      for (const int way : {1, -1}) {
        const Grid x = (stretch.a.x + stretch.b.x) / 2 + (stretch.is_level() ? side : 0);
        const Grid y = (stretch.a.y + stretch.b.y) / 2 + (stretch.is_level() ? 0 : side);
        const Grid left = stretch.is_level() ? x - size.width / 2 : way > 0 ? x + off : x - off - size.width;
        const Grid top = !stretch.is_level() ? y - size.height / 2 : way > 0 ? y - off - size.height : y + off;
        const GridBox box{left, top, left + size.width, top + size.height};
        if (!obstacles.is_free(box, Obstacles::none)) continue;
        found = box;
        return true;
      }
  return false;
}

bool is_left_of(const GridBox& box, const WireStretch& stretch) { return !stretch.is_level() && box.x1 < stretch.a.x; }

Grid length_of_course(const std::vector<GridPoint>& points) {
  Grid length = 0;
  for (std::size_t i = 1; i < points.size(); ++i)
    length += std::abs(points[i].x - points[i - 1].x) + std::abs(points[i].y - points[i - 1].y);
  return length;
}

/// Whether hardly any of the wire is seen beside its labels.
bool is_covered(const Laid& laid, std::size_t wire) {
  Grid seen = length_of_course(laid.courses[wire].points);
  for (const PlacedLabel& label : laid.labels)
    if (label.wire == static_cast<int>(wire)) seen -= label.is_upright ? label.box.height() : label.box.width();
  return seen < least_seen;
}

std::vector<WireStretch> stretches_of(const std::vector<GridPoint>& points) {
  std::vector<WireStretch> stretches;
  for (std::size_t i = 1; i < points.size(); ++i) stretches.push_back({points[i - 1], points[i]});
  std::stable_sort(stretches.begin(), stretches.end(),
                   [](const WireStretch& a, const WireStretch& b) { return a.length() > b.length(); });
  return stretches;
}

/// Where a tag goes; without a stretch: nowhere.
struct TagSeat {
  const WireStretch* stretch = nullptr;
  bool is_beside = false;
  GridBox box;
};

/// A whole label stands on its wire, which is long enough to be seen on either side of it; beside a short stretch, if it can.
TagSeat seat_of_label(const std::vector<WireStretch>& stretches, const TagSize& size, const Obstacles& obstacles, std::size_t wire) {
  for (const WireStretch& s : stretches) {
    TagSeat seat{&s, s.length() < 3 * size.width, {}};
    if (seat.is_beside && place_beside(s, size, obstacles, seat.box)) return seat;
    seat.is_beside = false;
    if (place_on(s, size.width, size.height, obstacles, wire, seat.box)) return seat;
  }
  return {};
}

/// A number alone stands beside its wire wherever there is room, since the wires that get no more are short; else on it.
TagSeat seat_of_number(const std::vector<WireStretch>& stretches, const TagSize& size, const Obstacles& obstacles, std::size_t wire) {
  for (const bool is_beside : {true, false})
    for (const WireStretch& s : stretches) {
      TagSeat seat{&s, is_beside, {}};
      if (is_beside ? place_beside(s, size, obstacles, seat.box) : place_on(s, size.width, size.height, obstacles, wire, seat.box)) return seat;
    }
  return {};
}

/// Two labels of one wire within sight of each other say the same twice: the second goes.
bool is_repeated(const Laid& laid, std::size_t label) {
  constexpr Grid in_sight = 5500;
  const PlacedLabel& own = laid.labels[label];
  for (std::size_t other = 0; other < label; ++other) {
    const PlacedLabel& before = laid.labels[other];
    if (before.wire != own.wire) continue;
    const Grid dx = std::abs((before.box.x0 + before.box.x1) - (own.box.x0 + own.box.x1)) / 2;
    const Grid dy = std::abs((before.box.y0 + before.box.y1) - (own.box.y0 + own.box.y1)) / 2;
    if (dx + dy < in_sight) return true;
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
    const WireLabel& label = diagram.labels[w];
    const std::vector<WireStretch> stretches = stretches_of(laid.courses[w].points);
    if (is_labelled) {
      SpareTag tag{w, {}, false, false, false, true};
      const TagSize size{label.width, label.height, diagram.graph.wires[w].pen};
      if (!is_covered(laid, w) || !place_beside(stretches.front(), size, obstacles, tag.box)) continue;
      tag.ends_at_wire = is_left_of(tag.box, stretches.front());
      obstacles.fixed.push_back(tag.box.grown(tag_clear));
      tags.push_back(tag);
      continue;
    }
    SpareTag tag{w, {}, false, true, false, false};
    for (const bool is_number_only : {false, true}) {
      if (tag.is_placed) break;
      const TagSize size{is_number_only ? label.number_width + 2 * tag_pad : label.width, label.height,
                         diagram.graph.wires[w].pen};
      const TagSeat seat = is_number_only ? seat_of_number(stretches, size, obstacles, w) : seat_of_label(stretches, size, obstacles, w);
      if (seat.stretch == nullptr) continue;
      tag.box = seat.box;
      tag.is_upright = !seat.stretch->is_level() && !seat.is_beside;
      tag.ends_at_wire = seat.is_beside && is_left_of(tag.box, *seat.stretch);
      tag.is_number_only = is_number_only;
      tag.is_placed = true;
      obstacles.fixed.push_back(tag.box.grown(tag_clear));
    }
    tags.push_back(tag);
  }
  return tags;
}

std::vector<PlacedLabel> labels_to_draw(const Laid& laid, const std::vector<SpareTag>& tags) {
  const auto has_tag = [&](int wire) {
    return std::any_of(tags.begin(), tags.end(), [wire](const SpareTag& tag) { return static_cast<int>(tag.wire) == wire; });
  };
  std::vector<PlacedLabel> drawn;
  for (std::size_t l = 0; l < laid.labels.size(); ++l)
    if (!is_repeated(laid, l) && !has_tag(laid.labels[l].wire)) drawn.push_back(laid.labels[l]);
  return drawn;
}

std::vector<GridBox> words_on_wires(const DiagramGraph& diagram, const Laid& laid) {
  const std::vector<SpareTag> tags = find_spare_tags(diagram, laid);
  std::vector<GridBox> boxes;
  for (const PlacedLabel& label : labels_to_draw(laid, tags)) boxes.push_back(label.box);
  for (const SpareTag& tag : tags)
    if (tag.is_placed) boxes.push_back(tag.box);
  return boxes;
}

}  // namespace loomfolio
