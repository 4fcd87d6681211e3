// SPDX-License-Identifier: MIT
// Four arcs.
#include "sheets/symbols/symbol_makers.h"

namespace loomfolio {

void draw_winding(Pencil& pencil, const SymbolDrawing&) {
  for (const double y : {-5.0, -2.5, 0.0, 2.5}) pencil.half_circle({0, y}, {0, y + 2.5});
}

}  // namespace loomfolio
