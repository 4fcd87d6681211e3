// SPDX-License-Identifier: MIT
// Two parts that make a pair are drawn in one row or one column, and hardly a crossing is bought for it.
#include <doctest/doctest.h>

#include "layout/laid.h"
#include "layout/random_graph.h"
#include "layout/segments.h"
#include "layout/verify.h"

using namespace loomfolio;

namespace {

/// Two parts of one zone, that no other pair has: -1, -1 when there are none.
std::pair<int, int> choose_pair(const Graph& graph) {
  for (std::size_t a = 0; a < graph.boxes.size(); ++a)
    for (std::size_t b = a + 1; b < graph.boxes.size(); ++b)
      if (graph.boxes[a].role == BoxRole::load && graph.boxes[b].role == BoxRole::load && graph.boxes[a].zone == graph.boxes[b].zone)
        return {static_cast<int>(a), static_cast<int>(b)};
  return {-1, -1};
}

bool are_aligned(const Laid& laid, std::pair<int, int> pair) {
  const GridBox a = laid.boxes[static_cast<std::size_t>(pair.first)].box, b = laid.boxes[static_cast<std::size_t>(pair.second)].box;
  return a.y0 == b.y0 || a.x0 == b.x0;
}

int count_crossings(const Graph& graph, const Laid& laid) {
  int count = 0;
  laying::for_each_meeting(laying::find_segments(laid), [&](const laying::Segment& a, const laying::Segment& b) {
    const auto one = static_cast<std::size_t>(a.wire), other = static_cast<std::size_t>(b.wire);
    if (graph.wires[one].net != graph.wires[other].net && laying::crosses(a, b)) ++count;
  });
  return count;
}

}  // namespace

TEST_CASE("a pair stands in one row more often than two that are none, and costs few crossings") {
  int graphs = 0, with = 0, without = 0, crossings_with = 0, crossings_without = 0;
  for (std::uint64_t seed = 1; seed <= 30; ++seed) {
    const Graph free = make_random_graph({10 + static_cast<int>(seed % 8), 22, 2, seed});
    const auto pair = choose_pair(free);
    if (pair.first < 0) continue;
    Graph graph = free;
    graph.boxes[static_cast<std::size_t>(pair.first)].partner = pair.second;
    graph.boxes[static_cast<std::size_t>(pair.second)].partner = pair.first;
    const Laid laid = lay_out(graph), before = lay_out(free);
    CAPTURE(seed);
    CHECK(verify(with_settled_joints(graph, laid), laid).empty());
    ++graphs;
    with += are_aligned(laid, pair), without += are_aligned(before, pair);
    crossings_with += count_crossings(graph, laid), crossings_without += count_crossings(free, before);
  }
  MESSAGE(graphs << " graphs: aligned " << without << " -> " << with << ", crossings " << crossings_without << " -> " << crossings_with);
  CHECK(graphs >= 15);
  CHECK(with >= without + graphs / 5);
  CHECK(crossings_with * 10 <= crossings_without * 11);
}
