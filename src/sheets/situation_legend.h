// SPDX-License-Identifier: MIT
// What the signs on a situation's sheet mean.
#pragma once

#include "sheets/draw.h"
#include "sheets/situation_layout.h"

namespace loomfolio {

/// Which of the pair's states the sheet shows.
enum class ShownStates : std::uint8_t { before, after, both };

/// Figures in it are of the state shown; of both, the later.
Block make_situation_legend(const SheetContext& context, const LaidPair& laid, ShownStates shown, Millimetres width);

}  // namespace loomfolio
