// SPDX-License-Identifier: MIT
// What the signs on a situation's sheet mean.
#pragma once

#include <vector>

#include "sheets/draw.h"
#include "sheets/situation_layout.h"

namespace loomfolio {

/// Which of the pair's states the sheet shows.
enum class ShownStates : std::uint8_t { before, after, both };

/// A pair on a sheet.
struct ShownPair {
  const LaidPair* laid = nullptr;
  ShownStates shown = ShownStates::both;
};

/// The signs of all pairs on the sheet, each once. Figures in it are of the first pair that has them; of both states, of
/// the later.
Block make_situation_legend(const SheetContext& context, const std::vector<ShownPair>& pairs, Millimetres width);

/// Wires whose tag had no room for their amperes; without height where all had.
Block make_spare_figures(const SheetContext& context, const ShownPair& pair, Millimetres width);

}  // namespace loomfolio
