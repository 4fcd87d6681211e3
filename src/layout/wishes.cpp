// SPDX-License-Identifier: MIT
#include "layout/wishes.h"

#include <algorithm>
#include <set>
#include <string>

namespace loomfolio::laying {
namespace {

bool is_level(Side side) { return side == Side::left || side == Side::right; }

/// The rows that a body may stand in at all: first and last.
std::pair<int, int> rows_of(const Plan& plan, const Body& body) {
  int first = 0, last = static_cast<int>(plan.rows.size()) - 1;
  if (plan.flow == Flow::across) {
    const auto is_own = [&](int zone) { return zone == body.zone_column; };
    const auto& zones = plan.zone_of_row;
    first = static_cast<int>(std::find_if(zones.begin(), zones.end(), is_own) - zones.begin());
    last = static_cast<int>(zones.rend() - std::find_if(zones.rbegin(), zones.rend(), is_own)) - 1;
  }
  if (body.row_pin == PinnedEnd::first) last = first;
  if (body.row_pin == PinnedEnd::last) first = last;
  return {first, last};
}

/// Bodies pinned to an end stand there, one behind the other where several are.
int turn_of(const Body& body) {
  return body.place_pin == PinnedEnd::first ? 0 : body.place_pin == PinnedEnd::last ? 2 : 1;
}

bool stands_beyond(const GridBox& other, const GridBox& own, Side edge) {
  switch (edge) {
    case Side::top: return other.y1 <= own.y0 && other.x0 < own.x1 && own.x0 < other.x1;
    case Side::bottom: return other.y0 >= own.y1 && other.x0 < own.x1 && own.x0 < other.x1;
    case Side::left: return other.x1 <= own.x0 && other.y0 < own.y1 && own.y0 < other.y1;
    case Side::right: return other.x0 >= own.x1 && other.y0 < own.y1 && own.y0 < other.y1;
  }
  return false;
}

std::set<std::string> wishes_of(const Graph& graph) {
  std::set<std::string> wishes;
  for (const GraphBox& box : graph.boxes) {
    for (const Side side : box.pins) wishes.insert("pin " + box.name + " " + std::to_string(static_cast<int>(side)));
    for (const int other : box.apart) wishes.insert("apart " + box.name + " " + graph.boxes[static_cast<std::size_t>(other)].name);
  }
  for (const GraphWire& wire : graph.wires)
    for (const int other : wire.apart) wishes.insert("wires " + wire.name + " " + graph.wires[static_cast<std::size_t>(other)].name);
  return wishes;
}

}  // namespace

void take_pins(Plan& plan) {
  for (Body& body : plan.bodies)
    for (const Side side : plan.graph->boxes[static_cast<std::size_t>(body.members[0].box)].pins) {
      const PinnedEnd end = side == Side::top || side == Side::left ? PinnedEnd::first : PinnedEnd::last;
      (is_level(side) == (plan.flow == Flow::across) ? body.row_pin : body.place_pin) = end;
    }
}

bool may_stand(const Plan& plan, int body, int row, int place) {
  const Body& own = plan.bodies[body];
  const auto [first, last] = rows_of(plan, own);
  if (row < first || row > last) return false;
  int at = 0;
  for (const int other : plan.rows[row][own.column]) {
    if (other == body) continue;
    const int turn = turn_of(plan.bodies[other]);
    if (at < place ? turn > turn_of(own) : turn < turn_of(own)) return false;
    ++at;
  }
  return true;
}

bool may_swap(const Plan& plan, int body, int other) {
  const Body &a = plan.bodies[body], &b = plan.bodies[other];
  if (a.row_pin == b.row_pin && a.place_pin == b.place_pin) return true;
  return a.place_pin == b.place_pin && a.row == b.row;
}

void obey_pins(Plan& plan) {
  const bool has_pins = std::any_of(plan.bodies.begin(), plan.bodies.end(), [](const Body& body) {
    return body.row_pin != PinnedEnd::none || body.place_pin != PinnedEnd::none;
  });
  if (!has_pins) return;
  for (int b = 0; b < static_cast<int>(plan.bodies.size()); ++b) {
    Body& body = plan.bodies[b];
    const auto [first, last] = rows_of(plan, body);
    const int row = std::clamp(body.row, first, last);
    if (row == body.row) continue;
    std::erase(plan.rows[body.row][body.column], b);
    plan.rows[row][body.column].push_back(b);
    body.row = row;
  }
  for (auto& row : plan.rows)
    for (auto& bodies : row)
      std::stable_sort(bodies.begin(), bodies.end(),
                       [&](int a, int b) { return turn_of(plan.bodies[a]) < turn_of(plan.bodies[b]); });
}

long apart_charge(const Plan& plan, GridBox one, GridBox other) {
  const Grid across = std::max({0, other.x0 - one.x1, one.x0 - other.x1}), down = std::max({0, other.y0 - one.y1, one.y0 - other.y1});
  const Grid missing = plan.spacing.apart - std::max(across, down);
  return missing > 0 ? plan.weights.apart + static_cast<long>(missing) : 0;
}

Grid row_gap_for_apart(const Plan& plan, const std::vector<Grid>& body_x, int row) {
  for (std::size_t b = 0; b < plan.bodies.size(); ++b)
    for (const int other : plan.graph->boxes[plan.bodies[b].members[0].box].apart) {
      if (plan.bodies[b].row != row || plan.bodies[other].row != row + 1) continue;
      const Grid across = std::max(body_x[other] - body_x[b] - plan.bodies[b].width, body_x[b] - body_x[other] - plan.bodies[other].width);
      if (across < plan.spacing.apart) return plan.spacing.apart;
    }
  return 0;
}

bool pins_hold(const Graph& graph, const Laid& laid) {
  for (std::size_t b = 0; b < graph.boxes.size(); ++b)
    for (const Side edge : graph.boxes[b].pins)
      for (std::size_t o = 0; o < graph.boxes.size(); ++o) {
        if (o == b || graph.boxes[o].zone != graph.boxes[b].zone || graph.boxes[o].role == BoxRole::reference) continue;
        const auto& pins = graph.boxes[o].pins;
        if (std::find(pins.begin(), pins.end(), edge) != pins.end()) continue;
        if (stands_beyond(laid.boxes[o].box, laid.boxes[b].box, edge)) return false;
      }
  return true;
}

bool asks_the_same(const Graph& graph, const Graph& earlier) { return wishes_of(graph) == wishes_of(earlier); }

}  // namespace loomfolio::laying
