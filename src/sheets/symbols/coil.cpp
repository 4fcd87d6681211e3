// SPDX-License-Identifier: MIT
// Of a relay: a rectangle across the wire. Pulled in when the sheet shows a situation: filled.
#include "sheets/symbols/symbol_makers.h"

namespace loomfolio {

void draw_coil(Pencil& pencil, const SymbolDrawing& drawing) {
  pencil.box({-5, -2.5}, {5, 2.5});
  if (drawing.state.is_known && drawing.state.is_on) pencil.blot({{-5, -2.5}, {-2.5, -2.5}, {-2.5, 2.5}, {-5, 2.5}});
}

}  // namespace loomfolio
