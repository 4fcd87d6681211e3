// SPDX-License-Identifier: MIT
// Motor and generator: a circle with its letter and the sort of current.
#include "sheets/symbols/symbol_makers.h"

namespace loomfolio {

void draw_machine(Pencil& pencil, const SymbolDrawing& drawing) {
  const bool is_motor = drawing.symbol.symbol == Symbol::motor;
  const Point middle = pencil.at({0, 0});
  pencil.circle({0, 0}, 5);
  add_text(pencil.items(), {middle.x, baseline_at_middle(middle.y - Millimetres(0.7), look::heading)},
           is_motor ? "M" : "G", look::heading, pencil.ink().line, Align::centre);
  // Direct current: a line over three dashes. It stays level however the symbol is turned.
  const Pen pen{pencil.ink().line, look::line, {}, Cap::butt};
  const auto level = [&](double from, double to, double y) {
    add_line(pencil.items(), {middle.x + Millimetres(from), middle.y + Millimetres(y)},
             {middle.x + Millimetres(to), middle.y + Millimetres(y)}, pen);
  };
  level(-1.6, 1.6, 2.2);
  for (const double from : {-1.6, -0.4, 0.8}) level(from, from + 0.8, 2.9);
}

}  // namespace loomfolio
