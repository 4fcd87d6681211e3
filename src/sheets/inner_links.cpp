// SPDX-License-Identifier: MIT
// The layout ends a link where the blade is at rest. A blade that a situation moves crosses the height of its centre elsewhere, and so does
// that of a selector on each of its ways.
#include "sheets/inner_links.h"

#include <algorithm>
#include <cmath>
#include <cstdlib>

namespace loomfolio {
namespace {

constexpr Grid near_blade = 160;  // the layout ends no link farther from the centre of the symbol that it moves

bool is_level(const PlacedSymbol& symbol) { return symbol.heading == Heading::left || symbol.heading == Heading::right; }

/// Where the blade crosses the height of the symbol's centre: how far aside of it on the page, to the right or down.
Grid blade_aside(const PlacedSymbol& symbol, const SymbolState& state) {
  if (symbol.symbol == Symbol::selector) {
    constexpr double pivot = 250;
    const int way = state.is_known ? state.way : symbol.way;
    if (way < 1 || static_cast<std::size_t>(way) > symbol.hinges.size()) return 0;
    const GridPoint tip = symbol.hinges[static_cast<std::size_t>(way) - 1];
    const double along = std::abs(is_level(symbol) ? tip.x - symbol.at.x : tip.y - symbol.at.y);
    const double across = is_level(symbol) ? tip.y - symbol.at.y : tip.x - symbol.at.x;
    return static_cast<Grid>(std::lround(across * pivot / (pivot + along)));
  }
  Grid aside = 0;
  if (symbol.symbol == Symbol::make_contact && !(state.is_known && state.is_on)) aside = -142;
  if (symbol.symbol == Symbol::break_contact) aside = to_grid(Millimetres(state.is_known && !state.is_on ? break_blade_open : break_blade_closed));
  return symbol.is_mirrored ? -aside : aside;
}

/// Moves the link's end at `tip`, and the corner before it where the two are in line.
void settle_end(GridPoint& tip, GridPoint& before, const PartDrawing& drawing, const std::vector<SymbolState>& stands) {
  for (std::size_t s = 0; s < drawing.symbols.size(); ++s) {
    const PlacedSymbol& symbol = drawing.symbols[s];
    if (!has_blade(symbol.symbol)) continue;
    Grid GridPoint::*const across = is_level(symbol) ? &GridPoint::y : &GridPoint::x;
    Grid GridPoint::*const along = is_level(symbol) ? &GridPoint::x : &GridPoint::y;
    if (tip.*along != symbol.at.*along || std::abs(tip.*across - symbol.at.*across) > near_blade) continue;
    const Grid to = symbol.at.*across + blade_aside(symbol, stands[s]);
    if (before.*across == tip.*across) before.*across = to;
    tip.*across = to;
    return;
  }
}

}  // namespace

InnerLine end_on_blades(InnerLine link, const PartDrawing& drawing, const std::vector<SymbolState>& stands) {
  const std::size_t count = link.points.size();
  if (count < 2) return link;
  settle_end(link.points.front(), link.points[1], drawing, stands);
  settle_end(link.points.back(), link.points[count - 2], drawing, stands);
  return link;
}

}  // namespace loomfolio
