// SPDX-License-Identifier: MIT
// Terminals of a box with one name on one side are one terminal drawn wide: its wires change places as they come.
#include <doctest/doctest.h>

#include <algorithm>

#include "layout/drawn_machine.h"
#include "layout/laid.h"
#include "layout/measure.h"
#include "layout/verify.h"

using namespace loomfolio;

namespace {

GraphBox make_part(const char* name, BoxRole role, std::vector<GraphTerminal> terminals) {
  GraphBox box;
  box.name = name, box.role = role;
  box.width = 2000, box.height = 1000;
  box.terminals = std::move(terminals);
  return box;
}

/// A battery whose pole has three wires, given in the order of `places`, to fuses beside it in one row.
Graph battery_and_fuses(const std::vector<int>& places) {
  Graph graph;
  graph.zones.push_back({"zone"});
  graph.boxes.push_back(make_part("battery", BoxRole::supply, {{"+", Side::top, {500, 0}}, {"+", Side::top, {1000, 0}}, {"+", Side::top, {1500, 0}}}));
  for (const char* name : {"left", "right", "far right"}) graph.boxes.push_back(make_part(name, BoxRole::supply, {{"in", Side::top, {1000, 0}}}));
  for (int w = 0; w < 3; ++w) {
    GraphWire wire;
    wire.name = std::to_string(w);
    wire.from_box = 0, wire.from_terminal = places[static_cast<std::size_t>(w)], wire.to_box = w + 1, wire.to_terminal = 0;
    wire.net = 0, wire.pen = 50;
    graph.wires.push_back(wire);
  }
  return graph;
}

/// Every terminal on the upper side of a box has one name.
Graph with_wide_terminals(Graph graph) {
  for (GraphBox& box : graph.boxes)
    if (box.joint.pitch == 0)
      for (GraphTerminal& terminal : box.terminals)
        if (terminal.side == Side::top) terminal.name = "wide";
  return graph;
}

bool keeps_promises(const Graph& graph, const Laid& laid) { return verify(with_settled_joints(graph, laid), laid).empty(); }

/// Places of wires on the wide terminals of a box, from left to right, by wire.
std::vector<Grid> places_at(const Graph& graph, const Laid& laid, int box) {
  const Graph settled = with_settled_joints(graph, laid);
  std::vector<Grid> places;
  for (const GraphWire& w : graph.wires)
    if (w.from_box == box) places.push_back(settled.boxes[static_cast<std::size_t>(box)].terminals[static_cast<std::size_t>(w.from_terminal)].at.x);
  return places;
}

}  // namespace

TEST_CASE("in whatever order the wires of a pole are given, none crosses another on its way there") {
  std::vector<int> places{0, 1, 2};
  do {
    const Graph graph = battery_and_fuses(places);
    const Laid laid = lay_out(graph);
    CAPTURE(places[0]);
    CAPTURE(places[1]);
    CHECK(keeps_promises(graph, laid));
    CHECK(laying::measure(laid).crossings == 0);
    std::vector<Grid> taken = places_at(graph, laid, 0);
    std::sort(taken.begin(), taken.end());
    CHECK(taken == std::vector<Grid>{500, 1000, 1500});
  } while (std::next_permutation(places.begin(), places.end()));
}

TEST_CASE("wires that may change places cross less often, and every promise holds") {
  long apart = 0, wide = 0;
  for (std::uint64_t seed = 1; seed <= 8; ++seed) {
    const DrawnMachine& machine = drawn_machine(seed);
    const Graph graph = with_wide_terminals(machine.graph);
    const Laid laid = lay_out(graph);
    CAPTURE(seed);
    CHECK(keeps_promises(graph, laid));
    apart += laying::measure(machine.laid).crossings;
    wide += laying::measure(laid).crossings;
  }
  CHECK(wide < apart);
}

TEST_CASE("a wire more moves no wire of a pole") {
  const Graph graph = battery_and_fuses({2, 0, 1});
  const Laid laid = lay_out(graph);
  Graph edited = graph;
  edited.boxes.push_back(make_part("lamp", BoxRole::load, {{"in", Side::top, {1000, 0}}}));
  GraphWire wire;
  wire.name = "new", wire.net = 0, wire.pen = 50;
  wire.from_box = 1, wire.to_box = 4;
  edited.boxes[1].terminals.push_back({"out", Side::bottom, {1000, 1000}});
  wire.from_terminal = 1, wire.to_terminal = 0;
  edited.wires.insert(edited.wires.begin(), wire);
  const auto kept = lay_out_near(edited, laid, graph);
  REQUIRE(kept);
  CHECK(keeps_promises(edited, *kept));
  CHECK(places_at(edited, *kept, 0) == places_at(graph, laid, 0));
  for (std::size_t w = 0; w < 3; ++w) CHECK(kept->courses[w + 1].points.size() == laid.courses[w].points.size());
}
