// SPDX-License-Identifier: MIT
// The idea. A joint stands in a row like any part, though its wires may all turn away below it; an earth symbol stands where its row had
// room, though its wire comes down beside it. Both are free to move once all is drawn:
//
//     ====              .                   |              |
//     |  |            ====                  +-+    --->    |
//     |  +--   --->   |  +--                  |            |
//     |               |                      ===          ===
#include "layout/slide_ends.h"

#include <algorithm>
#include <cmath>
#include <optional>

#include "layout/draw.h"
#include "layout/segments.h"

namespace loomfolio::laying {
namespace {

constexpr Grid least_slide = 200;  ///< a shorter way is left as it is

/// One end of a wire at the box in hand.
struct WireAt {
  std::size_t wire = 0;
  bool is_from = true;
};

class Sliding {
 public:
  Sliding(const Plan& plan, Laid& laid, const std::vector<char>& held) : plan_(plan), laid_(laid), held_(held) {}
  void slide_joint(const SettledJoint& joint);
  void align_earth(std::size_t box);

 private:
  const GraphBox& graph_box(std::size_t box) const { return plan_.graph->boxes[box]; }
  std::vector<WireAt> wires_at(std::size_t box) const;
  bool may_move(std::size_t box, const std::vector<WireAt>& wires) const;
  Grid longest_slide(const std::vector<WireAt>& wires, GridPoint step) const;
  bool is_free(std::size_t box, const GridBox& swept, const std::vector<WireAt>& wires) const;
  bool is_way_free(std::size_t box, const WireAt& end) const;
  bool is_stub(const Segment& s, const std::vector<WireAt>& wires) const;

  const Plan& plan_;
  Laid& laid_;
  const std::vector<char>& held_;
};

std::vector<WireAt> Sliding::wires_at(std::size_t box) const {
  std::vector<WireAt> out;
  for (std::size_t w = 0; w < plan_.graph->wires.size(); ++w) {
    const GraphWire& wire = plan_.graph->wires[w];
    if (wire.from_box == static_cast<int>(box)) out.push_back({w, true});
    if (wire.to_box == static_cast<int>(box)) out.push_back({w, false});
  }
  return out;
}

bool Sliding::may_move(std::size_t box, const std::vector<WireAt>& wires) const {
  if (wires.empty() || !graph_box(box).pins.empty() || !graph_box(box).apart.empty()) return false;
  return std::none_of(wires.begin(), wires.end(), [&](const WireAt& end) {
    const int figure = plan_.figure[end.wire];
    return (!held_.empty() && held_[end.wire] != 0) || laid_.courses[end.wire].points.size() < 2 ||
           std::count(plan_.figure.begin(), plan_.figure.end(), figure) > 1;
  });
}

/// The stretch by which one of the wires leaves the box.
bool Sliding::is_stub(const Segment& s, const std::vector<WireAt>& wires) const {
  return std::any_of(wires.begin(), wires.end(), [&](const WireAt& end) {
    const auto last = static_cast<int>(laid_.courses[end.wire].points.size()) - 2;
    return s.wire == static_cast<int>(end.wire) && s.index == (end.is_from ? 0 : last);
  });
}

/// Whether nothing but the box and its wires' first stretches is in the area or too near to it.
bool Sliding::is_free(std::size_t box, const GridBox& swept, const std::vector<WireAt>& wires) const {
  for (std::size_t b = 0; b < laid_.boxes.size(); ++b)
    if (b != box && laid_.boxes[b].box.overlaps(swept.grown(plan_.spacing.clear + plan_.spacing.spare))) return false;
  const std::vector<Segment> segments = find_segments(laid_);
  return std::none_of(segments.begin(), segments.end(), [&](const Segment& s) {
    const GridBox line = s.is_level ? GridBox{s.low, s.at, s.high, s.at} : GridBox{s.at, s.low, s.at, s.high};
    const Grid clear = plan_.spacing.clear + half_pen(plan_, s.wire);
    return !is_stub(s, wires) && line.grown(1).overlaps(swept.grown(clear));
  });
}

/// Whether the stretch by which the wire leaves the box keeps its distance from parts and from wires beside it, and crosses none.
bool Sliding::is_way_free(std::size_t box, const WireAt& end) const {
  const std::vector<Segment> segments = find_segments(laid_);
  const auto stub = std::find_if(segments.begin(), segments.end(), [&](const Segment& s) { return is_stub(s, {end}); });
  const GridBox line{stub->at, stub->low, stub->at, stub->high};
  const GraphWire& wire = plan_.graph->wires[end.wire];
  for (std::size_t b = 0; b < laid_.boxes.size(); ++b) {
    const bool is_own = b == box || static_cast<int>(b) == wire.from_box || static_cast<int>(b) == wire.to_box;
    if (!is_own && laid_.boxes[b].box.grown(plan_.spacing.clear).overlaps(line.grown(half_pen(plan_, stub->wire)))) return false;
  }
  return std::none_of(segments.begin(), segments.end(), [&](const Segment& s) {
    if (s.wire == stub->wire) return false;
    const GridBox other = s.is_level ? GridBox{s.low, s.at, s.high, s.at} : GridBox{s.at, s.low, s.at, s.high};
    return other.grown(s.is_level ? 1 : distance_between(plan_, s.wire, stub->wire)).overlaps(line.grown(1));
  });
}

/// How far the first stretches of its wires let the box slide.
Grid Sliding::longest_slide(const std::vector<WireAt>& wires, GridPoint step) const {
  Grid longest = INT32_MAX;
  for (const WireAt& end : wires) {
    const GraphWire& wire = plan_.graph->wires[end.wire];
    const auto& p = laid_.courses[end.wire].points;
    const GridPoint at = end.is_from ? p.front() : p.back(), next = end.is_from ? p[1] : p[p.size() - 2];
    const Grid stub = (next.x - at.x) * step.x + (next.y - at.y) * step.y;  // below 0: leaves at another side
    const Grid least = p.size() == 2 ? wire.label_width + 3 * plan_.spacing.clear
                                     : plan_.spacing.clear + plan_.spacing.spare + half_pen(plan_, static_cast<int>(end.wire));
    if (wire.from_box == wire.to_box) return 0;
    longest = std::min(longest, stub - least);
  }
  return longest;
}

GridBox moved(GridBox box, GridPoint by) { return {box.x0 + by.x, box.y0 + by.y, box.x1 + by.x, box.y1 + by.y}; }

GridBox cover(GridBox a, GridBox b) {
  return {std::min(a.x0, b.x0), std::min(a.y0, b.y0), std::max(a.x1, b.x1), std::max(a.y1, b.y1)};
}

void Sliding::slide_joint(const SettledJoint& joint) {
  const auto box = static_cast<std::size_t>(joint.box);
  const std::vector<WireAt> wires = wires_at(box);
  if (graph_box(box).joint.pitch == 0 || joint.terminals.empty() || wires.size() < 2 || !may_move(box, wires)) return;
  const GridPoint step = step_of(joint.terminals.front().side);
  Grid way = longest_slide(wires, step);
  const GridBox at = laid_.boxes[box].box;
  const auto area = [&](Grid far) { return cover(at, moved(at, {step.x * far, step.y * far})); };
  while (way >= least_slide && !is_free(box, area(way), wires)) way -= plan_.spacing.pitch;
  if (way < least_slide) return;
  const GridPoint by{step.x * way, step.y * way};
  laid_.boxes[box].box = moved(at, by);
  for (const WireAt& end : wires) {
    auto& p = laid_.courses[end.wire].points;
    GridPoint& point = end.is_from ? p.front() : p.back();
    point = {point.x + by.x, point.y + by.y};
  }
}

void Sliding::align_earth(std::size_t box) {
  const std::vector<WireAt> wires = wires_at(box);
  if (wires.size() != 1 || graph_box(box).terminals.size() != 1 || !may_move(box, wires)) return;
  std::vector<GridPoint> p = laid_.courses[wires[0].wire].points;
  if (p.size() < 4) return;
  if (wires[0].is_from) std::reverse(p.begin(), p.end());
  GridPoint &end = p[p.size() - 1], &bend = p[p.size() - 2];
  const GridPoint turn = p[p.size() - 3], before = p[p.size() - 4];
  if (end.x != bend.x || (end.y > bend.y) != (turn.y > before.y)) return;
  const Grid by = turn.x - end.x;
  const GridBox at = laid_.boxes[box].box, place = moved(at, {by, 0});
  const GridBox band = laid_.bands[static_cast<std::size_t>(graph_box(box).zone)];
  if (place.x0 < band.x0 || place.x1 > band.x1) return;
  end.x = bend.x = turn.x;
  simplify(p);
  if (wires[0].is_from) std::reverse(p.begin(), p.end());
  std::swap(laid_.courses[wires[0].wire].points, p);
  if (is_free(box, place, wires) && is_way_free(box, wires[0])) laid_.boxes[box].box = place;
  else std::swap(laid_.courses[wires[0].wire].points, p);
}

}  // namespace

void slide_ends(const Plan& plan, Laid& laid, const std::vector<char>& held) {
  Sliding sliding(plan, laid, held);
  for (const SettledJoint& joint : laid.joints) sliding.slide_joint(joint);
  for (std::size_t b = 0; b < plan.graph->boxes.size(); ++b)
    if (plan.graph->boxes[b].role == BoxRole::earth) sliding.align_earth(b);
}

}  // namespace loomfolio::laying
