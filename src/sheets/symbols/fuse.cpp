// SPDX-License-Identifier: MIT
// A rectangle along the wire, the wire drawn through.
#include "sheets/symbols/symbol_makers.h"

namespace loomfolio {

void draw_fuse(Pencil& pencil, const SymbolDrawing&) {
  pencil.box({-1.25, -3.75}, {1.25, 3.75});
  pencil.line({{0, -3.75}, {0, 3.75}});
}

}  // namespace loomfolio
