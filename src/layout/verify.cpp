// SPDX-License-Identifier: MIT
// The promises that need only one wire, one part or one label at a time, or two; connectivity is in verify_nets.cpp.
#include "layout/verify.h"

#include <algorithm>

#include "layout/segments.h"
#include "layout/verify_nets.h"
#include "layout/weights.h"

namespace loomfolio {
namespace {

using laying::Segment;

class Verifier {
 public:
  Verifier(const Graph& graph, const Laid& laid) : graph_(graph), laid_(laid), segments_(laying::find_segments(laid)) {}
  std::vector<Violation> run();

 private:
  void say(Promise promise, std::string what) { out_.push_back({promise, std::move(what)}); }
  const std::string& wire(int w) const { return graph_.wires[w].name; }
  const std::string& box(std::size_t b) const { return graph_.boxes[b].name; }
  void check_parts();
  void check_bands();
  void check_course(int w);
  void check_exit(int w, int box_index, int terminal, GridPoint end, GridPoint next);
  void check_simple(int w);
  void check_near_parts();
  void check_frame();
  void check_labels();
  bool ends_at(const Segment& s, std::size_t b) const;

  const Graph& graph_;
  const Laid& laid_;
  std::vector<Segment> segments_;
  laying::Spacing spacing_;
  std::vector<Violation> out_;
};

void Verifier::check_parts() {
  std::vector<std::size_t> by_x(laid_.boxes.size());
  for (std::size_t i = 0; i < by_x.size(); ++i) by_x[i] = i;
  std::stable_sort(by_x.begin(), by_x.end(), [&](auto a, auto b) { return laid_.boxes[a].box.x0 < laid_.boxes[b].box.x0; });
  for (std::size_t i = 0; i < by_x.size(); ++i)
    for (std::size_t j = i + 1; j < by_x.size(); ++j) {
      const GridBox a = laid_.boxes[by_x[i]].box, b = laid_.boxes[by_x[j]].box;
      if (b.x0 >= a.x1) break;
      if (a.overlaps(b)) say(Promise::parts_apart, box(by_x[i]) + " and " + box(by_x[j]) + " overlap");
    }
}

void Verifier::check_bands() {
  for (std::size_t i = 1; i < laid_.bands.size(); ++i)
    if (laid_.bands[i - 1].overlaps(laid_.bands[i])) say(Promise::bands_apart, graph_.zones[i].name + " overlaps its neighbour");
  for (std::size_t b = 0; b < laid_.boxes.size(); ++b) {
    const GridBox own = laid_.boxes[b].box;
    for (std::size_t z = 0; z < laid_.bands.size(); ++z) {
      const GridBox band = laid_.bands[z];
      const bool is_home = static_cast<int>(z) == graph_.boxes[b].zone;
      if (is_home && graph_.boxes[b].role != BoxRole::reference && !(own.x0 >= band.x0 && own.x1 <= band.x1 && own.y0 >= band.y0 && own.y1 <= band.y1))
        say(Promise::parts_in_band, box(b) + " leaves its band");
      if (!is_home && own.overlaps(band)) say(Promise::parts_in_band, box(b) + " stands in a foreign band");
    }
  }
}

void Verifier::check_exit(int w, int box_index, int terminal, GridPoint end, GridPoint next) {
  const GraphTerminal& t = graph_.boxes[box_index].terminals[terminal];
  const PlacedBox& placed = laid_.boxes[box_index];
  const GridPoint at{placed.is_mirrored ? placed.box.x1 - t.at.x : placed.box.x0 + t.at.x, placed.box.y0 + t.at.y};
  Side side = t.side;
  if (placed.is_mirrored && (side == Side::left || side == Side::right)) side = side == Side::left ? Side::right : Side::left;
  if (at != end) say(Promise::wire_attached, wire(w) + " misses " + box(box_index) + "." + t.name);
  const GridPoint step = laying::step_of(side);
  const Grid out = (next.x - end.x) * step.x + (next.y - end.y) * step.y;
  if (out < spacing_.clear) say(Promise::wire_leaves_straight, wire(w) + " does not leave " + box(box_index) + "." + t.name + " straight");
}

void Verifier::check_course(int w) {
  const auto& p = laid_.courses[w].points;
  if (p.size() < 2) return say(Promise::wire_attached, wire(w) + " is not drawn");
  for (std::size_t i = 1; i < p.size(); ++i) {
    const bool level = p[i].y == p[i - 1].y, upright = p[i].x == p[i - 1].x;
    if (level == upright) say(Promise::wire_square, wire(w) + " has an oblique or empty stretch");
    if (i < 2) continue;
    const bool before_level = p[i - 1].y == p[i - 2].y;
    if (level == before_level) say(Promise::wire_square, wire(w) + " has a point that is no bend");
  }
  const GraphWire& g = graph_.wires[w];
  check_exit(w, g.from_box, g.from_terminal, p[0], p[1]);
  check_exit(w, g.to_box, g.to_terminal, p[p.size() - 1], p[p.size() - 2]);
  check_simple(w);
}

void Verifier::check_simple(int w) {
  const auto& p = laid_.courses[w].points;
  const auto cover = [&](std::size_t i) {
    return GridBox{std::min(p[i].x, p[i + 1].x), std::min(p[i].y, p[i + 1].y), std::max(p[i].x, p[i + 1].x), std::max(p[i].y, p[i + 1].y)};
  };
  for (std::size_t i = 0; i + 1 < p.size(); ++i)
    for (std::size_t j = i + 2; j + 1 < p.size(); ++j) {
      const GridBox a = cover(i), b = cover(j);
      if (a.x0 <= b.x1 && b.x0 <= a.x1 && a.y0 <= b.y1 && b.y0 <= a.y1) say(Promise::wire_simple, wire(w) + " meets itself");
    }
}

/// The first and last stretch of a wire touch the parts it ends at.
bool Verifier::ends_at(const Segment& s, std::size_t b) const {
  const GraphWire& g = graph_.wires[s.wire];
  const auto last = static_cast<int>(laid_.courses[s.wire].points.size()) - 2;
  return (s.index == 0 && g.from_box == static_cast<int>(b)) || (s.index == last && g.to_box == static_cast<int>(b));
}

void Verifier::check_near_parts() {
  for (const Segment& s : segments_) {
    const GridBox line = s.is_level ? GridBox{s.low, s.at, s.high, s.at} : GridBox{s.at, s.low, s.at, s.high};
    for (std::size_t b = 0; b < laid_.boxes.size(); ++b) {
      const GridBox own = laid_.boxes[b].box;
      if (line.x0 < own.x1 && line.x1 > own.x0 && line.y0 < own.y1 && line.y1 > own.y0)
        say(Promise::wire_outside_parts, wire(s.wire) + " runs inside " + box(b));
      const GridBox wide = own.grown(spacing_.clear);
      if (!ends_at(s, b) && line.x0 < wide.x1 && line.x1 > wide.x0 && line.y0 < wide.y1 && line.y1 > wide.y0)
        say(Promise::wire_clear_of_parts, wire(s.wire) + " runs too near " + box(b));
    }
  }
}

void Verifier::check_frame() {
  const GridBox frame{0, 0, laid_.width, laid_.height};
  const auto inside = [&](GridBox b) { return b.x0 >= 0 && b.y0 >= 0 && b.x1 <= frame.x1 && b.y1 <= frame.y1; };
  for (std::size_t b = 0; b < laid_.boxes.size(); ++b)
    if (!inside(laid_.boxes[b].box)) say(Promise::inside_frame, box(b) + " leaves the frame");
  for (std::size_t w = 0; w < laid_.courses.size(); ++w)
    for (GridPoint p : laid_.courses[w].points)
      if (!frame.holds(p)) say(Promise::inside_frame, wire(static_cast<int>(w)) + " leaves the frame");
  for (const PlacedLabel& l : laid_.labels)
    if (!inside(l.box)) say(Promise::inside_frame, "label of " + wire(l.wire) + " leaves the frame");
}

Grid distance(GridBox a, GridBox b) {
  const Grid dx = std::max({a.x0 - b.x1, b.x0 - a.x1, 0}), dy = std::max({a.y0 - b.y1, b.y0 - a.y1, 0});
  return std::max(dx, dy);
}

void Verifier::check_labels() {
  for (std::size_t i = 0; i < laid_.labels.size(); ++i) {
    const PlacedLabel& l = laid_.labels[i];
    const std::string who = "label of " + wire(l.wire);
    for (std::size_t j = i + 1; j < laid_.labels.size(); ++j)
      if (l.box.overlaps(laid_.labels[j].box)) say(Promise::label_free, who + " lies on that of " + wire(laid_.labels[j].wire));
    for (std::size_t b = 0; b < laid_.boxes.size(); ++b)
      if (l.box.overlaps(laid_.boxes[b].box)) say(Promise::label_free, who + " lies on " + box(b));
    Grid own = INT32_MAX, foreign = INT32_MAX;
    for (const Segment& s : segments_) {
      GridBox line = s.is_level ? GridBox{s.low, s.at, s.high, s.at} : GridBox{s.at, s.low, s.at, s.high};
      line = line.grown(graph_.wires[s.wire].pen / 2);
      if (line.overlaps(l.box)) say(Promise::label_free, who + " lies on " + wire(s.wire));
      Grid& least = graph_.wires[s.wire].net == graph_.wires[l.wire].net ? own : foreign;
      least = std::min(least, distance(line, l.box));
    }
    if (foreign < own) say(Promise::label_near_own, who + " is nearer to a foreign wire");
    for (const Course& c : laid_.courses)
      for (const Hop& h : c.hops)
        if (l.box.overlaps({h.at.x - h.half, h.at.y - 100, h.at.x + h.half, h.at.y})) say(Promise::label_free, who + " lies on a hop");
  }
}

std::vector<Violation> Verifier::run() {
  check_parts();
  check_bands();
  for (std::size_t w = 0; w < graph_.wires.size(); ++w) check_course(static_cast<int>(w));
  check_near_parts();
  check_frame();
  check_labels();
  laying::verify_nets(graph_, laid_, segments_, out_);
  std::stable_sort(out_.begin(), out_.end(), [](const Violation& a, const Violation& b) { return a.promise < b.promise; });
  return std::move(out_);
}

}  // namespace

const char* name_of(Promise promise) {
  static const char* const names[] = {"parts-apart", "parts-in-band", "bands-apart", "wire-outside-parts", "wire-clear-of-parts",
                                      "wire-attached", "wire-leaves-straight", "wire-square", "wire-simple", "nets-apart",
                                      "nets-cross-square", "joints-dotted", "connected-as-meant", "inside-frame", "label-free",
                                      "label-near-own"};
  return names[static_cast<std::size_t>(promise)];
}

std::vector<Violation> verify(const Graph& graph, const Laid& laid) { return Verifier(graph, laid).run(); }

}  // namespace loomfolio
