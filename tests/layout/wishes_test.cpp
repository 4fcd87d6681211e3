// SPDX-License-Identifier: MIT
// What an author asks of a drawing holds on random graphs, and a drawing that is kept keeps it.
#include "layout/wishes.h"

#include <doctest/doctest.h>

#include <algorithm>

#include "layout/placement_text.h"
#include "layout/random_graph.h"
#include "layout/segments.h"
#include "layout/verify.h"

using namespace loomfolio;

namespace {

constexpr Side all_edges[] = {Side::top, Side::right, Side::bottom, Side::left};

Graph some_graph(std::uint64_t seed) { return make_random_graph({8 + static_cast<int>(seed % 6), 18, 1 + static_cast<int>(seed % 3), seed}); }

bool keeps_promises(const Graph& graph, const Laid& laid) { return verify(with_settled_joints(graph, laid), laid).empty(); }

/// Least distance of two wires where they run side by side; 100 mm where they do not.
Grid least_distance(const Laid& laid, int one, int other) {
  Grid least = 10000;
  const auto segments = laying::find_segments(laid);
  for (const laying::Segment& a : segments)
    for (const laying::Segment& b : segments)
      if (a.wire == one && b.wire == other && a.is_level == b.is_level && a.low < b.high && b.low < a.high)
        least = std::min(least, std::abs(a.at - b.at));
  return least;
}

}  // namespace

TEST_CASE("a pinned part stands at its edge, whatever edge, part and graph; without the pin it often does not") {
  int unpinned = 0;
  for (std::uint64_t seed = 1; seed <= 24; ++seed) {
    Graph graph = some_graph(seed);
    const std::size_t box = seed % graph.boxes.size();
    graph.boxes[box].pins = {all_edges[seed % 4]};
    if (seed % 3 == 0) graph.boxes[box].pins.push_back(all_edges[(seed + 1) % 4]);
    CAPTURE(seed);
    const Laid laid = lay_out(graph);
    CHECK(laying::pins_hold(graph, laid));
    CHECK(keeps_promises(graph, laid));
    Graph free = graph;
    free.boxes[box].pins.clear();
    if (!laying::pins_hold(graph, lay_out(free))) ++unpinned;
  }
  CHECK(unpinned >= 6);
}

TEST_CASE("two parts that are kept apart have more room between them than two that stand side by side") {
  int near = 0;
  for (std::uint64_t seed = 1; seed <= 12; ++seed) {
    Graph graph = some_graph(seed);
    const Laid before = lay_out(graph);
    const auto charge = [&](const Laid& laid, int a, int b) {
      return laying::apart_charge(laying::Plan{}, laid.boxes[static_cast<std::size_t>(a)].box, laid.boxes[static_cast<std::size_t>(b)].box);
    };
    for (int a = 0; a < static_cast<int>(graph.boxes.size()); ++a)
      for (int b = a + 1; b < static_cast<int>(graph.boxes.size()); ++b) {
        if (graph.boxes[a].zone != graph.boxes[b].zone || charge(before, a, b) == 0 || near >= 12) continue;
        Graph asked = graph;
        asked.boxes[a].apart = {b};
        asked.boxes[b].apart = {a};
        const Laid after = lay_out(asked);
        CAPTURE(seed);
        CAPTURE(graph.boxes[a].name);
        CAPTURE(graph.boxes[b].name);
        CHECK(charge(after, a, b) < charge(before, a, b));
        CHECK(keeps_promises(asked, after));
        ++near;
        b = a = static_cast<int>(graph.boxes.size());  // one pair a graph
      }
  }
  CHECK(near >= 6);
}

TEST_CASE("two wires that are kept apart do not run close") {
  const laying::Spacing spacing;
  int near = 0;
  for (std::uint64_t seed = 1; seed <= 10; ++seed) {
    const Graph graph = some_graph(seed);
    const Laid before = lay_out(graph);
    for (int a = 0; a < static_cast<int>(graph.wires.size()); ++a)
      for (int b = a + 1; b < static_cast<int>(graph.wires.size()); ++b) {
        if (least_distance(before, a, b) != spacing.pitch || graph.wires[a].net == graph.wires[b].net) continue;
        Graph asked = graph;
        asked.wires[a].apart = {b};
        asked.wires[b].apart = {a};
        const Laid after = lay_out(asked);
        CAPTURE(seed);
        CHECK(least_distance(after, a, b) > spacing.pitch);
        CHECK(keeps_promises(asked, after));
        ++near;
        b = a = static_cast<int>(graph.wires.size());
      }
  }
  CHECK(near >= 4);
}

TEST_CASE("a wish is remembered with its drawing; another wish draws afresh, and a small edit keeps the pin") {
  Graph graph = some_graph(5);
  graph.boxes[1].pins = {Side::left, Side::top};
  graph.boxes[2].apart = {3};
  graph.boxes[3].apart = {2};
  graph.wires[0].apart = {1};
  graph.wires[1].apart = {0};
  const Laid laid = lay_out(graph);
  Placements placements;
  placements["one"] = KeptDrawing{graph, laid};
  const auto back = read_placements(write_placements(placements));
  REQUIRE(back.has_value());
  REQUIRE(back->at("one").has_value());
  CHECK(back->at("one")->graph == graph);

  Graph asked = graph;
  asked.boxes[4].pins = {Side::bottom};
  CHECK_FALSE(lay_out_near(asked, laid, graph).has_value());
  Graph edited = graph;
  edited.wires.pop_back();
  const auto kept = lay_out_near(edited, laid, graph);
  REQUIRE(kept.has_value());
  CHECK(laying::pins_hold(edited, *kept));
}
