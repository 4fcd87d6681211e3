// SPDX-License-Identifier: MIT
#include "layout/keep_canvas.h"

#include <algorithm>
#include <climits>
#include <map>
#include <utility>

#include "layout/make_room.h"

namespace loomfolio::laying {
namespace {

constexpr Grid near_enough = 4000;        // a wire this near to an end may be in its way
constexpr std::size_t most_redrawn = 40;  // such wires are tried

/// Wires of the box that have no course yet and whose other end is placed.
std::vector<int> wires_to_draw(const Graph& graph, const Canvas& canvas, int box) {
  std::vector<int> out;
  for (int w = 0; w < static_cast<int>(graph.wires.size()); ++w) {
    const GraphWire& g = graph.wires[w];
    if (!canvas.laid.courses[w].points.empty() || (g.from_box != box && g.to_box != box)) continue;
    if (canvas.is_placed(g.from_box) && canvas.is_placed(g.to_box)) out.push_back(w);
  }
  return out;
}

/// The course by which fewest parts move: the dearer it is to be tight, the farther it goes round.
bool squeeze_in(const Plan& plan, Canvas& canvas, const ThreadRequest& request) {
  std::vector<char> is_new(plan.graph->wires.size(), 0);
  is_new[request.wire] = 1;
  const Canvas before = canvas;
  Canvas best;
  int fewest = INT_MAX;
  for (const int dearness : {1, 6, 36}) {
    RouteWeights weights = plan.weights;
    weights.squeeze *= dearness;
    canvas = before;
    auto threaded = thread_wire(request, plan.spacing, weights);
    if (!threaded) break;
    canvas.laid.courses[request.wire].points = std::move(threaded->points);
    if (!push_aside(plan, canvas, is_new)) continue;
    const int moved = count_moved(before, canvas);
    if (moved < fewest) fewest = moved, best = canvas;
    if (moved == 0) break;
  }
  canvas = fewest == INT_MAX ? before : best;
  return fewest != INT_MAX;
}

}  // namespace

int count_moved(const Canvas& before, const Canvas& after) {
  int moved = 0;
  for (std::size_t b = 0; b < before.boxes.size(); ++b) {
    const GridBox &was = before.boxes[b], &is = after.boxes[b];
    moved += was.x0 != is.x0 || was.y0 != is.y0;
  }
  return moved;
}

bool push_aside(const Plan& plan, Canvas& canvas, const std::vector<char>& is_new, std::vector<GridPoint> lean) {
  Crowded crowded{*plan.graph,        plan.figure, is_new, canvas.laid.boxes, canvas.laid.courses,
                  canvas.laid.bands, std::move(lean)};
  if (!make_room(crowded, plan.spacing)) return false;
  for (std::size_t b = 0; b < canvas.boxes.size(); ++b)
    if (canvas.boxes[b].width() > 0) canvas.boxes[b] = canvas.laid.boxes[b].box;
  canvas.segments = find_segments(canvas.laid);
  return true;
}

std::vector<Segment> segments_of(int wire, const Course& course) {
  Laid one;
  one.courses.push_back(course);
  std::vector<Segment> out = find_segments(one);
  for (Segment& s : out) s.wire = wire;
  return out;
}

ThreadEnd thread_end(const Graph& graph, const Canvas& canvas, int box, int terminal) {
  const GraphTerminal& t = graph.boxes[box].terminals[terminal];
  const PlacedBox& placed = canvas.laid.boxes[box];
  ThreadEnd end{{placed.is_mirrored ? placed.box.x1 - t.at.x : placed.box.x0 + t.at.x, placed.box.y0 + t.at.y},
                t.side,
                box,
                terminal};
  if (placed.is_mirrored && t.side == Side::left) end.side = Side::right;
  if (placed.is_mirrored && t.side == Side::right) end.side = Side::left;
  return end;
}

bool draw_wire(const Plan& plan, Canvas& canvas, int wire, Squeeze squeeze) {
  const GraphWire& g = plan.graph->wires[wire];
  const ThreadRequest request{*plan.graph,
                              canvas.boxes,
                              canvas.segments,
                              canvas.laid.courses,
                              plan.figure,
                              wire,
                              thread_end(*plan.graph, canvas, g.from_box, g.from_terminal),
                              thread_end(*plan.graph, canvas, g.to_box, g.to_terminal),
                              squeeze};
  if (squeeze == Squeeze::allowed) return squeeze_in(plan, canvas, request);
  auto threaded = thread_wire(request, plan.spacing, plan.weights);
  if (!threaded) return false;
  canvas.laid.courses[wire].points = std::move(threaded->points);
  for (const Segment& s : segments_of(wire, canvas.laid.courses[wire])) canvas.segments.push_back(s);
  return true;
}

namespace {

/// Wires that run near one of the ends, nearest first.
std::vector<int> wires_near(const Canvas& canvas, GridPoint a, GridPoint b) {
  std::map<int, Grid> distance;
  for (const Segment& s : canvas.segments)
    for (const GridPoint p : {a, b}) {
      const Grid across = std::abs(s.at - (s.is_level ? p.y : p.x)), along = s.is_level ? p.x : p.y;
      const Grid away = across + std::max({s.low - along, along - s.high, 0});
      if (away > near_enough) continue;
      const auto [it, is_first] = distance.emplace(s.wire, away);
      if (!is_first) it->second = std::min(it->second, away);
    }
  std::vector<std::pair<Grid, int>> order;
  for (const auto& [wire, away] : distance) order.emplace_back(away, wire);
  std::sort(order.begin(), order.end());
  std::vector<int> wires;
  for (const auto& [away, wire] : order)
    if (wires.size() < most_redrawn) wires.push_back(wire);
  return wires;
}

/// Takes one wire out that is in the way, draws the new one, and draws the other again by another way.
bool draw_before_another(const Plan& plan, Canvas& canvas, int wire) {
  const GraphWire& g = plan.graph->wires[wire];
  const Canvas before = canvas;
  for (const int other : wires_near(canvas, thread_end(*plan.graph, canvas, g.from_box, g.from_terminal).at,
                                    thread_end(*plan.graph, canvas, g.to_box, g.to_terminal).at)) {
    canvas.laid.courses[other].points.clear();
    std::erase_if(canvas.segments, [other](const Segment& s) { return s.wire == other; });
    const auto goes = [&](int w) {
      return draw_wire(plan, canvas, w, Squeeze::never) ||
             (draw_wire(plan, canvas, w, Squeeze::allowed) && count_moved(before, canvas) == 0);
    };
    if (goes(wire) && goes(other)) return true;
    canvas = before;
  }
  return false;
}

}  // namespace

bool work_in(const Plan& plan, Canvas& canvas, int wire) {
  if (draw_wire(plan, canvas, wire, Squeeze::never)) return true;
  const Canvas before = canvas;
  const bool fits = draw_wire(plan, canvas, wire, Squeeze::allowed);
  if (fits && count_moved(before, canvas) == 0) return true;
  Canvas pushed = std::exchange(canvas, before);
  if (draw_before_another(plan, canvas, wire)) return true;
  if (fits) canvas = std::move(pushed);
  return fits;
}

long draw_wires_of(const Plan& plan, Canvas& canvas, int box, Squeeze squeeze) {
  long cost = 0;
  const Canvas before = canvas;
  for (int w : wires_to_draw(*plan.graph, canvas, box)) {
    if (!(squeeze == Squeeze::never ? draw_wire(plan, canvas, w, squeeze) : work_in(plan, canvas, w))) return INT64_MAX;
    const auto& p = canvas.laid.courses[w].points;
    cost += static_cast<long>(p.size()) * plan.weights.bend;
    for (std::size_t i = 1; i < p.size(); ++i) cost += std::abs(p[i].x - p[i - 1].x) + std::abs(p[i].y - p[i - 1].y);
    for_each_meeting(canvas.segments, [&](const Segment& level, const Segment& upright) {
      if ((level.wire == w || upright.wire == w) && crosses(level, upright)) cost += plan.weights.crossing;
    });
  }
  cost += static_cast<long>(count_moved(before, canvas)) * plan.weights.part_moved;
  return cost;
}

}  // namespace loomfolio::laying
