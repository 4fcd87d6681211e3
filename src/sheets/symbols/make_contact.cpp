// SPDX-License-Identifier: MIT
#include "sheets/symbols/symbol_makers.h"

namespace loomfolio {

void draw_make_contact(Pencil& pencil, const SymbolDrawing& drawing) {
  const bool is_closed = drawing.state.is_known && drawing.state.is_on;
  pencil.line({{0, -3.75}, {0, -2.4}});
  pencil.line({{0, 3.75}, {0, 2.5}, {is_closed ? 0 : -2.9, is_closed ? -2.5 : -2.6}});
  draw_operator(pencil, drawing.symbol.worked_by, {is_closed ? 0 : -1.45, 0});
}

}  // namespace loomfolio
