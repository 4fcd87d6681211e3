// SPDX-License-Identifier: MIT
// The engine as a list of its passes.
#include "layout/decorate.h"
#include "layout/draw.h"
#include "layout/label.h"
#include "layout/laid.h"
#include "layout/place.h"

namespace loomfolio {

Laid lay_out(const Graph& graph, const LayoutOptions&) {
  using namespace laying;
  Plan plan = make_plan(graph);
  rank_bodies(plan);
  arrange(plan);
  const Streets streets = make_streets(plan);
  const Routes routes = route_all(plan, streets, 2);
  Tracks tracks;
  order_alleys(plan, streets, routes, tracks);
  place_across(plan, streets, routes, tracks);
  order_channels(plan, streets, routes, tracks);
  place_down(plan, streets, tracks);
  Laid laid = draw(plan, streets, routes, tracks);
  add_dots(plan, laid);
  add_hops(plan, laid);
  for (int w : add_labels(plan, laid))
    laid.warnings.push_back({graph.wires[w].name, "no room for its label beside the wire"});
  return laid;
}

}  // namespace loomfolio
