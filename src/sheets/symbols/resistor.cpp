// SPDX-License-Identifier: MIT
#include "sheets/symbols/symbol_makers.h"

namespace loomfolio {

void draw_resistor(Pencil& pencil, const SymbolDrawing&) { pencil.box({-1.25, -3.75}, {1.25, 3.75}); }

}  // namespace loomfolio
