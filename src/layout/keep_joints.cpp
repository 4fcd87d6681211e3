// SPDX-License-Identifier: MIT
// A joint is known by its name, or by its wires when it has a new one; each of its terminals by the wire that ends
// there. So is each place at a wide terminal, whose box is known by its name.
#include "layout/keep_joints.h"

#include <algorithm>
#include <array>
#include <climits>
#include <map>
#include <set>
#include <string>
#include <utility>

#include "layout/joints.h"

namespace loomfolio::laying {
namespace {

/// The wire of each terminal of a box, by name; the first where several share it.
std::map<std::string, int> terminals_by_wire(const Graph& graph, int box) {
  std::map<std::string, int> out;
  for (const GraphWire& w : graph.wires) {
    if (w.from_box == box) out.emplace(w.name, w.from_terminal);
    if (w.to_box == box) out.emplace(w.name, w.to_terminal);
  }
  return out;
}

const SettledJoint* find_joint(const Laid& earlier, const Graph& earlier_graph, const Graph& graph, int box) {
  std::set<std::string> names;
  for (const GraphBox& b : graph.boxes) names.insert(b.name);
  const auto own = terminals_by_wire(graph, box);
  const SettledJoint* found = nullptr;
  for (const SettledJoint& j : earlier.joints) {
    if (j.box < 0 || j.box >= static_cast<int>(earlier_graph.boxes.size()) || earlier_graph.boxes[j.box].joint.pitch == 0) continue;
    if (earlier_graph.boxes[j.box].name == graph.boxes[box].name) return &j;
    const auto old = terminals_by_wire(earlier_graph, j.box);
    const bool has_same_wires = std::equal(old.begin(), old.end(), own.begin(), own.end(),
                                           [](const auto& a, const auto& b) { return a.first == b.first; });
    if (found == nullptr && has_same_wires && names.count(earlier_graph.boxes[j.box].name) == 0) found = &j;
  }
  return found;
}

/// Level ends first, since they are free of words below; then below.
Side free_side(const std::array<int, 4>& count) {
  for (const Side side : {Side::left, Side::right})
    if (count[static_cast<std::size_t>(side)] == 0) return side;
  return Side::bottom;
}

std::vector<JointWish> wishes_of(const SettledJoint* old, const Graph& earlier_graph, const Graph& graph, int box) {
  const GraphBox& own = graph.boxes[box];
  std::vector<JointWish> wishes(own.terminals.size(), {Side::bottom, INT_MAX});
  std::vector<char> is_known(wishes.size(), 0);
  std::array<int, 4> count{};
  const auto before = old != nullptr ? terminals_by_wire(earlier_graph, old->box) : std::map<std::string, int>();
  for (const auto& [wire, terminal] : terminals_by_wire(graph, box)) {
    const auto it = before.find(wire);
    if (it == before.end() || it->second >= static_cast<int>(old->terminals.size()) || is_known[terminal]) continue;
    const GraphTerminal& was = old->terminals[it->second];
    const bool is_upright = was.side == Side::top || was.side == Side::bottom;
    wishes[terminal] = {was.side, is_upright ? was.at.x : was.at.y};
    is_known[terminal] = 1;
    ++count[static_cast<std::size_t>(was.side)];
  }
  for (std::size_t t = 0; t < wishes.size(); ++t) {
    if (is_known[t]) continue;
    wishes[t].side = free_side(count);
    ++count[static_cast<std::size_t>(wishes[t].side)];
  }
  return wishes;
}

Grid along(const GraphTerminal& terminal) {
  return terminal.side == Side::top || terminal.side == Side::bottom ? terminal.at.x : terminal.at.y;
}

/// The terminals of a box that are one drawn wide, each with a wire.
std::vector<std::vector<int>> wide_terminals(const GraphBox& box, const std::map<std::string, int>& by_wire) {
  std::set<int> wired;
  for (const auto& [wire, terminal] : by_wire) wired.insert(terminal);
  std::vector<std::vector<int>> wide;
  for (const int t : wired) {
    const auto found = std::find_if(wide.begin(), wide.end(), [&](const std::vector<int>& group) {
      return are_one_terminal(box.terminals[group.front()], box.terminals[t]);
    });
    if (found == wide.end()) wide.push_back({t});
    else found->push_back(t);
  }
  std::erase_if(wide, [](const std::vector<int>& group) { return group.size() < 2; });
  return wide;
}

/// The wires of a box's wide terminals in the order in which they stood, new ones after them. `before`: joints and wide terminals as
/// they were settled. Whether there are any.
bool keep_wide_terminals(const Graph& before, Graph& graph, int box) {
  GraphBox& own = graph.boxes[box];
  const auto by_wire = terminals_by_wire(graph, box);
  const std::vector<std::vector<int>> wide = wide_terminals(own, by_wire);
  const auto old = std::find_if(before.boxes.begin(), before.boxes.end(), [&](const GraphBox& b) { return b.name == own.name; });
  if (wide.empty() || old == before.boxes.end()) return false;
  const auto old_by_wire = terminals_by_wire(before, static_cast<int>(old - before.boxes.begin()));
  std::vector<Grid> stood(own.terminals.size(), INT_MAX);
  for (const auto& [wire, terminal] : by_wire) {
    const auto found = old_by_wire.find(wire);
    if (found == old_by_wire.end()) continue;
    const GraphTerminal& was = old->terminals[found->second];
    if (are_one_terminal(was, own.terminals[terminal])) stood[terminal] = along(was);
  }
  for (const std::vector<int>& terminals : wide) {
    std::vector<GridPoint> places;
    for (const int t : terminals) places.push_back(own.terminals[t].at);
    std::sort(places.begin(), places.end(), [](GridPoint a, GridPoint b) { return std::pair(a.x, a.y) < std::pair(b.x, b.y); });
    std::vector<int> order = terminals;
    std::stable_sort(order.begin(), order.end(), [&](int a, int b) { return stood[a] < stood[b]; });
    for (std::size_t i = 0; i < order.size(); ++i) own.terminals[order[i]].at = places[i];
  }
  return true;
}

}  // namespace

std::vector<SettledJoint> keep_joints(const Laid& earlier, const Graph& earlier_graph, Graph& graph) {
  const Graph before = with_settled_joints(earlier_graph, earlier);
  std::vector<SettledJoint> joints;
  for (int b = 0; b < static_cast<int>(graph.boxes.size()); ++b) {
    GraphBox& box = graph.boxes[b];
    if (box.joint.pitch == 0) {
      if (keep_wide_terminals(before, graph, b)) joints.push_back({b, box.width, box.height, box.terminals});
      continue;
    }
    const SettledJoint* old = find_joint(earlier, earlier_graph, graph, b);
    joints.push_back(arrange_joint(b, box, wishes_of(old, earlier_graph, graph, b)));
    box.width = joints.back().width;
    box.height = joints.back().height;
    box.terminals = joints.back().terminals;
  }
  return joints;
}

}  // namespace loomfolio::laying
