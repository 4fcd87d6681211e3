// SPDX-License-Identifier: MIT
// The tables of the parts list that count what the wires take: fittings for their ends, and wire off the reel.
#pragma once

#include "sheets/page_flow.h"
#include "sheets/table.h"

namespace loomfolio {

/// A box to tick, and its column.
Cell tick_cell();
Column tick_column();

/// Fittings by the size of the wire that goes in, and the barrels of splices.
void add_fittings(PageFlow& flow);
/// Metres by size, insulation and colour; of the wires that the kit brings.
void add_reel_wire(PageFlow& flow);

}  // namespace loomfolio
