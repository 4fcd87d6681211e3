// SPDX-License-Identifier: MIT
// Runs that hang in a U are drawn up, and jogs go.
#include <doctest/doctest.h>

#include "layout/laid.h"
#include "layout/measure.h"
#include "layout/tighten.h"
#include "layout/verify.h"

using namespace loomfolio;

namespace {

/// Two parts side by side; their wire leaves both below and hangs far down.
struct Hanging {
  Graph graph;
  Laid laid;
  laying::Plan plan;

  Hanging() {
    graph.zones.push_back({"zone"});
    graph.boxes.push_back({"one", 0, BoxRole::load, -1, 2000, 1000, {{"1", Side::bottom, {1000, 1000}}}});
    graph.boxes.push_back({"other", 0, BoxRole::load, -1, 2000, 2000, {{"1", Side::bottom, {1000, 2000}}}});
    graph.boxes.push_back({"between", 0, BoxRole::load, -1, 500, 500, {}});
    GraphWire wire;
    wire.name = "w", wire.from_box = 0, wire.from_terminal = 0, wire.to_box = 1, wire.to_terminal = 0, wire.net = 0, wire.pen = 100;
    graph.wires.push_back(wire);
    plan = laying::make_plan(graph, laying::Flow::down);
    laid.width = 12000, laid.height = 12000;
    laid.bands.push_back({0, 0, 12000, 12000});
    laid.boxes = {{{1000, 1000, 3000, 2000}}, {{5000, 1000, 7000, 3000}}, {{9000, 9000, 9500, 9500}}};
    laid.courses = {{{{2000, 2000}, {2000, 8000}, {6000, 8000}, {6000, 3000}}, {}}};
  }
  const std::vector<GridPoint>& tightened() {
    laying::tighten_runs(plan, laid);
    CHECK(verify(graph, laid).empty());
    return laid.courses[0].points;
  }
};

}  // namespace

TEST_CASE("a run that hangs in a U is drawn up to the part that is in its way, with the room of one track") {
  Hanging hanging;
  const laying::Spacing spacing;
  const Grid y = 3000 + spacing.clear + spacing.spare + 50;
  CHECK(hanging.tightened() == std::vector<GridPoint>{{2000, 2000}, {2000, y}, {6000, y}, {6000, 3000}});
}

TEST_CASE("a run that is drawn up leaves the room that its label asks for") {
  Hanging hanging;
  hanging.graph.wires[0].label_width = 1000, hanging.graph.wires[0].label_height = 900;
  const Grid y = 3000 + 900 + 2 * laying::Spacing{}.label_gap + 50;
  CHECK(hanging.tightened()[1] == GridPoint{2000, y});
}

TEST_CASE("a run does not pass a part that stands between it and its ends") {
  Hanging hanging;
  hanging.laid.boxes[2].box = {4000, 5000, 4500, 5500};
  const laying::Spacing spacing;
  CHECK(hanging.tightened()[1].y == 5500 + spacing.clear + spacing.spare + 50);
}

TEST_CASE("a jog goes where the run can stand in line with what it comes from") {
  Hanging hanging;
  hanging.graph.boxes[1].terminals = {{"1", Side::left, {0, 1000}}};
  hanging.plan = laying::make_plan(hanging.graph, laying::Flow::down);
  hanging.laid.courses = {{{{2000, 2000}, {2000, 5000}, {3000, 5000}, {3000, 5200}, {4500, 5200}, {4500, 2000}, {5000, 2000}}, {}}};
  const auto& points = hanging.tightened();
  CHECK(points.size() == 5);
  CHECK(points[2].y < 5000);
}

TEST_CASE("a wire that is held stays as it is") {
  Hanging hanging;
  const auto before = hanging.laid.courses[0].points;
  laying::tighten_runs(hanging.plan, hanging.laid, {1});
  CHECK(hanging.laid.courses[0].points == before);
}
