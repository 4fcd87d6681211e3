// SPDX-License-Identifier: MIT
// Wires drawn as one thick course: which, where, and that each is still whole.
#include <doctest/doctest.h>

#include <string>
#include <variant>

#include "sheets/fixed_face.h"
#include "sheets/trunk_draw.h"

using namespace loomfolio;

namespace {

using Wires = std::vector<std::size_t>;

/// Level wires 4 mm apart from top to bottom, 120 mm long, each labelled along its first 15 mm.
struct WideLoom {
  Build build;
  DiagramGraph diagram;
  Laid laid;
  const TextMeasure& face = fixed_face;

  explicit WideLoom(std::size_t count, const std::string& run = "1-2") {
    laid.width = 13000, laid.height = 9000;
    for (std::size_t i = 0; i < count; ++i) {
      const Grid y = 1000 + 400 * static_cast<Grid>(i);
      add(run, {{500, y}, {12500, y}});
      laid.labels.push_back({static_cast<int>(i), {520, y - 350, 2020, y - 70}});
    }
  }
  void add(const std::string& run, std::vector<GridPoint> points) {
    const WireId id{static_cast<std::int32_t>(build.wires.size())};
    Wire wire;
    wire.id = std::to_string(id.index);
    build.wires.push_back(wire);
    GraphWire graph_wire;
    graph_wire.name = wire.id;
    graph_wire.pen = 100;
    graph_wire.bundle = run;
    diagram.graph.wires.push_back(graph_wire);
    diagram.wires.push_back(id);
    diagram.labels.push_back({wire.id, "BK 1", "", 200, 1500, 280});
    laid.courses.push_back({std::move(points), {}});
  }
  void ask_together(const std::vector<std::int32_t>& wires) {
    build.layout.gathered.emplace_back();
    for (const std::int32_t wire : wires) build.layout.gathered.back().push_back(WireId{wire});
  }
  std::vector<Trunk> trunks() const { return find_trunks(build, diagram, laid, face); }
  /// The same with level and upright exchanged.
  void turn() {
    const auto turned = [](GridBox box) { return GridBox{box.y0, box.x0, box.y1, box.x1}; };
    for (Course& course : laid.courses)
      for (GridPoint& p : course.points) std::swap(p.x, p.y);
    for (PlacedLabel& label : laid.labels) label.box = turned(label.box), label.is_upright = true;
  }
};

Wires wires_in(const Trunk& trunk) {
  Wires wires;
  for (const TrunkWire& one : trunk.wires) wires.push_back(one.wire);
  return wires;
}

bool share_room(const GridBox& a, const GridBox& b) { return a.x0 < b.x1 && b.x0 < a.x1 && a.y0 < b.y1 && b.y0 < a.y1; }

bool stands_at(Point p, GridPoint place) { return p.x == to_mm(place).x && p.y == to_mm(place).y; }

Point path_end(const std::vector<PathPiece>& path) {
  if (const auto* curve = std::get_if<PathCurve>(&path.back())) return curve->to;
  return std::get<PathLine>(path.back()).to;
}

}  // namespace

TEST_CASE("four wires from one part to another are one thick course where they run far; three are not") {
  const std::vector<Trunk> trunks = WideLoom(4).trunks();
  REQUIRE(trunks.size() == 1);
  CHECK(wires_in(trunks[0]) == Wires{0, 1, 2, 3});
  CHECK(trunks[0].low >= 2020);  // behind the labels
  CHECK(trunks[0].high <= 12500);
  CHECK(trunks[0].at == 1600);
  CHECK(WideLoom(3).trunks().empty());
  CHECK(WideLoom(6, "").trunks().empty());
}

TEST_CASE("a short run is drawn wire by wire, unless the author gathers it") {
  WideLoom loom(4);
  for (Course& course : loom.laid.courses) course.points[1].x = 5400;
  CHECK(loom.trunks().empty());
  loom.ask_together({1, 2});
  const std::vector<Trunk> trunks = loom.trunks();
  REQUIRE(trunks.size() == 1);
  CHECK(wires_in(trunks[0]) == Wires{1, 2});
}

TEST_CASE("a loose wire stays out, and parts those beside it") {
  WideLoom loom(7);
  loom.build.layout.loose = {WireId{6}};
  REQUIRE(loom.trunks().size() == 1);
  CHECK(wires_in(loom.trunks()[0]) == Wires{0, 1, 2, 3, 4, 5});
  loom.build.layout.loose = {WireId{3}};
  CHECK(loom.trunks().empty());
}

TEST_CASE("a foreign wire between two that are gathered leaves them as they are") {
  WideLoom loom(3, "");
  loom.ask_together({0, 2});
  CHECK(loom.trunks().empty());
}

TEST_CASE("no label and no part is on a thick course or its fans") {
  for (const bool is_turned : {false, true}) {
    CAPTURE(is_turned);
    WideLoom loom(5);
    loom.laid.labels.push_back({2, {7000, 1450, 8500, 1730}});
    if (is_turned) loom.turn();
    PlacedBox part;
    part.box = is_turned ? GridBox{900, 11000, 1500, 11400} : GridBox{11000, 900, 11400, 1500};
    loom.laid.boxes.push_back(part);
    const std::vector<Trunk> trunks = loom.trunks();
    REQUIRE(trunks.size() == 1);
    CHECK(trunks[0].is_level == !is_turned);
    for (const PlacedLabel& label : loom.laid.labels) CHECK(!share_room(trunks[0].whole(), label.box));
    CHECK(!share_room(trunks[0].whole(), part.box));
  }
}

TEST_CASE("wires cross the thick course, never its fans or its numbers") {
  for (const bool is_turned : {false, true}) {
    CAPTURE(is_turned);
    WideLoom loom(4);
    for (const Grid x : {2600, 6000, 7250, 12000}) loom.add("", {{x, 200}, {x, 5000}});
    if (is_turned) loom.turn();
    const std::vector<Trunk> trunks = loom.trunks();
    REQUIRE(trunks.size() == 1);
    const Trunk& trunk = trunks[0];
    const Grid words = to_grid(loom.face.measure(trunk_words(loom.diagram, trunk), look::wire_number).width);
    for (const Grid x : {2600, 6000, 7250, 12000}) {
      CAPTURE(x);
      CHECK((x < trunk.low || x > trunk.low + trunk.fan));
      CHECK((x < trunk.high - trunk.fan || x > trunk.high));
      CHECK(std::abs(x - trunk.words_at) > words / 2);
    }
  }
}

TEST_CASE("a wire that leaves the run ends the thick course") {
  WideLoom loom(4);
  loom.add("", {{8000, 2200}, {8000, 1900}, {8300, 1900}, {8300, 4000}});
  const std::vector<Trunk> trunks = loom.trunks();
  REQUIRE(trunks.size() == 1);
  CHECK((trunks[0].high <= 8000 || trunks[0].low >= 8000));
}

TEST_CASE("each wire goes on from the end of the thick course to its own end") {
  for (const bool is_turned : {false, true})
    for (const bool is_backward : {false, true}) {
      CAPTURE(is_turned);
      CAPTURE(is_backward);
      WideLoom loom(4);
      if (is_turned) loom.turn();
      if (is_backward)
        for (Course& course : loom.laid.courses) std::swap(course.points[0], course.points[1]);
      const std::vector<Trunk> trunks = loom.trunks();
      REQUIRE(trunks.size() == 1);
      const Rect thick = to_mm(trunks[0].thick());
      for (std::size_t w = 0; w < 4; ++w) {
        CAPTURE(w);
        const auto paths = paths_of(course_of(loom.diagram.graph, loom.laid, w), w, trunks, {});
        REQUIRE(paths.size() == 2);
        const Point begin = std::get<PathMove>(paths[0].front()).to, end = path_end(paths[1]);
        CHECK(stands_at(begin, loom.laid.courses[w].points[0]));
        CHECK(stands_at(end, loom.laid.courses[w].points[1]));
        const Point in = path_end(paths[0]), out = std::get<PathMove>(paths[1].front()).to;
        // Both at an end of the thick course, at one place across it.
        const auto along = [&](Point p) { return is_turned ? p.y : p.x; };
        const auto across = [&](Point p) { return is_turned ? p.x : p.y; };
        const Millimetres low = is_turned ? thick.y : thick.x, high = is_turned ? thick.bottom() : thick.right();
        CHECK(along(in) == (is_backward ? high : low));
        CHECK(along(out) == (is_backward ? low : high));
        CHECK(across(in) == across(out));
        CHECK(across(in) > (is_turned ? thick.x : thick.y));
        CHECK(across(in) < (is_turned ? thick.right() : thick.bottom()));
      }
    }
}

TEST_CASE("a wire hops once over a whole thick course that stands upright") {
  WideLoom loom(4);
  loom.turn();
  loom.add("", {{200, 9000}, {5000, 9000}});
  loom.laid.courses[4].hops = {{{1000, 9000}, 100}, {{1400, 9000}, 100}, {{1800, 9000}, 100}, {{2200, 9000}, 100}, {{4000, 9000}, 100}};
  const std::vector<Trunk> trunks = loom.trunks();
  REQUIRE(trunks.size() == 1);
  WireCourse course = course_of(loom.diagram.graph, loom.laid, 4);
  hop_over_trunks(course, trunks);
  REQUIRE(course.hops.size() == 2);
  const GridBox thick = trunks[0].thick();
  CHECK(course.hops[0].at.x == 4000);
  CHECK(course.hops[1].at.x - course.hops[1].half < thick.x0);
  CHECK(course.hops[1].at.x + course.hops[1].half > thick.x1);
}
