// SPDX-License-Identifier: MIT
// From boxes and wires to bodies and pins. Wires that share a terminal are one figure; wires that only meet in a splice are not,
// since the splice's own box joins them.
#include "layout/plan.h"

#include <algorithm>
#include <map>
#include <numeric>

#include "layout/wishes.h"

namespace loomfolio::laying {
namespace {

int find_root(std::vector<int>& root, int i) {
  while (root[i] != i) i = root[i] = root[root[i]];
  return i;
}

/// References stand at the outer edges: one whose terminal looks right stands at the left.
int column_of(const Graph& graph, const GraphBox& box) {
  const int zones = std::max<int>(1, static_cast<int>(graph.zones.size()));
  if (box.role != BoxRole::reference || box.terminals.empty()) return std::clamp(box.zone, 0, zones - 1) + 1;
  if (box.terminals[0].side == Side::right) return 0;
  if (box.terminals[0].side == Side::left) return zones + 1;
  return std::clamp(box.zone, 0, zones - 1) + 1;
}

void add_pin(Plan& plan, int wire, int box, int terminal) {
  const GraphTerminal& t = plan.graph->boxes[box].terminals[terminal];
  if (plan.flow == Flow::down) plan.pins.push_back({wire, box, terminal, box, t.side, t.at});
  else plan.pins.push_back({wire, box, terminal, box, turned(t.side), turned(t.at)});
}

void make_pins(Plan& plan) {
  const Graph& graph = *plan.graph;
  std::map<std::pair<int, int>, int> first_wire;
  std::vector<int> root(graph.wires.size());
  std::iota(root.begin(), root.end(), 0);
  for (int w = 0; w < static_cast<int>(graph.wires.size()); ++w) {
    const GraphWire& wire = graph.wires[w];
    for (const auto& [box, terminal] : {std::pair{wire.from_box, wire.from_terminal}, std::pair{wire.to_box, wire.to_terminal}}) {
      add_pin(plan, w, box, terminal);
      const int a = find_root(root, first_wire.try_emplace({box, terminal}, w).first->second), b = find_root(root, w);
      root[std::max(a, b)] = std::min(a, b);
    }
  }
  for (int w = 0; w < static_cast<int>(root.size()); ++w) plan.figure.push_back(find_root(root, w));
}

void make_bodies(Plan& plan) {
  const Graph& graph = *plan.graph;
  for (std::size_t b = 0; b < graph.boxes.size(); ++b) {
    const GraphBox& box = graph.boxes[b];
    Body body;
    body.members.push_back({static_cast<int>(b), {0, 0}});
    body.width = plan.flow == Flow::down ? box.width : box.height;
    body.height = plan.flow == Flow::down ? box.height : box.width;
    body.zone_column = column_of(graph, box);
    body.column = plan.flow == Flow::down ? body.zone_column : 0;
    body.wished_rank = box.rank;
    body.is_joint = box.joint.pitch > 0;
    body.may_mirror = box.may_mirror && !body.is_joint;
    plan.bodies.push_back(body);
  }
}

}  // namespace

Grid distance_between(const Plan& plan, int wire_a, int wire_b) {
  const std::vector<int>& apart = plan.graph->wires[wire_a].apart;
  const bool is_apart = std::find(apart.begin(), apart.end(), wire_b) != apart.end();
  return std::max(is_apart ? plan.spacing.wires_apart : plan.spacing.pitch, plan.spacing.least + half_pen(plan, wire_a) + half_pen(plan, wire_b));
}

GridPoint turned(GridPoint p) { return {p.y, p.x}; }

Side turned(Side side) {
  switch (side) {
    case Side::top: return Side::left;
    case Side::left: return Side::top;
    case Side::right: return Side::bottom;
    case Side::bottom: return Side::right;
  }
  return side;
}

Plan make_plan(const Graph& graph, Flow flow) {
  Plan plan;
  plan.graph = &graph;
  plan.flow = flow;
  plan.zone_columns = std::max<int>(1, static_cast<int>(graph.zones.size())) + 2;
  plan.columns = flow == Flow::down ? plan.zone_columns : 1;
  make_pins(plan);
  make_bodies(plan);
  take_pins(plan);
  return plan;
}

}  // namespace loomfolio::laying
