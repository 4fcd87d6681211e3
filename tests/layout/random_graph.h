// SPDX-License-Identifier: MIT
// Random wiring graphs for property tests: same seed, same graph, on every machine.
#pragma once

#include <cstdint>

#include "layout/graph.h"

namespace loomfolio {

struct GraphRecipe {
  int boxes = 12, wires = 20, zones = 3;
  std::uint64_t seed = 1;
  int references = 0;   ///< boxes at the outer edges, one wire each
  Grid widest_pen = 100;
};

/// Boxes with terminals on a 5 mm pitch, a supply and fuses, control boxes, earths and splices that many wires share, the rest
/// loads, switches and sensors; two thirds of the wires stay in their zone.
Graph make_random_graph(const GraphRecipe& recipe);

}  // namespace loomfolio
