// SPDX-License-Identifier: MIT
// An open triangle in the direction of current, a bar at its tip, the wire straight through.
#include "sheets/symbols/symbol_makers.h"

namespace loomfolio {

void draw_diode(Pencil& pencil, const SymbolDrawing&) {
  pencil.shape({{-2.2, -1.9}, {2.2, -1.9}, {0, 1.9}});
  pencil.line({{-2.2, 1.9}, {2.2, 1.9}});
  pencil.line({{0, -2.5}, {0, 2.5}});
}

}  // namespace loomfolio
