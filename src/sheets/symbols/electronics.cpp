// SPDX-License-Identifier: MIT
// A circuit of its own that gives a beat or reads signals.
#include "sheets/symbols/symbol_makers.h"

namespace loomfolio {

void draw_electronics(Pencil& pencil, const SymbolDrawing&) {
  pencil.box({-5, -3.75}, {5, 3.75});
  const Point middle = pencil.at({0, 0});
  const auto at = [&](double x, double y) { return Point{middle.x + Millimetres(x), middle.y + Millimetres(y)}; };
  add_polyline(pencil.items(),
               {at(-3, 1.2), at(-1.8, 1.2), at(-1.8, -1.2), at(-0.6, -1.2), at(-0.6, 1.2), at(0.6, 1.2), at(0.6, -1.2),
                at(1.8, -1.2), at(1.8, 1.2), at(3, 1.2)},
               {pencil.ink().line, look::line, {}, Cap::round});
}

}  // namespace loomfolio
