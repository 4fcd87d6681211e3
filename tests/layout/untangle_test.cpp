// SPDX-License-Identifier: MIT
// Wires that cross on their way to one joint, or to one wide terminal, change places there.
#include <doctest/doctest.h>

#include "layout/drawn_machine.h"
#include "layout/laid.h"
#include "layout/measure.h"
#include "layout/segments.h"
#include "layout/untangle.h"
#include "layout/verify.h"

using namespace loomfolio;
using laying::Segment;

namespace {

/// A joint at the bottom right whose two terminals look up, and two parts far left, one above the other. The drawing is as it was
/// made; the joint's left terminal belongs to the upper part's wire, so that the lower one's crosses it.
struct Corner {
  Graph graph;
  Laid laid;
  laying::Plan plan;

  Corner() {
    graph.zones.push_back({"zone"});
    graph.boxes.push_back({"upper", 0, BoxRole::load, -1, 2000, 1000, {{"1", Side::right, {2000, 500}}}});
    graph.boxes.push_back({"lower", 0, BoxRole::load, -1, 2000, 1000, {{"1", Side::right, {2000, 500}}}});
    GraphBox joint;
    joint.name = "joint", joint.role = BoxRole::splice;
    joint.joint.pitch = 500;
    joint.terminals = {{"1", Side::top, {}}, {"2", Side::top, {}}};
    graph.boxes.push_back(joint);
    for (int w = 0; w < 2; ++w) {
      GraphWire wire;
      wire.name = std::to_string(w);
      wire.from_box = w, wire.from_terminal = 0, wire.to_box = 2, wire.to_terminal = w;
      wire.net = 0, wire.pen = 50;
      graph.wires.push_back(wire);
    }
    plan = laying::make_plan(graph, laying::Flow::down);
    laid.width = 12000, laid.height = 9000;
    laid.bands.push_back({0, 0, 12000, 9000});
    laid.boxes = {{{1000, 1000, 3000, 2000}}, {{1000, 3000, 3000, 4000}}, {{8000, 6000, 9000, 6500}}};
    laid.joints.push_back({2, 1000, 500, {{"1", Side::top, {250, 0}}, {"2", Side::top, {750, 0}}}});
    laid.courses = {{{{3000, 1500}, {8250, 1500}, {8250, 6000}}, {}}, {{{3000, 3500}, {8750, 3500}, {8750, 6000}}, {}}};
  }
  long crossings() const { return laying::measure(laid).crossings; }
};

}  // namespace

TEST_CASE("two wires that cross before a joint change terminals, and only their last stretches move") {
  Corner corner;
  REQUIRE(corner.crossings() == 1);
  const std::size_t broken = verify(with_settled_joints(corner.graph, corner.laid), corner.laid).size();
  laying::untangle_joints(corner.plan, corner.laid);
  CHECK(corner.crossings() == 0);
  CHECK(corner.laid.courses[0].points == std::vector<GridPoint>{{3000, 1500}, {8750, 1500}, {8750, 6000}});
  CHECK(corner.laid.courses[1].points == std::vector<GridPoint>{{3000, 3500}, {8250, 3500}, {8250, 6000}});
  CHECK(corner.laid.joints[0].terminals[0].at == GridPoint{750, 0});
  CHECK(corner.laid.joints[0].terminals[1].at == GridPoint{250, 0});
  CHECK(verify(with_settled_joints(corner.graph, corner.laid), corner.laid).size() <= broken);
}

TEST_CASE("where a part stands in the way they keep their terminals") {
  Corner corner;
  corner.graph.boxes.push_back({"block", 0, BoxRole::load, -1, 400, 1000, {}});
  corner.plan = laying::make_plan(corner.graph, laying::Flow::down);
  corner.laid.boxes.push_back({{8600, 2000, 9000, 3000}});  // where the upper wire would come down
  const auto before = corner.laid.courses;
  laying::untangle_joints(corner.plan, corner.laid);
  CHECK(corner.laid.courses[0].points == before[0].points);
  CHECK(corner.laid.courses[1].points == before[1].points);
  CHECK(corner.crossings() == 1);
}

TEST_CASE("so do two wires at one terminal drawn wide, and two at different terminals of a part do not") {
  for (const bool is_wide : {true, false}) {
    Corner corner;
    corner.graph.boxes[2].joint = {};
    corner.graph.boxes[2].width = 1000, corner.graph.boxes[2].height = 500;
    corner.laid.joints[0].terminals[1].name = is_wide ? "1" : "2";
    corner.graph.boxes[2].terminals = corner.laid.joints[0].terminals;
    corner.plan = laying::make_plan(corner.graph, laying::Flow::down);
    REQUIRE(corner.crossings() == 1);
    laying::untangle_joints(corner.plan, corner.laid);
    CAPTURE(is_wide);
    CHECK(corner.crossings() == (is_wide ? 0 : 1));
  }
}

TEST_CASE("no two wires of a finished drawing cross just before a joint where changing places would mend it") {
  int joints = 0;
  for (std::uint64_t seed = 1; seed <= 10; ++seed) {
    const auto& [graph, drawn] = drawn_machine(seed);
    Laid laid = drawn;
    joints += static_cast<int>(laid.joints.size());
    CAPTURE(seed);
    CHECK(verify(with_settled_joints(graph, laid), laid).empty());
    laying::Plan plan = laying::make_plan(graph, laying::Flow::down);
    const long crossings = laying::measure(laid).crossings;
    laid.labels.clear();
    laying::untangle_joints(plan, laid);
    CHECK(laying::measure(laid).crossings == crossings);
  }
  CHECK(joints >= 10);
}
