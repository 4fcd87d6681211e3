// SPDX-License-Identifier: MIT
#include "layout/wire_costs.h"

#include <cstdlib>

#include "layout/label.h"
#include "layout/segments.h"
#include "layout/weights.h"

namespace loomfolio {

std::vector<WireCost> find_wire_costs(const Graph& graph, const Laid& laid) {
  const laying::RouteWeights weights;
  std::vector<WireCost> costs(laid.courses.size());
  for (std::size_t w = 0; w < costs.size(); ++w) {
    const std::vector<GridPoint>& p = laid.courses[w].points;
    for (std::size_t i = 1; i < p.size(); ++i)
      costs[w].length += std::abs(p[i].x - p[i - 1].x) + std::abs(p[i].y - p[i - 1].y);
    costs[w].bends = p.size() > 2 ? static_cast<int>(p.size()) - 2 : 0;
  }
  laying::for_each_meeting(laying::find_segments(laid), [&](const laying::Segment& a, const laying::Segment& b) {
    const auto one = static_cast<std::size_t>(a.wire), other = static_cast<std::size_t>(b.wire);
    // Wires of one net meet in a dot, which is no crossing.
    if (graph.wires[one].net == graph.wires[other].net || !laying::crosses(a, b)) return;
    ++costs[one].crossings;
    ++costs[other].crossings;
  });
  for (WireCost& cost : costs) {
    cost.length_charge = (static_cast<long>(cost.length) * weights.length + grid_per_mm / 2) / grid_per_mm;
    cost.bend_charge = static_cast<long>(cost.bends) * weights.bend / grid_per_mm;
    cost.crossing_charge = static_cast<long>(cost.crossings) * weights.crossing / grid_per_mm;
  }
  return costs;
}

std::vector<PlacedLabel> place_wire_notes(const Graph& graph, const Laid& laid, const std::vector<NoteSize>& sizes,
                                          const std::vector<GridBox>& taken) {
  Graph noted = graph;
  for (std::size_t w = 0; w < noted.wires.size(); ++w) {
    noted.wires[w].label_width = sizes[w].width;
    noted.wires[w].label_height = sizes[w].height;
  }
  return laying::find_places_beside(noted, laid, taken);
}

}  // namespace loomfolio
