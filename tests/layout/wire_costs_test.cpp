// SPDX-License-Identifier: MIT
#include "layout/wire_costs.h"

#include <doctest/doctest.h>

#include "layout/random_graph.h"
#include "layout/weights.h"

using namespace loomfolio;

namespace {

GridBox line_of(GridPoint a, GridPoint b) {
  return {std::min(a.x, b.x), std::min(a.y, b.y), std::max(a.x, b.x), std::max(a.y, b.y)};
}

/// Two wires of different nets and one of the first's net, on boxes that do not matter: an L of 30 mm + 20 mm, crossed once by an
/// upright of another net, met by a third of its own net.
struct ThreeWires {
  Graph graph;
  Laid laid;
  ThreeWires() {
    graph.wires = {{"a", -1, -1, -1, -1, 0}, {"b", -1, -1, -1, -1, 1}, {"c", -1, -1, -1, -1, 0}};
    laid.width = laid.height = 5000;
    laid.courses = {{{{0, 1000}, {3000, 1000}, {3000, 3000}}, {}},
                    {{{2000, 0}, {2000, 2000}}, {}},
                    {{{1000, 0}, {1000, 2000}}, {}}};
  }
};

}  // namespace

TEST_CASE("a wire's cost is its length, its bends and its crossings with other nets") {
  const ThreeWires three;
  const auto costs = find_wire_costs(three.graph, three.laid);
  REQUIRE(costs.size() == 3);
  CHECK(costs[0].length == 5000);
  CHECK(costs[0].bends == 1);
  CHECK(costs[0].crossings == 1);  // not with `c`, which is of its net
  CHECK(costs[1].crossings == 1);
  CHECK(costs[2].crossings == 0);
  const laying::RouteWeights weights;
  CHECK(costs[0].total() * grid_per_mm == 5000L * weights.length + weights.bend + weights.crossing);
  CHECK(costs[2].total() == 20);
}

TEST_CASE("notes of costs cover no part, no wire, no label and no other note") {
  int placed = 0;
  for (std::uint64_t seed = 1; seed <= 12; ++seed) {
    CAPTURE(seed);
    Graph graph = make_random_graph({12, 20, 3, seed});
    for (GraphWire& wire : graph.wires) wire.label_width = 1200, wire.label_height = 260;
    const Laid laid = lay_out(graph);
    const std::vector<NoteSize> sizes(graph.wires.size(), NoteSize{1400, 260});
    const auto notes = place_wire_notes(with_settled_joints(graph, laid), laid, sizes, {});
    placed += static_cast<int>(notes.size());
    for (std::size_t n = 0; n < notes.size(); ++n) {
      const GridBox& note = notes[n].box;
      CHECK(note.x0 >= 0);
      CHECK(note.x1 <= laid.width);
      for (const PlacedBox& box : laid.boxes) CHECK_FALSE(box.box.overlaps(note));
      for (const PlacedLabel& label : laid.labels) CHECK_FALSE(label.box.overlaps(note));
      for (std::size_t m = 0; m < n; ++m) CHECK_FALSE(notes[m].box.overlaps(note));
      for (const Course& course : laid.courses)
        for (std::size_t i = 1; i < course.points.size(); ++i)
          CHECK_FALSE(line_of(course.points[i - 1], course.points[i]).grown(1).overlaps(note));
    }
  }
  CHECK(placed > 60);  // of 240
}

TEST_CASE("a place that is taken is no place for a note") {
  const ThreeWires three;
  const std::vector<NoteSize> sizes{{800, 260}, {}, {}};
  REQUIRE(place_wire_notes(three.graph, three.laid, sizes, {}).size() == 1);
  CHECK(place_wire_notes(three.graph, three.laid, sizes, {{0, 0, 5000, 5000}}).empty());
}
