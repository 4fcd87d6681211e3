// SPDX-License-Identifier: MIT
#include "layout/keep_match.h"

#include <algorithm>
#include <map>
#include <string>

namespace loomfolio::laying {

bool has_same_size(const GraphBox& a, const GraphBox& b) {
  if (a.width != b.width || a.height != b.height || a.terminals.size() != b.terminals.size()) return false;
  for (std::size_t i = 0; i < a.terminals.size(); ++i)
    if (a.terminals[i].side != b.terminals[i].side || a.terminals[i].at != b.terminals[i].at) return false;
  return true;
}

namespace {

constexpr std::size_t spare_boxes = 2, spare_wires = 4;  // an edit of that many is small in any graph
constexpr std::size_t percent = 25;                      // beyond those, of what there is

bool stands_alike(const GraphBox& a, const GraphBox& b) {
  return (a.role == BoxRole::reference) == (b.role == BoxRole::reference) && a.zone == b.zone;
}

bool is_joint(const GraphBox& box) { return box.joint.pitch > 0; }

bool is_alike(const GraphBox& a, const GraphBox& b, Likeness likeness) {
  if (likeness == Likeness::terminals) return is_joint(a) == is_joint(b);
  return has_same_size(a, b);
}

/// By box: the names of its wires, sorted.
std::vector<std::vector<std::string>> wires_of_boxes(const Graph& graph) {
  std::vector<std::vector<std::string>> names(graph.boxes.size());
  for (const GraphWire& w : graph.wires) {
    names[w.from_box].push_back(w.name);
    names[w.to_box].push_back(w.name);
  }
  for (auto& n : names) std::sort(n.begin(), n.end());
  return names;
}

/// A box with a new name is the old one when it looks the same and has the same wires.
void match_renamed(const Graph& graph, const Graph& earlier, Likeness likeness, std::vector<int>& box) {
  const auto names = wires_of_boxes(graph), earlier_names = wires_of_boxes(earlier);
  std::vector<char> is_taken(earlier.boxes.size(), 0);
  for (int e : box)
    if (e >= 0) is_taken[e] = 1;
  for (std::size_t b = 0; b < box.size(); ++b) {
    if (box[b] >= 0 || names[b].empty()) continue;
    for (std::size_t e = 0; e < earlier.boxes.size() && box[b] < 0; ++e) {
      if (is_taken[e] || names[b] != earlier_names[e] || !is_alike(graph.boxes[b], earlier.boxes[e], likeness))
        continue;
      if (!stands_alike(graph.boxes[b], earlier.boxes[e])) continue;
      box[b] = static_cast<int>(e);
      is_taken[e] = 1;
    }
  }
}

/// One end of a wire at a box that is where it was: at the same terminal, or at one with its name on the same side.
bool ends_alike(const Graph& graph, const Graph& earlier, const KeepMatch& match, int box, int terminal, int old_box,
                int old_terminal) {
  if (match.box[box] != old_box || !match.is_same_box[box]) return false;
  const GraphBox &a = graph.boxes[box], &b = earlier.boxes[old_box];
  const GraphTerminal &now = a.terminals[terminal], &was = b.terminals[old_terminal];
  return now.side == was.side &&
         (now.name == was.name || is_joint(a) || (terminal == old_terminal && has_same_size(a, b)));
}

/// By name; then, for wires that were numbered anew, by their ends.
void match_wires(const Graph& graph, const Graph& earlier, KeepMatch& match) {
  std::map<std::string, int> by_name;
  for (std::size_t e = 0; e < earlier.wires.size(); ++e) by_name.emplace(earlier.wires[e].name, static_cast<int>(e));
  match.wire.assign(graph.wires.size(), -1);
  std::vector<char> is_taken(earlier.wires.size(), 0);
  const auto try_wire = [&](std::size_t w, int e) {
    const GraphWire &now = graph.wires[w], &was = earlier.wires[e];
    if (is_taken[e] ||
        !ends_alike(graph, earlier, match, now.from_box, now.from_terminal, was.from_box, was.from_terminal) ||
        !ends_alike(graph, earlier, match, now.to_box, now.to_terminal, was.to_box, was.to_terminal))
      return;
    match.wire[w] = e;
    is_taken[e] = 1;
  };
  for (std::size_t w = 0; w < graph.wires.size(); ++w)
    if (const auto it = by_name.find(graph.wires[w].name); it != by_name.end()) try_wire(w, it->second);
  for (std::size_t w = 0; w < graph.wires.size(); ++w)
    for (std::size_t e = 0; e < earlier.wires.size() && match.wire[w] < 0; ++e) try_wire(w, static_cast<int>(e));
}

}  // namespace

KeepMatch match_graphs(const Graph& graph, const Graph& earlier, Likeness likeness) {
  KeepMatch match;
  std::map<std::string, int> by_name;
  for (std::size_t e = 0; e < earlier.boxes.size(); ++e) by_name.emplace(earlier.boxes[e].name, static_cast<int>(e));
  for (const GraphBox& box : graph.boxes) {
    const auto it = by_name.find(box.name);
    const bool is_known = it != by_name.end() && stands_alike(box, earlier.boxes[it->second]);
    match.box.push_back(is_known ? it->second : -1);
  }
  match_renamed(graph, earlier, likeness, match.box);
  for (std::size_t b = 0; b < graph.boxes.size(); ++b)
    match.is_same_box.push_back(match.box[b] >= 0 && is_alike(graph.boxes[b], earlier.boxes[match.box[b]], likeness));
  match_wires(graph, earlier, match);
  const auto new_boxes = static_cast<std::size_t>(std::count(match.is_same_box.begin(), match.is_same_box.end(), 0));
  const auto new_wires = static_cast<std::size_t>(std::count(match.wire.begin(), match.wire.end(), -1));
  const bool has_as_many_zones = graph.zones.size() == earlier.zones.size();  // a zone may have a new name
  match.is_small_edit = has_as_many_zones && new_boxes <= spare_boxes + graph.boxes.size() * percent / 100 &&
                        new_wires <= spare_wires + graph.wires.size() * percent / 100;
  return match;
}

}  // namespace loomfolio::laying
