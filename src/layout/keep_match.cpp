// SPDX-License-Identifier: MIT
#include "layout/keep_match.h"

#include <algorithm>
#include <map>
#include <string>

namespace loomfolio::laying {
namespace {

constexpr std::size_t spare_boxes = 2, spare_wires = 4;  // an edit of that many is small in any graph
constexpr std::size_t percent = 25;                      // beyond those, of what there is

bool is_alike(const GraphBox& a, const GraphBox& b, Likeness likeness) {
  if (a.terminals.size() != b.terminals.size()) return false;
  const bool sizes = likeness == Likeness::sizes;
  if (sizes && (a.width != b.width || a.height != b.height)) return false;
  for (std::size_t i = 0; i < a.terminals.size(); ++i) {
    if (a.terminals[i].side != b.terminals[i].side) return false;
    if (sizes ? a.terminals[i].at != b.terminals[i].at : a.terminals[i].name != b.terminals[i].name) return false;
  }
  return true;
}

bool stands_alike(const Graph& graph, const GraphBox& a, const Graph& earlier, const GraphBox& b) {
  if ((a.role == BoxRole::reference) != (b.role == BoxRole::reference)) return false;
  const auto zone_name = [](const Graph& g, int zone) {
    return zone >= 0 && zone < static_cast<int>(g.zones.size()) ? g.zones[zone].name : std::string();
  };
  return zone_name(graph, a.zone) == zone_name(earlier, b.zone);
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
      if (!stands_alike(graph, graph.boxes[b], earlier, earlier.boxes[e])) continue;
      box[b] = static_cast<int>(e);
      is_taken[e] = 1;
    }
  }
}

/// The same terminal of a matched box: by number when the box is as it was, else by name.
bool ends_alike(const Graph& graph, const Graph& earlier, const KeepMatch& match, int box, int terminal, int old_box,
                int old_terminal) {
  if (match.box[box] != old_box) return false;
  if (match.is_same_box[box]) return terminal == old_terminal;
  return graph.boxes[box].terminals[terminal].name == earlier.boxes[old_box].terminals[old_terminal].name;
}

void match_wires(const Graph& graph, const Graph& earlier, KeepMatch& match) {
  std::map<std::string, int> by_name;
  for (std::size_t e = 0; e < earlier.wires.size(); ++e) by_name.emplace(earlier.wires[e].name, static_cast<int>(e));
  for (std::size_t w = 0; w < graph.wires.size(); ++w) {
    const GraphWire& wire = graph.wires[w];
    const auto it = by_name.find(wire.name);
    match.wire.push_back(-1);
    if (it == by_name.end()) continue;
    const GraphWire& old = earlier.wires[it->second];
    if (ends_alike(graph, earlier, match, wire.from_box, wire.from_terminal, old.from_box, old.from_terminal) &&
        ends_alike(graph, earlier, match, wire.to_box, wire.to_terminal, old.to_box, old.to_terminal) &&
        match.is_same_box[wire.from_box] && match.is_same_box[wire.to_box])
      match.wire.back() = it->second;
  }
}

}  // namespace

bool has_same_size(const GraphBox& a, const GraphBox& b) { return is_alike(a, b, Likeness::sizes); }

KeepMatch match_graphs(const Graph& graph, const Graph& earlier, Likeness likeness) {
  KeepMatch match;
  std::map<std::string, int> by_name;
  for (std::size_t e = 0; e < earlier.boxes.size(); ++e) by_name.emplace(earlier.boxes[e].name, static_cast<int>(e));
  for (const GraphBox& box : graph.boxes) {
    const auto it = by_name.find(box.name);
    const bool is_known = it != by_name.end() && stands_alike(graph, box, earlier, earlier.boxes[it->second]);
    match.box.push_back(is_known ? it->second : -1);
  }
  match_renamed(graph, earlier, likeness, match.box);
  for (std::size_t b = 0; b < graph.boxes.size(); ++b)
    match.is_same_box.push_back(match.box[b] >= 0 && is_alike(graph.boxes[b], earlier.boxes[match.box[b]], likeness));
  match_wires(graph, earlier, match);
  const auto new_boxes = static_cast<std::size_t>(std::count(match.is_same_box.begin(), match.is_same_box.end(), 0));
  const auto new_wires = static_cast<std::size_t>(std::count(match.wire.begin(), match.wire.end(), -1));
  bool has_same_zones = graph.zones.size() == earlier.zones.size();
  for (std::size_t z = 0; has_same_zones && z < graph.zones.size(); ++z)
    has_same_zones = graph.zones[z].name == earlier.zones[z].name;
  match.is_small_edit = has_same_zones && new_boxes <= spare_boxes + graph.boxes.size() * percent / 100 &&
                        new_wires <= spare_wires + graph.wires.size() * percent / 100;
  return match;
}

}  // namespace loomfolio::laying
