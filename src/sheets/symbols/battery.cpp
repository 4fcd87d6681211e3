// SPDX-License-Identifier: MIT
// Long plate plus, short plate minus; two cells stand for however many there are.
#include "sheets/symbols/symbol_makers.h"

namespace loomfolio {

void draw_battery(Pencil& pencil, const SymbolDrawing&) {
  for (const double y : {-1.9, 0.7}) {
    pencil.line({{-5, y}, {5, y}});
    pencil.thick_line({-2.5, y + 1.2}, {2.5, y + 1.2}, Millimetres(0.8));
  }
  pencil.line({{0, -2.5}, {0, -1.9}});
  pencil.line({{0, 1.9}, {0, 2.5}});
  pencil.dashed({0, -0.7}, {0, 0.7});
}

}  // namespace loomfolio
