// SPDX-License-Identifier: MIT
// Blocks one below another, as one block.
#pragma once

#include "sheets/draw.h"

namespace loomfolio {

/// Makes the block taller by `gap` and `below`, which stands at its foot. What has no height takes no gap.
void put_below(Block& block, Block&& below, Millimetres gap = {});

}  // namespace loomfolio
