// SPDX-License-Identifier: MIT
// The engine as a list of its passes.
#include "layout/decorate.h"
#include "layout/draw.h"
#include "layout/joints.h"
#include "layout/label.h"
#include "layout/laid.h"
#include "layout/measure.h"
#include "layout/place.h"
#include "layout/rough.h"

namespace loomfolio {
namespace laying {
namespace {

/// Rows suit parts wired above and below; columns suit parts wired at their ends.
Flow choose_flow(const Graph& graph) {
  std::size_t beside = 0;
  for (const GraphWire& w : graph.wires) {
    beside += !is_upright(graph.boxes[w.from_box].terminals[w.from_terminal].side);
    beside += !is_upright(graph.boxes[w.to_box].terminals[w.to_terminal].side);
  }
  return beside * 5 > graph.wires.size() * 6 ? Flow::across : Flow::down;
}

/// Courses, tracks and places for bodies that stand in rows.
Laid draw_round(const Plan& plan, const Rough& rough, Tracks& tracks) {
  const Streets streets = make_streets(plan);
  const Routes routes = rough.routes();
  order_alleys(plan, streets, routes, rough.body_x(), tracks);
  place_across(plan, streets, routes, tracks);
  order_channels(plan, streets, routes, tracks);
  place_down(plan, streets, tracks);
  return draw(plan, streets, routes, tracks);
}

Laid lay_out_with(const Graph& graph, Flow flow) {
  Plan plan = make_plan(graph, flow);
  rank_bodies(plan);
  settle_joints(plan);
  arrange(plan);
  settle_joints(plan);
  refine(plan);
  settle_joints(plan);
  Rough rough(plan);
  Laid laid;
  long best = INT64_MAX;
  for (int round = 0; round < 4; ++round) {
    rough.reroute(3);
    Tracks tracks;
    Laid drawn = draw_round(plan, rough, tracks);
    const Quality q = measure(drawn);
    if (q.cost(plan.weights) < best) {
      best = q.cost(plan.weights);
      laid = std::move(drawn);
    }
    rough.take_places(tracks);
  }
  add_dots(plan, laid);
  add_hops(laid);
  for (int w : add_labels(plan, laid))
    laid.warnings.push_back({graph.wires[w].name, "no room for its label beside the wire"});
  return laid;
}

}  // namespace
}  // namespace laying

Laid lay_out(const Graph& graph, const LayoutOptions&) { return laying::lay_out_with(graph, laying::choose_flow(graph)); }

}  // namespace loomfolio
