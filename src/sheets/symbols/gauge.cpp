// SPDX-License-Identifier: MIT
#include "sheets/symbols/symbol_makers.h"

namespace loomfolio {

void draw_gauge(Pencil& pencil, const SymbolDrawing&) {
  pencil.circle({0, 0}, 5);
  const Point hub = pencil.at({0, 0});
  const auto at = [&](double x, double y) { return Point{hub.x + Millimetres(x), hub.y + Millimetres(y)}; };
  const Pen pen{pencil.ink().line, look::part_line, {}, Cap::round};
  add_line(pencil.items(), at(-1.4, 2.2), at(1.9, -2.7), pen);
  add_polygon(pencil.items(), {at(2.35, -3.4), at(2.2, -2.1), at(1.2, -2.8)}, pencil.ink().line,
              {pencil.ink().line, look::thin_line});
  pencil.disc({0, 0}, 0.45);
}

}  // namespace loomfolio
