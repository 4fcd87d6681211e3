// SPDX-License-Identifier: MIT
// Inks a part as the layout placed it: box, inner wires, symbols, terminals, texts.
#pragma once

#include <vector>

#include "layout/inside_drawing.h"
#include "sheets/draw.h"
#include "sheets/symbols/symbols.h"

namespace loomfolio {

/// What a situation does to the part; empty vectors: the part is drawn at rest.
struct PartState {
  bool is_known = false;
  std::vector<bool> live_nodes;      ///< by node: terminals first, then inner points
  std::vector<SymbolState> insides;  ///< by Part::insides
};

/// The type sizes of our look, as layout takes them.
InsideStyles inside_styles();

/// Draws the part, its top left at `at`.
void draw_part(Items& items, const PartDrawing& drawing, Point at, const PartState& state = {});

}  // namespace loomfolio
