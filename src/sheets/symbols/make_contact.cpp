// SPDX-License-Identifier: MIT
// A blade between two small rings, which show where it ends also when it closes the way.
#include <algorithm>

#include "sheets/symbols/symbol_makers.h"

namespace loomfolio {
namespace {

constexpr double ring = 0.6;

}  // namespace

void draw_make_contact(Pencil& pencil, const SymbolDrawing& drawing) {
  const bool is_closed = drawing.state.is_known && drawing.state.is_on;
  pencil.line({{0, -3.75}, {0, -2.5}});
  pencil.line({{0, 3.75}, {0, 2.5}});
  pencil.thick_line({0, 2.5}, {is_closed ? 0 : -2.9, is_closed ? -2.5 : -2.6}, std::max(pencil.ink().width, look::heavy_line));
  for (const double end : {-2.5, 2.5}) pencil.circle({0, end}, ring);
  draw_operator(pencil, drawing.symbol.worked_by, {is_closed ? 0 : -1.45, 0});
}

}  // namespace loomfolio
