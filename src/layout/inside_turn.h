// SPDX-License-Identifier: MIT
// Mirroring and swapping over the diagonal. Only inside_*.cpp include this.
#pragma once

#include "layout/inside_flow.h"

namespace loomfolio::inside {

/// The block with low and high exchanged; its texts keep to the side of their pin they were on.
Block mirrored_block(const Block& block);

PlacedSymbol moved(PlacedSymbol symbol, GridPoint by);
InnerLine moved(InnerLine line, GridPoint by);

}  // namespace loomfolio::inside
