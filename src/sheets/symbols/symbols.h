// SPDX-License-Identifier: MIT
// Graphic symbols by IEC 60617 on a module of 2.5 mm. Proportions are ours, from memory.
#pragma once

#include "layout/inside_drawing.h"
#include "sheets/symbols/pencil.h"

namespace loomfolio {

/// How an element stands when the sheet shows a situation; at rest else.
struct SymbolState {
  bool is_known = false;
  bool is_on = false;            ///< contact closed, lamp lit
  int way = -1;                  ///< selector: the pin (from 1) it joins to its common, -1: none
  bool shows_rays_aside = true;  ///< lamp: nothing stands beside it; else its rays go up and down
};

/// Draws the symbol with its place counted from `origin`, leads to its pins excluded.
void draw_symbol(Items& items, const PlacedSymbol& symbol, Point origin, const SymbolInk& ink,
                 const SymbolState& state = {});

/// How far aside of its centre, on its module of 2.5 mm, the blade of a break contact stands: mm.
inline constexpr double break_blade_open = 1.77, break_blade_closed = 0.65;

/// Beside another earth its symbol is narrow, so that the two do not run into one.
enum class EarthWidth : std::uint8_t { usual, narrow };

/// An earth by its own: the wire ends at `at`, on top of it.
void draw_earth(Items& items, Point at, const SymbolInk& ink, EarthWidth width = EarthWidth::usual);

}  // namespace loomfolio
