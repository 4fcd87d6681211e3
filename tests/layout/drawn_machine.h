// SPDX-License-Identifier: MIT
// Machines as random graphs, with their drawings: each is drawn once for all tests of this program.
#pragma once

#include "layout/laid.h"
#include "layout/random_graph.h"

namespace loomfolio {

struct DrawnMachine {
  Graph graph;
  Laid laid;  ///< what lay_out gives for the graph alone
};

/// A graph in four zones: 25 boxes and 60 wires are one function of a machine, 60 and 150 a whole one.
const DrawnMachine& drawn_machine(std::uint64_t seed, int boxes = 25, int wires = 60);

}  // namespace loomfolio
