// SPDX-License-Identifier: MIT
// A bar in a cup that is open towards it: tab of half A, receptacle of half B.
#include "sheets/symbols/symbol_makers.h"

namespace loomfolio {

void draw_contact_pair(Pencil& pencil, const SymbolDrawing&) {
  pencil.half_circle({1.3, 0.5}, {-1.3, 0.5});
  pencil.line({{0, -3.75}, {0, -2}});
  pencil.thick_line({0, -2.2}, {0, 1.6}, Millimetres(0.9));
  pencil.line({{0, 1.8}, {0, 3.75}});
}

}  // namespace loomfolio
