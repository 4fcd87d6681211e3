// SPDX-License-Identifier: MIT
// A consumer of no special sort.
#include "sheets/symbols/symbol_makers.h"

namespace loomfolio {

void draw_load(Pencil& pencil, const SymbolDrawing&) {
  pencil.box({-2.5, -3.75}, {2.5, 3.75});
  pencil.line({{-2.5, 3.75}, {2.5, -3.75}});
}

}  // namespace loomfolio
