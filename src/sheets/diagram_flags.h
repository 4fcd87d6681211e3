// SPDX-License-Identifier: MIT
// Where the flags of a part stand and how much room they take. Only diagram_*.cpp include this.
#pragma once

#include <vector>

#include "sheets/diagram_graph.h"

namespace loomfolio {

/// A wire that leaves the part beside its flags.
struct FlagNeighbour {
  GridPoint at;  ///< within the body, on its edge
  Side side = Side::top;
  Grid half_pen = 0;
};

/// Gives flags the lengths of their stubs and the side of their words, so that words meet neither each other nor a wire.
void settle_flags(std::vector<Flag>& flags, const std::vector<FlagNeighbour>& wires);

/// How far flags reach out of the body, so wide, on each side.
GridBox flag_room(const std::vector<Flag>& flags, Grid width);

}  // namespace loomfolio
