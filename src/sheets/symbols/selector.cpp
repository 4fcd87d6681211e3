// SPDX-License-Identifier: MIT
// One common, several ways. It is drawn by its pins and hinges, which the layout placed.
#include <algorithm>
#include <cmath>

#include "sheets/symbols/symbol_makers.h"

namespace loomfolio {

namespace {

Point middle_of(Point a, Point b) { return {(a.x + b.x) / 2, (a.y + b.y) / 2}; }

}  // namespace

void draw_selector(Pencil& pencil, const SymbolDrawing& drawing) {
  const PlacedSymbol& symbol = drawing.symbol;
  const auto place = [&](GridPoint p) { return drawing.origin + to_mm(p); };
  const Pen pen{pencil.ink().line, pencil.ink().width, {}, Cap::round};
  const Point pivot = pencil.at({0, -2.5});
  add_line(pencil.items(), place(symbol.pins[0]), pivot, pen);
  for (std::size_t i = 0; i < symbol.hinges.size(); ++i) {
    add_line(pencil.items(), place(symbol.hinges[i]), place(symbol.pins[i + 1]), pen);
    add_circle(pencil.items(), place(symbol.hinges[i]), Millimetres(0.5), {true, pen}, {true, pencil.ink().fill});
  }
  const int way = drawing.state.is_known ? drawing.state.way : symbol.way;
  const bool is_joined = way >= 1 && static_cast<std::size_t>(way) <= symbol.hinges.size();
  const Point tip = is_joined ? place(symbol.hinges[static_cast<std::size_t>(way) - 1]) : pencil.at({0, 1.6});
  add_line(pencil.items(), pivot, tip, {pencil.ink().line, look::heavy_line, {}, Cap::round});
  pencil.disc({0, -2.5}, 0.5);
  if (symbol.worked_by == Operator::none || symbol.worked_by == Operator::coil) return;
  const Point blade = middle_of(pivot, tip), centre = pencil.at({0, 0});
  const bool is_level = symbol.heading == Heading::left || symbol.heading == Heading::right;
  // Where the link meets the blade, back in the symbol's own directions.
  const double across = is_level ? (blade.y - centre.y).number() : (blade.x - centre.x).number();
  double reach = 0;
  for (const GridPoint& hinge : symbol.hinges)
    reach = std::max(reach, std::abs(to_mm(is_level ? hinge.y - symbol.at.y : hinge.x - symbol.at.x).number()));
  draw_operator(pencil, symbol.worked_by, {symbol.is_mirrored ? -across : across, 0});
}

}  // namespace loomfolio
