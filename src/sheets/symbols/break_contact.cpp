// SPDX-License-Identifier: MIT
// The blade rests on a tick; when a situation opens it, it stands off.
#include "sheets/symbols/symbol_makers.h"

namespace loomfolio {

void draw_break_contact(Pencil& pencil, const SymbolDrawing& drawing) {
  const bool is_open = drawing.state.is_known && !drawing.state.is_on;
  pencil.line({{0, -3.75}, {0, -2.5}, {1.9, -2.5}});
  if (is_open)
    pencil.line({{0, 3.75}, {0, 2.5}, {2.9, -1.6}});
  else
    pencil.line({{0, 3.75}, {0, 2.5}, {1.45, -3.1}});
  draw_operator(pencil, drawing.symbol.worked_by, {is_open ? break_blade_open : break_blade_closed, 0});
}

}  // namespace loomfolio
