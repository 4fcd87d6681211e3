// SPDX-License-Identifier: MIT
// A circle with a cross; lit when the sheet shows a situation: rays, so that it reads in grey.
#include <cmath>

#include "sheets/symbols/symbol_makers.h"

namespace loomfolio {

void draw_lamp(Pencil& pencil, const SymbolDrawing& drawing) {
  constexpr double radius = 3.75, arm = radius * 0.70710678;
  pencil.circle({0, 0}, radius);
  pencil.line({{-arm, -arm}, {arm, arm}});
  pencil.line({{-arm, arm}, {arm, -arm}});
  if (!drawing.state.is_known || !drawing.state.is_on) return;
  if (!drawing.state.shows_rays_aside) {
    // At the four corners, clear of its wires above and below and of what is written beside it.
    for (const double side : {-1.0, 1.0})
      for (const double end : {-1.0, 1.0})
        for (const double turn : {0.55, 0.85})
          pencil.line({{side * turn * 4.3, end * std::sqrt(1 - turn * turn) * 4.3},
                       {side * turn * 5.1, end * std::sqrt(1 - turn * turn) * 5.1}});
    return;
  }
  for (const double side : {-1.0, 1.0})
    for (const double y : {-0.8, 0.0, 0.8}) pencil.line({{side * 4.3, y * 1.2}, {side * 5.5, y * 2.2}});
}

}  // namespace loomfolio
