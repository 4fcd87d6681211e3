// SPDX-License-Identifier: MIT
// Joints slide towards their wires; earth symbols go in line with theirs.
#include <doctest/doctest.h>

#include "layout/laid.h"
#include "layout/slide_ends.h"
#include "layout/verify.h"

using namespace loomfolio;

namespace {

GraphWire make_wire(const char* name, int from, int to, int to_terminal) {
  GraphWire wire;
  wire.name = name, wire.from_box = from, wire.from_terminal = 0, wire.to_box = to, wire.to_terminal = to_terminal;
  wire.net = 0, wire.pen = 100;
  return wire;
}

/// A joint far above the two parts whose wires hang from it.
struct High {
  Graph graph;
  Laid laid;

  High() {
    graph.zones.push_back({"zone"});
    graph.boxes.push_back({"left", 0, BoxRole::load, -1, 2000, 1000, {{"1", Side::right, {2000, 500}}}});
    graph.boxes.push_back({"right", 0, BoxRole::load, -1, 2000, 1000, {{"1", Side::left, {0, 500}}}});
    GraphBox joint;
    joint.name = "joint", joint.role = BoxRole::splice;
    joint.joint.pitch = 500;
    joint.terminals = {{"1", Side::bottom, {}}, {"2", Side::bottom, {}}};
    graph.boxes.push_back(joint);
    graph.boxes.push_back({"between", 0, BoxRole::load, -1, 500, 500, {}});
    graph.wires = {make_wire("a", 0, 2, 0), make_wire("b", 1, 2, 1)};
    laid.width = 14000, laid.height = 12000;
    laid.bands.push_back({0, 0, 14000, 12000});
    laid.boxes = {{{1000, 8000, 3000, 9000}}, {{9000, 8000, 11000, 9000}}, {{5000, 1000, 6000, 1500}}, {{12000, 1000, 12500, 1500}}};
    laid.joints.push_back({2, 1000, 500, {{"1", Side::bottom, {250, 500}}, {"2", Side::bottom, {750, 500}}}});
    laid.courses = {{{{3000, 8500}, {5250, 8500}, {5250, 1500}}, {}}, {{{9000, 8500}, {5750, 8500}, {5750, 1500}}, {}}};
  }
  Grid slid() {
    const Grid before = laid.boxes[2].box.y0;
    laying::slide_ends(laying::make_plan(graph, laying::Flow::down), laid);
    CHECK(verify(with_settled_joints(graph, laid), laid).empty());
    return laid.boxes[2].box.y0 - before;
  }
};

}  // namespace

TEST_CASE("a joint slides towards its wires and leaves them the room to bend") {
  High high;
  const laying::Spacing spacing;
  CHECK(high.slid() == 7000 - spacing.clear - spacing.spare - 50);
  CHECK(high.laid.courses[0].points.back() == GridPoint{5250, high.laid.boxes[2].box.y1});
}

TEST_CASE("a joint does not slide past a part") {
  High high;
  high.laid.boxes[3].box = {6200, 4000, 6700, 4500};
  const Grid way = high.slid();
  CHECK(way > 0);
  CHECK(high.laid.boxes[2].box.y1 <= 4000 - laying::Spacing{}.clear);
}

TEST_CASE("a joint with wires at two sides stays") {
  High high;
  high.laid.joints[0].terminals[1] = {"2", Side::top, {750, 0}};
  high.laid.courses[1].points = {{9000, 8500}, {7000, 8500}, {7000, 500}, {5750, 500}, {5750, 1000}};
  CHECK(high.slid() == 0);
}

TEST_CASE("an earth symbol goes in line with its wire, unless a part stands there") {
  for (const bool is_taken : {false, true}) {
    CAPTURE(is_taken);
    High high;
    high.graph.boxes[2] = {"earth", 0, BoxRole::earth, -1, 1000, 500, {{"1", Side::top, {500, 0}}}};
    high.graph.wires = {make_wire("a", 0, 2, 0)};
    high.laid.joints.clear();
    high.laid.boxes[2].box = {3300, 10500, 4300, 11000};
    if (is_taken) high.laid.boxes[3].box = {4700, 10500, 5200, 11000};
    high.laid.courses = {{{{3000, 8500}, {4200, 8500}, {4200, 9800}, {3800, 9800}, {3800, 10500}}, {}}};
    high.slid();
    CHECK(high.laid.courses[0].points.size() == (is_taken ? 5 : 3));
    CHECK(high.laid.boxes[2].box.x0 == (is_taken ? 3300 : 3700));
  }
}
