// SPDX-License-Identifier: MIT
// Two points over a gap.
#include "sheets/symbols/symbol_makers.h"

namespace loomfolio {

void draw_spark_gap(Pencil& pencil, const SymbolDrawing&) {
  pencil.line({{0, -3.75}, {0, -2}});
  pencil.line({{0, 2}, {0, 3.75}});
  pencil.blot({{-1, -2.4}, {1, -2.4}, {0, -0.5}});
  pencil.blot({{-1, 2.4}, {1, 2.4}, {0, 0.5}});
}

}  // namespace loomfolio
