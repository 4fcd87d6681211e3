// SPDX-License-Identifier: MIT
// An input: an arrow that points in.
#include "sheets/symbols/symbol_makers.h"

namespace loomfolio {

void draw_receiver(Pencil& pencil, const SymbolDrawing&) {
  pencil.line({{0, -2}, {0, 0}});
  pencil.blot({{-1.1, -0.3}, {1.1, -0.3}, {0, 2}});
}

}  // namespace loomfolio
