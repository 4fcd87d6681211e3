// SPDX-License-Identifier: MIT
// Which terminals and insides of a part are drawn. A part may stand on several sheets, each time with the terminals
// used there: what only leads to other terminals is left out. Plain links are no elements: the nodes they join are
// drawn as one.
#include <algorithm>
#include <numeric>

#include "layout/inside_flow.h"

namespace loomfolio::inside {
namespace {

int raw_node(const Kind& kind, const Inside::Node& node) {
  return node.terminal >= 0 ? node.terminal : static_cast<int>(kind.terminals.size()) + node.inner;
}

int root_of(std::vector<int>& parent, int node) {
  while (parent[static_cast<std::size_t>(node)] != node) node = parent[static_cast<std::size_t>(node)];
  return node;
}

/// Joins nodes over links; the lowest node stands for all, so a terminal is preferred to an inner point.
std::vector<int> join_links(const Kind& kind, const Part& part, int nodes) {
  std::vector<int> parent(static_cast<std::size_t>(nodes));
  std::iota(parent.begin(), parent.end(), 0);
  for (const Inside& inside : part.insides) {
    if (inside.type != InsideType::link || inside.nodes.size() < 2) continue;
    if (symbol_of(kind, inside) == Symbol::spark_gap) continue;
    const int a = root_of(parent, raw_node(kind, inside.nodes[0])),
              b = root_of(parent, raw_node(kind, inside.nodes[1]));
    parent[static_cast<std::size_t>(std::max(a, b))] = std::min(a, b);
  }
  for (int i = 0; i < nodes; ++i) parent[static_cast<std::size_t>(i)] = root_of(parent, i);
  return parent;
}

bool is_joined_away(const Kind& kind, const Inside& inside) {
  return inside.type == InsideType::link && symbol_of(kind, inside) != Symbol::spark_gap;
}

/// How many shown elements meet each node, and whether a shown terminal does.
struct Meetings {
  std::vector<int> elements;
  std::vector<bool> has_terminal;
};

Meetings count_meetings(const Plan& plan) {
  Meetings meetings{std::vector<int>(static_cast<std::size_t>(plan.nodes), 0),
                    std::vector<bool>(static_cast<std::size_t>(plan.nodes), false)};
  for (std::size_t t = 0; t < plan.ends.size(); ++t)
    if (plan.ends[t] >= 0) meetings.has_terminal[static_cast<std::size_t>(plan.node_of[t])] = true;
  for (const Shown& shown : plan.shown) {
    std::vector<int> seen;
    for (int node : shown.nodes)
      if (node >= 0 && std::find(seen.begin(), seen.end(), node) == seen.end()) seen.push_back(node);
    for (int node : seen) ++meetings.elements[static_cast<std::size_t>(node)];
  }
  return meetings;
}

/// Drops ends that lead nowhere; true when something fell.
bool drop_dead_ends(Plan& plan) {
  const Meetings meetings = count_meetings(plan);
  bool fell = false;
  for (Shown& shown : plan.shown) {
    const Inside& inside = plan.part->insides[static_cast<std::size_t>(shown.inside)];
    int left = 0;
    for (int& node : shown.nodes) {
      if (node < 0) continue;
      const auto n = static_cast<std::size_t>(node);
      if (!meetings.has_terminal[n] && meetings.elements[n] < 2) {
        node = -1;
        fell = true;
      } else {
        ++left;
      }
    }
    const bool is_many = inside.type == InsideType::switch_ || inside.type == InsideType::charger;
    const int least = is_many ? 2 : static_cast<int>(std::min<std::size_t>(shown.nodes.size(), 2));
    if (left < least && !shown.nodes.empty()) {
      shown.nodes.clear();
      fell = true;
    }
    if (inside.type == InsideType::output && shown.nodes.size() > 1 && shown.nodes[1] < 0) {
      shown.nodes.clear();
      fell = true;
    }
  }
  std::erase_if(plan.shown, [](const Shown& shown) { return shown.nodes.empty(); });
  return fell;
}

}  // namespace

Plan plan_inside(const InsideRequest& request) {
  Plan plan;
  plan.request = &request;
  plan.part = &request.build.part(request.part);
  plan.kind = &request.build.kind_of(*plan.part);
  plan.nodes = static_cast<int>(plan.kind->terminals.size()) + plan.kind->inner_points;
  plan.ends = request.ends;
  plan.ends.resize(plan.kind->terminals.size(), request.ends.empty() ? 1 : -1);
  plan.node_of = join_links(*plan.kind, *plan.part, plan.nodes);
  for (std::size_t i = 0; i < plan.part->insides.size(); ++i) {
    const Inside& inside = plan.part->insides[i];
    if (is_joined_away(*plan.kind, inside)) continue;
    Shown shown{static_cast<int>(i), {}};
    for (const Inside::Node& node : inside.nodes)
      shown.nodes.push_back(plan.node_of[static_cast<std::size_t>(raw_node(*plan.kind, node))]);
    plan.shown.push_back(std::move(shown));
  }
  while (drop_dead_ends(plan)) {}
  return plan;
}

}  // namespace loomfolio::inside
