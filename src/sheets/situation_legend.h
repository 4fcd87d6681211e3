// SPDX-License-Identifier: MIT
// What the signs on a situation's sheet mean.
#pragma once

#include "sheets/draw.h"
#include "sheets/situation_layout.h"

namespace loomfolio {

Block make_situation_legend(const SheetContext& context, const LaidPair& laid, Millimetres width);

}  // namespace loomfolio
