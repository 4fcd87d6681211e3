// SPDX-License-Identifier: MIT
// A small edit leaves what is known where it was.
#include <doctest/doctest.h>

#include <algorithm>
#include <cstdlib>
#include <string>

#include "layout/drawn_machine.h"
#include "layout/laid.h"
#include "layout/verify.h"

using namespace loomfolio;

namespace {

/// One more load in the last zone, wired to the control box and to an earth.
Graph with_one_more_load(Graph graph) {
  const int load = static_cast<int>(graph.boxes.size()), last_net = static_cast<int>(graph.wires.size()) + 1000000;
  graph.boxes.push_back({"new load",
                         static_cast<int>(graph.zones.size()) - 1,
                         BoxRole::load,
                         -1,
                         2000,
                         1500,
                         {{"1", Side::left, {0, 500}}, {"2", Side::left, {0, 1000}}}});
  const auto add = [&](const char* name, int box, int terminal, int own_terminal, int net) {
    GraphWire w;
    w.name = name;
    w.from_box = box, w.from_terminal = terminal, w.to_box = load, w.to_terminal = own_terminal;
    w.net = net;
    w.pen = 50;
    w.label_width = 1170, w.label_height = 200;
    for (const GraphWire& other : graph.wires)
      if ((other.from_box == box && other.from_terminal == terminal) ||
          (other.to_box == box && other.to_terminal == terminal))
        w.net = other.net;
    graph.wires.push_back(w);
  };
  add("new 1", 2, 1, 0, last_net);
  add("new 2", 3, 0, 1, last_net + 1);
  return graph;
}

/// Boxes and courses that are not where they were, after taking out the shift of the first box.
int count_changes(const Laid& before, const Laid& after) {
  const Grid dx = after.boxes[0].box.x0 - before.boxes[0].box.x0, dy = after.boxes[0].box.y0 - before.boxes[0].box.y0;
  int changes = 0;
  for (std::size_t b = 0; b < before.boxes.size(); ++b) {
    const GridBox a = before.boxes[b].box;
    changes += GridBox{a.x0 + dx, a.y0 + dy, a.x1 + dx, a.y1 + dy} != after.boxes[b].box;
  }
  for (std::size_t w = 0; w < before.courses.size(); ++w) {
    std::vector<GridPoint> points = before.courses[w].points;
    for (GridPoint& p : points) p = {p.x + dx, p.y + dy};
    changes += points != after.courses[w].points;
  }
  return changes;
}

/// More wires between terminals of the same zones, as dense as the dice want.
Graph with_more_wires(Graph graph, int count, std::uint64_t seed) {
  for (int i = 0; i < count; ++i) {
    const int from = static_cast<int>((seed * 7 + static_cast<std::uint64_t>(i) * 5) % 20), to = (from + 2 + i) % 25;
    GraphWire w;
    w.name = "more " + std::to_string(i);
    w.from_box = from, w.from_terminal = 0, w.to_box = to, w.to_terminal = 0;
    w.net = 2000000 + i;
    w.pen = 50;
    graph.wires.push_back(w);
    const auto old_nets = [&](int box) {
      for (const GraphWire& other : graph.wires)
        if ((other.from_box == box && other.from_terminal == 0) || (other.to_box == box && other.to_terminal == 0))
          return other.net;
      return 2000000 + i;
    };
    const int a = old_nets(from), b = old_nets(to), c = 2000000 + i;
    for (GraphWire& other : graph.wires)
      if (other.net == b || other.net == c) other.net = a;
  }
  return graph;
}

/// Pairs of boxes whose order left to right or up and down is another.
int count_flips(const Laid& before, const Laid& after) {
  int flips = 0;
  const auto differs = [](Grid a, Grid b, Grid c, Grid d) { return (a < b && c > d) || (a > b && c < d); };
  for (std::size_t i = 0; i < before.boxes.size(); ++i)
    for (std::size_t j = i + 1; j < before.boxes.size(); ++j) {
      const GridBox a = before.boxes[i].box, b = before.boxes[j].box, c = after.boxes[i].box, d = after.boxes[j].box;
      flips += differs(a.x0, b.x0, c.x0, d.x0) + differs(a.y0, b.y0, c.y0, d.y0);
    }
  return flips;
}

std::string shape_of(const Course& course) {
  std::string shape;
  for (std::size_t i = 1; i < course.points.size(); ++i) {
    const GridPoint a = course.points[i - 1], b = course.points[i];
    shape += a.x < b.x ? 'E' : a.x > b.x ? 'W' : a.y < b.y ? 'S' : 'N';
  }
  return shape;
}

int count_reshaped(const Laid& before, const Laid& after) {
  int reshaped = 0;
  for (std::size_t w = 0; w < before.courses.size(); ++w)
    reshaped += shape_of(before.courses[w]) != shape_of(after.courses[w]);
  return reshaped;
}

/// Boxes that are more than 1 mm from where they were, after taking out the shift of the first box.
int count_moved(const Laid& before, const Laid& after) {
  const Grid dx = after.boxes[0].box.x0 - before.boxes[0].box.x0, dy = after.boxes[0].box.y0 - before.boxes[0].box.y0;
  int moved = 0;
  for (std::size_t b = 0; b < before.boxes.size(); ++b)
    moved += std::abs(after.boxes[b].box.x0 - before.boxes[b].box.x0 - dx) > 100 ||
             std::abs(after.boxes[b].box.y0 - before.boxes[b].box.y0 - dy) > 100;
  return moved;
}

/// A box as it is with a longer name: wider, with what was at its right edge at the new one.
void widen(GraphBox& box, Grid by) {
  for (GraphTerminal& t : box.terminals)
    if (t.side == Side::right) t.at.x += by;
  box.width += by;
}

int count_violations(const Graph& graph, const Laid& laid) {
  return static_cast<int>(verify(with_settled_joints(graph, laid), laid).size());
}

}  // namespace

// Aim: all thirteen. In seed 6 a terminal is hemmed in and four parts of 25 are pushed aside.
TEST_CASE("one more part and two wires flip no order, reshape at most a tenth, and move nothing in most drawings") {
  int untouched = 0, within = 0;
  for (std::uint64_t seed = 1; seed <= 13; ++seed) {
    const bool is_whole_machine = seed > 10;
    const auto& [graph, before] = drawn_machine(seed, is_whole_machine ? 60 : 25, is_whole_machine ? 150 : 60);
    const Graph edited = with_one_more_load(graph);
    const Laid after = lay_out(edited, {&before, &graph});
    CAPTURE(seed);
    CHECK(count_violations(edited, after) == 0);
    CHECK(count_flips(before, after) == 0);
    CHECK(count_reshaped(before, after) * 10 <= static_cast<int>(before.courses.size()));
    within += count_moved(before, after) * 10 <= static_cast<int>(before.boxes.size());
    untouched += count_changes(before, after) == 0;
  }
  CHECK(untouched >= 11);
  CHECK(within >= 12);
}

TEST_CASE("a zone too narrow for a new part grows, and nothing else changes") {
  const auto& [graph, before] = drawn_machine(32);  // its last zone holds narrow parts alone
  Graph edited = with_one_more_load(graph);
  GraphBox& load = edited.boxes.back();
  load.width = before.bands.back().width() + 500;
  const Laid after = lay_out(edited, {&before, &graph});
  CHECK(count_violations(edited, after) == 0);
  CHECK(count_changes(before, after) == 0);
  CHECK(after.bands.back().width() > load.width);
  CHECK(after.width >= after.bands.back().x1);
}

// The way out is often taken: further wires part from those that are there, or push them aside; no order and no shape
// changes.
TEST_CASE(
    "fifteen more wires at terminals that are taken already flip no order, and move and reshape at most a tenth") {
  int moved = 0;
  for (std::uint64_t seed = 1; seed <= 10; ++seed) {
    const auto& [graph, before] = drawn_machine(seed);
    const Graph edited = with_more_wires(graph, 15, seed);
    const Laid after = lay_out(edited, {&before, &graph});
    CAPTURE(seed);
    CHECK(count_violations(edited, after) == 0);
    CHECK(count_flips(before, after) == 0);
    CHECK(count_reshaped(before, after) * 10 <= static_cast<int>(before.courses.size()));
    moved += count_moved(before, after);
  }
  CHECK(moved <= 25);  // of 250: a tenth
}

TEST_CASE("no edit, a new name, other labels and a wire taken away move nothing") {
  const auto& [graph, before] = drawn_machine(3);
  const LayoutOptions stay{&before, &graph};
  CHECK(count_changes(before, lay_out(graph, stay)) == 0);
  Graph renamed = graph;
  renamed.boxes[10].name = "another name";
  CHECK(count_changes(before, lay_out(renamed, stay)) == 0);
  Graph relabelled = graph;
  for (GraphWire& w : relabelled.wires) w.label_width += 300;
  CHECK(count_changes(before, lay_out(relabelled, stay)) == 0);
  Graph less = graph;
  less.wires.pop_back();
  Laid cut = before;
  cut.courses.pop_back();
  CHECK(count_changes(cut, lay_out(less, stay)) == 0);
}

TEST_CASE("a longer name and thicker wires push aside what is in their way, flip no order and reshape few wires") {
  int moved = 0;
  for (std::uint64_t seed = 1; seed <= 10; ++seed) {
    const auto& [graph, before] = drawn_machine(seed);
    Graph edited = graph;
    widen(edited.boxes[12], 600);
    for (int w : {4, 14, 24, 34, 44, 54}) edited.wires[w].pen = 220;
    const Laid after = lay_out(edited, {&before, &graph});
    CAPTURE(seed);
    CHECK(count_violations(edited, after) == 0);
    CHECK(count_flips(before, after) == 0);
    CHECK(count_reshaped(before, after) * 10 <= static_cast<int>(before.courses.size()));
    moved += count_moved(before, after);
  }
  CHECK(moved <= 25);  // of 250: a tenth
}

TEST_CASE("one more wire between a joint and a new terminal of a part flips no order and reshapes at most a tenth") {
  int moved = 0;
  for (std::uint64_t seed = 1; seed <= 10; ++seed) {
    const auto& [graph, before] = drawn_machine(seed);
    Graph edited = graph;
    const auto joint =
        std::find_if(edited.boxes.begin(), edited.boxes.end(), [](const GraphBox& b) { return b.joint.pitch > 0; });
    REQUIRE(joint != edited.boxes.end());
    joint->terminals.push_back({"more", Side::top, {0, 0}});
    GraphBox& part = edited.boxes[12];
    part.terminals.push_back({"more", Side::right, {part.width, part.height}});
    part.height += 500;
    for (GraphTerminal& t : part.terminals)
      if (t.side == Side::bottom) t.at.y += 500;
    GraphWire wire;
    wire.name = "one more";
    wire.from_box = static_cast<int>(joint - edited.boxes.begin()), wire.to_box = 12;
    wire.from_terminal = static_cast<int>(joint->terminals.size()) - 1;
    wire.to_terminal = static_cast<int>(part.terminals.size()) - 1;
    wire.net = 3000000;
    for (const GraphWire& w : graph.wires)
      if (w.from_box == wire.from_box || w.to_box == wire.from_box) wire.net = w.net;
    edited.wires.push_back(wire);
    const Laid after = lay_out(edited, {&before, &graph});
    CAPTURE(seed);
    CHECK(count_violations(edited, after) == 0);
    CHECK(count_flips(before, after) == 0);
    CHECK(count_reshaped(before, after) * 10 <= static_cast<int>(before.courses.size()));
    moved += count_moved(before, after);
  }
  CHECK(moved <= 25);  // of 250: a tenth
}

TEST_CASE("an earlier drawing of something else is of no use and does no harm") {
  const auto& [graph, alone] = drawn_machine(4);
  const auto& [other, earlier] = drawn_machine(5, 12, 20);
  const Laid beside = lay_out(graph, {&earlier, &other});
  CHECK(count_changes(alone, beside) == 0);
  Laid broken = earlier;
  broken.boxes.clear();
  CHECK(count_changes(alone, lay_out(graph, {&broken, &other})) == 0);
}
