// SPDX-License-Identifier: MIT
// Wires with one bundle word run side by side where that costs nothing.
#include <doctest/doctest.h>

#include <algorithm>

#include "layout/drawn_machine.h"
#include "layout/laid.h"
#include "layout/measure.h"
#include "layout/segments.h"
#include "layout/verify.h"

using namespace loomfolio;
using laying::Segment;

namespace {

/// Each wire with the next one whose ends are in the same zones.
std::vector<std::pair<int, int>> find_mates(const Graph& graph) {
  std::vector<std::pair<int, int>> mates;
  std::vector<char> has_mate(graph.wires.size(), 0);
  const auto zones = [&](std::size_t w) {
    return std::pair(graph.boxes[graph.wires[w].from_box].zone, graph.boxes[graph.wires[w].to_box].zone);
  };
  for (std::size_t a = 0; a < graph.wires.size(); ++a)
    for (std::size_t b = a + 1; b < graph.wires.size() && !has_mate[a]; ++b) {
      if (has_mate[b] || zones(a) != zones(b)) continue;
      has_mate[a] = has_mate[b] = 1;
      mates.emplace_back(static_cast<int>(a), static_cast<int>(b));
    }
  return mates;
}

/// Stretches of the two that run beside each other with another wire between them.
int count_parted(const Laid& laid, const std::vector<std::pair<int, int>>& mates) {
  const std::vector<Segment> segments = laying::find_segments(laid);
  int parted = 0;
  for (const auto& [one, other] : mates)
    for (const Segment& a : segments)
      for (const Segment& b : segments) {
        if (a.wire != one || b.wire != other || a.is_level != b.is_level) continue;
        const Grid low = std::max(a.low, b.low), high = std::min(a.high, b.high), from = std::min(a.at, b.at), to = std::max(a.at, b.at);
        if (high - low < 500 || to - from > 3000) continue;
        parted += std::any_of(segments.begin(), segments.end(), [&](const Segment& s) {
          return s.wire != one && s.wire != other && s.is_level == a.is_level && s.at > from && s.at < to && s.low < high && s.high > low;
        });
      }
  return parted;
}

}  // namespace

TEST_CASE("wires of one bundle are parted by fewer others than without the word, and nothing more crosses") {
  int parted = 0, parted_alone = 0;
  long crossings = 0, crossings_alone = 0;
  for (std::uint64_t seed = 1; seed <= 10; ++seed) {
    const auto& [graph, alone] = drawn_machine(seed);
    Graph bundled = graph;
    const auto mates = find_mates(graph);
    for (std::size_t m = 0; m < mates.size(); ++m)
      for (const int wire : {mates[m].first, mates[m].second}) bundled.wires[static_cast<std::size_t>(wire)].bundle = std::to_string(m);
    const Laid together = lay_out(bundled);
    CAPTURE(seed);
    CHECK(verify(with_settled_joints(bundled, together), together).empty());
    parted += count_parted(together, mates);
    parted_alone += count_parted(alone, mates);
    crossings += laying::measure(together).crossings;
    crossings_alone += laying::measure(alone).crossings;
  }
  CAPTURE(crossings);
  CAPTURE(crossings_alone);
  MESSAGE(parted, " of ", parted_alone, "; crossings ", crossings, " of ", crossings_alone);
  CHECK(parted * 10 <= parted_alone * 8);
  CHECK(crossings * 50 <= crossings_alone * 51);
}
