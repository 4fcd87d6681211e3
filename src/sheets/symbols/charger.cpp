// SPDX-License-Identifier: MIT
// Regulator: alternating current in, direct current out.
#include <algorithm>
#include <cmath>

#include "sheets/symbols/symbol_makers.h"

namespace loomfolio {

void draw_charger(Pencil& pencil, const SymbolDrawing& drawing) {
  double reach = 7.5;
  for (const GridPoint& pin : drawing.symbol.pins) {
    const double across = drawing.symbol.heading == Heading::right ? to_mm(pin.y - drawing.symbol.at.y).number()
                                                                   : to_mm(pin.x - drawing.symbol.at.x).number();
    reach = std::max(reach, std::abs(across) + 2.5);
  }
  pencil.box({-reach, -5}, {reach, 5});
  pencil.line({{-reach, 5}, {reach, -5}});
  const bool is_level = drawing.symbol.heading == Heading::right;
  // The start side takes the alternating current.
  const Pencil::Spot in = is_level ? Pencil::Spot{-reach / 2, -2.4} : Pencil::Spot{-reach / 2, -2.2};
  const Pencil::Spot out = is_level ? Pencil::Spot{reach / 2, 2.4} : Pencil::Spot{reach / 2, 2.4};
  pencil.letters(in, drawing.symbol.letters == "3~" ? "3~" : "~", look::part_name);
  const Point o = pencil.at(out);
  const Pen pen{pencil.ink().line, look::part_line, {}, Cap::butt};
  add_line(pencil.items(), {o.x - Millimetres(1.6), o.y - Millimetres(0.5)},
           {o.x + Millimetres(1.6), o.y - Millimetres(0.5)}, pen);
  for (const double from : {-1.6, -0.4, 0.8})
    add_line(pencil.items(), {o.x + Millimetres(from), o.y + Millimetres(0.4)},
             {o.x + Millimetres(from + 0.8), o.y + Millimetres(0.4)}, pen);
}

}  // namespace loomfolio
