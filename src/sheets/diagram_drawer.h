// SPDX-License-Identifier: MIT
// What the pieces of a diagram are inked with. Only diagram_draw*.cpp include this.
#pragma once

#include "sheets/diagram_draw.h"

namespace loomfolio {

/// A diagram in hand: where its items go, and where its top left stands on the sheet.
struct DiagramDrawer {
  Items& items;
  const DiagramInk& ink;
  Point origin;

  Point place(GridPoint p) const { return origin + to_mm(p); }
  const Build& build() const { return ink.build; }
  bool is_live() const { return ink.state != nullptr && ink.state->is_known; }
};

bool is_wire_live(const DiagramDrawer& d, WireId wire);

/// The words with the figure that the situation gives, if any.
WireLabel in_situation(const DiagramDrawer& d, WireId wire, WireLabel words);

/// Number and code of a wire, and what flows there; its top left at `at`.
void draw_label(const DiagramDrawer& d, WireId id, const WireLabel& words, Point at, Colour colour);

/// The labels of all wires, and the tags of those for which the layout found no label.
void draw_labels(const DiagramDrawer& d);

/// How the lines of a flag at a side stand to each other.
enum class FlagLines : std::uint8_t { stacked, in_a_row };

/// A short stub with an arrowhead, and at it the sheets where the other wires are.
void draw_flag(const DiagramDrawer& d, const Flag& flag, Point at, Side side, FlagLines stacking = FlagLines::stacked);

}  // namespace loomfolio
