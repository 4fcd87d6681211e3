// SPDX-License-Identifier: MIT
// An output: a triangle that points at its terminal, with the pole it gives.
#include "sheets/symbols/symbol_makers.h"

namespace loomfolio {

void draw_driver(Pencil& pencil, const SymbolDrawing& drawing) {
  pencil.shape({{-2.5, -2.5}, {2.5, -2.5}, {0, 2.5}});
  pencil.letters({0, -1}, drawing.symbol.letters, look::terminal_name);
}

}  // namespace loomfolio
