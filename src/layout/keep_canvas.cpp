// SPDX-License-Identifier: MIT
#include "layout/keep_canvas.h"

#include <algorithm>

#include "layout/make_room.h"

namespace loomfolio::laying {
namespace {

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

}  // namespace

bool push_aside(const Plan& plan, Canvas& canvas, const std::vector<char>& is_new) {
  Crowded crowded{*plan.graph, plan.figure, is_new, canvas.laid.boxes, canvas.laid.courses, canvas.laid.bands};
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
  auto threaded = thread_wire(request, plan.spacing, plan.weights);
  if (!threaded) return false;
  canvas.laid.courses[wire].points = std::move(threaded->points);
  if (squeeze == Squeeze::allowed) {
    std::vector<char> is_new(plan.graph->wires.size(), 0);
    is_new[wire] = 1;
    if (push_aside(plan, canvas, is_new)) return true;
    canvas.laid.courses[wire].points.clear();
    return false;
  }
  for (const Segment& s : segments_of(wire, canvas.laid.courses[wire])) canvas.segments.push_back(s);
  return true;
}

long draw_wires_of(const Plan& plan, Canvas& canvas, int box, Squeeze squeeze) {
  long cost = 0;
  for (int w : wires_to_draw(*plan.graph, canvas, box)) {
    if (!draw_wire(plan, canvas, w, Squeeze::never) &&
        (squeeze == Squeeze::never || !draw_wire(plan, canvas, w, squeeze)))
      return INT64_MAX;
    const auto& p = canvas.laid.courses[w].points;
    cost += static_cast<long>(p.size()) * plan.weights.bend;
    for (std::size_t i = 1; i < p.size(); ++i) cost += std::abs(p[i].x - p[i - 1].x) + std::abs(p[i].y - p[i - 1].y);
    for_each_meeting(canvas.segments, [&](const Segment& level, const Segment& upright) {
      if ((level.wire == w || upright.wire == w) && crosses(level, upright)) cost += plan.weights.crossing;
    });
  }
  return cost;
}

}  // namespace loomfolio::laying
