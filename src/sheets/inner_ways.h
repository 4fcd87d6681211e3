// SPDX-License-Identifier: MIT
// Which stretches of the lines inside a part carry current: of a node that current passes, those that lead to a lamp that is out, to an
// open contact or to a terminal whose wire carries none are left out.
#pragma once

#include <vector>

#include "layout/inside_drawing.h"
#include "sheets/diagram_part.h"

namespace loomfolio {

/// A piece of a line; its hops stay with it.
struct InnerRun {
  InnerLine line;
  bool is_live = false;  ///< current passes
};

/// All lines of the drawing, in order, wires cut where current parts from them. At rest nothing is live.
std::vector<InnerRun> runs_of_lines(const PartDrawing& drawing, const PartState& state);

/// Whether the symbol's insides, as they stand, join the two nodes.
bool joins(const PartState& state, const PlacedSymbol& symbol, int a, int b);

}  // namespace loomfolio
