// SPDX-License-Identifier: MIT
#pragma once

#include "model/build.h"
#include "sheets/diagram_graph.h"

namespace loomfolio {

/// Tells the engine which parts of the diagram make a pair, left and right or front and rear: two of one kind, with wires at the same
/// terminals, whose ids or names differ in just those words.
void add_pairs(const Build& build, DiagramGraph& diagram);

}  // namespace loomfolio
