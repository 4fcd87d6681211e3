// SPDX-License-Identifier: MIT
// From boxes and wires to bodies, pins and components. Wires that share a terminal are one component; wires that only meet in a
// splice are not, since the splice's own box joins them.
#include "layout/plan.h"

#include <algorithm>
#include <map>
#include <numeric>

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

int add_pin(Plan& plan, std::map<std::pair<int, int>, int>& known, int box, int terminal) {
  const auto [it, is_new] = known.try_emplace({box, terminal}, static_cast<int>(plan.pins.size()));
  if (is_new) {
    const GraphTerminal& t = plan.graph->boxes[box].terminals[terminal];
    plan.pins.push_back({box, terminal, -1, -1, t.side, t.at});
  }
  return it->second;
}

void make_components(Plan& plan) {
  const Graph& graph = *plan.graph;
  std::map<std::pair<int, int>, int> known;
  for (const GraphWire& w : graph.wires) {
    plan.pin_of_wire_from.push_back(add_pin(plan, known, w.from_box, w.from_terminal));
    plan.pin_of_wire_to.push_back(add_pin(plan, known, w.to_box, w.to_terminal));
  }
  std::vector<int> root(plan.pins.size());
  std::iota(root.begin(), root.end(), 0);
  for (std::size_t w = 0; w < graph.wires.size(); ++w) {
    const int a = find_root(root, plan.pin_of_wire_from[w]), b = find_root(root, plan.pin_of_wire_to[w]);
    root[std::max(a, b)] = std::min(a, b);
  }
  for (std::size_t p = 0; p < plan.pins.size(); ++p) {
    const int r = find_root(root, static_cast<int>(p));
    if (r == static_cast<int>(p)) {
      plan.pins[p].component = static_cast<int>(plan.components.size());
      plan.components.emplace_back();
    }
    plan.pins[p].component = plan.pins[r].component;
    plan.components[plan.pins[p].component].pins.push_back(static_cast<int>(p));
  }
  for (std::size_t w = 0; w < graph.wires.size(); ++w) {
    Component& c = plan.components[plan.pins[plan.pin_of_wire_from[w]].component];
    c.wires.push_back(static_cast<int>(w));
    c.half_pen = std::max(c.half_pen, (graph.wires[w].pen + 1) / 2);
    c.label_height = std::max(c.label_height, graph.wires[w].label_height);
  }
}

void make_bodies(Plan& plan) {
  const Graph& graph = *plan.graph;
  for (std::size_t b = 0; b < graph.boxes.size(); ++b) {
    const GraphBox& box = graph.boxes[b];
    Body body;
    body.members.push_back({static_cast<int>(b), {0, 0}});
    body.width = box.width;
    body.height = box.height;
    body.column = column_of(graph, box);
    body.wished_rank = box.rank;
    body.may_mirror = box.may_mirror;
    plan.bodies.push_back(body);
  }
  for (Pin& pin : plan.pins) pin.body = pin.box;
}

}  // namespace

Side side_of(const Plan& plan, int pin) {
  const Pin& p = plan.pins[pin];
  if (!plan.bodies[p.body].is_mirrored || is_upright(p.side)) return p.side;
  return p.side == Side::left ? Side::right : Side::left;
}

GridPoint offset_of(const Plan& plan, int pin) {
  const Pin& p = plan.pins[pin];
  const Body& body = plan.bodies[p.body];
  return body.is_mirrored ? GridPoint{body.width - p.at.x, p.at.y} : p.at;
}

Grid distance_between(const Plan& plan, int component_a, int component_b) {
  const Grid pens = plan.components[component_a].half_pen + plan.components[component_b].half_pen;
  return std::max(plan.spacing.pitch, plan.spacing.least + pens);
}

Plan make_plan(const Graph& graph) {
  Plan plan;
  plan.graph = &graph;
  plan.columns = std::max<int>(1, static_cast<int>(graph.zones.size())) + 2;
  make_components(plan);
  make_bodies(plan);
  return plan;
}

}  // namespace loomfolio::laying
