// SPDX-License-Identifier: MIT
#include "sheets/symbols/symbol_makers.h"

namespace loomfolio {

void draw_horn(Pencil& pencil, const SymbolDrawing&) {
  pencil.box({-1.75, -3.75}, {1.75, 3.75});
  pencil.shape({{1.75, -1.4}, {4.75, -3.6}, {4.75, 3.6}, {1.75, 1.4}});
}

}  // namespace loomfolio
