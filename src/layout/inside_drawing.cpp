// SPDX-License-Identifier: MIT
// Draws a part's inside: plan, blocks, rows, places, names. Control units and connectors have a manner of their own.
#include "layout/inside_drawing.h"

#include <algorithm>

#include "layout/inside_finish.h"
#include "layout/inside_link.h"

namespace loomfolio {
namespace {

using inside::Plan;

bool has_outputs(const Plan& plan) {
  return std::any_of(plan.part->insides.begin(), plan.part->insides.end(),
                     [](const Inside& inside) { return inside.type == InsideType::output; });
}

/// Each way goes from one terminal to one other; a sleeve that takes four bullets does not.
bool is_gate(const Plan& plan) {
  return plan.kind->is_connector &&
         std::all_of(plan.part->insides.begin(), plan.part->insides.end(), [](const Inside& inside) {
           return inside.nodes.size() == 2 && inside.nodes[0].terminal >= 0 && inside.nodes[1].terminal >= 0;
         });
}

/// Feeds and loads of a fuse box are told apart by their place; a box with a mirror image would be wired wrong.
bool keeps_its_order(const Plan& plan) {
  const auto fuses = std::count_if(plan.part->insides.begin(), plan.part->insides.end(),
                                   [](const Inside& inside) { return inside.type == InsideType::fuse; });
  return fuses > 2 || has_outputs(plan);
}

PartDrawing draw_by_flow(const Plan& plan) {
  const inside::Flow flow = inside::make_flow(plan);
  PartDrawing drawing = inside::place_flow(flow);
  inside::put_dots(drawing);
  inside::put_cores(plan, drawing);
  if (flow.is_transposed) inside::transpose(drawing);
  inside::put_terminal_names(plan, drawing);
  inside::put_part_name(plan, drawing);
  return drawing;
}

}  // namespace

PartDrawing draw_inside(const InsideRequest& request) {
  const Plan plan = inside::plan_inside(request);
  PartDrawing drawing;
  if (is_gate(plan))
    drawing = inside::draw_connector(plan);
  else if (has_outputs(plan))
    drawing = inside::draw_control_unit(plan);
  else
    drawing = draw_by_flow(plan);
  inside::put_hops(drawing);
  inside::put_baselines(plan, drawing);
  drawing.may_mirror = !keeps_its_order(plan);
  return drawing;
}

}  // namespace loomfolio
