// SPDX-License-Identifier: MIT
// A bar with three slanting strokes: bolted to the frame or engine.
#include "sheets/symbols/symbol_makers.h"

namespace loomfolio {

void draw_earth_of(Pencil& pencil, double half) {
  const double slant = 0.36 * half;
  pencil.line({{0, -1.75}, {0, 0}});
  pencil.line({{-half, 0}, {half, 0}});
  for (const double x : {-half, 0.0, half}) pencil.line({{x, 0}, {x - slant, 1.75}});
}

void draw_frame_earth(Pencil& pencil, const SymbolDrawing&) { draw_earth_of(pencil, usual_earth); }

}  // namespace loomfolio
