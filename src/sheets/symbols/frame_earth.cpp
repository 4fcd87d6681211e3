// SPDX-License-Identifier: MIT
// A bar with three slanting strokes: bolted to the frame or engine.
#include "sheets/symbols/symbol_makers.h"

namespace loomfolio {

void draw_frame_earth(Pencil& pencil, const SymbolDrawing&) {
  pencil.line({{0, -1.75}, {0, 0}});
  pencil.line({{-2.5, 0}, {2.5, 0}});
  for (const double x : {-2.5, 0.0, 2.5}) pencil.line({{x, 0}, {x - 0.9, 1.75}});
}

}  // namespace loomfolio
