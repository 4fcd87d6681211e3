// SPDX-License-Identifier: MIT
#include "layout/inside_turn.h"

#include <algorithm>

namespace loomfolio {
namespace {

Heading across(Heading heading) {
  if (heading == Heading::left) return Heading::right;
  return heading == Heading::right ? Heading::left : heading;
}

void mirror_symbol(PlacedSymbol& symbol, Grid width) {
  symbol.at.x = width - symbol.at.x;
  for (GridPoint& pin : symbol.pins) pin.x = width - pin.x;
  for (GridPoint& hinge : symbol.hinges) hinge.x = width - hinge.x;
  if (symbol.heading == Heading::down || symbol.heading == Heading::up) symbol.is_mirrored = !symbol.is_mirrored;
  symbol.heading = across(symbol.heading);
}

Side across(Side side) {
  if (side == Side::left) return Side::right;
  return side == Side::right ? Side::left : side;
}

GridPoint swapped(GridPoint p) { return {p.y, p.x}; }
GridBox swapped(GridBox b) { return {b.y0, b.x0, b.y1, b.x1}; }

Heading swapped(Heading heading) {
  switch (heading) {
    case Heading::down:
      return Heading::right;
    case Heading::right:
      return Heading::down;
    case Heading::up:
      return Heading::left;
    case Heading::left:
      return Heading::up;
  }
  return heading;
}

}  // namespace

PartDrawing mirrored(const PartDrawing& drawing) {
  PartDrawing turned = drawing;
  const Grid width = drawing.width;
  for (PlacedTerminal& terminal : turned.terminals) {
    terminal.side = across(terminal.side);
    terminal.lead.x = width - terminal.lead.x;
    for (GridPoint& tap : terminal.taps) tap.x = width - tap.x;
  }
  for (PlacedSymbol& symbol : turned.symbols) mirror_symbol(symbol, width);
  for (SwitchTable& table : turned.tables) {
    table.box = {width - table.box.x1, table.box.y0, width - table.box.x0, table.box.y1};
    if (!table.is_across)
      for (Grid& x : table.columns) x = width - x;
    if (!table.is_across) continue;
    for (SwitchTable::Row& row : table.rows) row.y = width - row.y;
    table.reach_start = width - table.reach_start;
    table.reach_end = width - table.reach_end;
  }
  for (InnerLine& line : turned.lines) {
    for (GridPoint& p : line.points) p.x = width - p.x;
    for (GridPoint& p : line.hops) p.x = width - p.x;
  }
  for (GridPoint& dot : turned.dots) dot.x = width - dot.x;
  for (InnerText& text : turned.texts) {
    const GridBox box = text.box;
    text.box = {width - box.x1, box.y0, width - box.x0, box.y1};
    text.baseline.x = text.box.x0;
  }
  return turned;
}

namespace inside {

Block mirrored_block(const Block& block) {
  Block turned = block;
  for (PlacedSymbol& symbol : turned.symbols) mirror_symbol(symbol, 0);
  for (InnerLine& line : turned.lines)
    for (GridPoint& p : line.points) p.x = -p.x;
  for (BlockPin& pin : turned.pins) pin.x = -pin.x;
  turned.low = block.high;
  turned.high = block.low;
  if (!block.is_bridge) turned.high = turned.low = std::max(block.low, block.high);
  for (BlockText& text : turned.texts) {
    if (block.is_bridge)
      text.x = -text.x - text.width_x;
    else
      text.x += -2 * text.anchor_x;
    text.anchor_x = -text.anchor_x;
    turned.low = std::max(turned.low, -text.x);
    turned.high = std::max(turned.high, text.x + text.width_x);
  }
  return turned;
}

PlacedSymbol moved(PlacedSymbol symbol, GridPoint by) {
  const auto move = [by](GridPoint& p) {
    p.x += by.x;
    p.y += by.y;
  };
  move(symbol.at);
  for (GridPoint& p : symbol.pins) move(p);
  for (GridPoint& p : symbol.hinges) move(p);
  return symbol;
}

InnerLine moved(InnerLine line, GridPoint by) {
  for (GridPoint& p : line.points) {
    p.x += by.x;
    p.y += by.y;
  }
  for (GridPoint& p : line.hops) {
    p.x += by.x;
    p.y += by.y;
  }
  return line;
}

void transpose(PartDrawing& drawing) {
  std::swap(drawing.width, drawing.height);
  for (PlacedTerminal& terminal : drawing.terminals) {
    terminal.lead = swapped(terminal.lead);
    for (GridPoint& tap : terminal.taps) tap = swapped(tap);
  }
  for (PlacedSymbol& symbol : drawing.symbols) {
    symbol.at = swapped(symbol.at);
    for (GridPoint& p : symbol.pins) p = swapped(p);
    for (GridPoint& p : symbol.hinges) p = swapped(p);
    symbol.heading = swapped(symbol.heading);
  }
  for (InnerLine& line : drawing.lines)
    for (GridPoint& p : line.points) p = swapped(p);
  for (GridPoint& dot : drawing.dots) dot = swapped(dot);
  for (InnerText& text : drawing.texts) text.box = swapped(text.box);
  for (SwitchTable& table : drawing.tables) {
    table.box = swapped(table.box);
    table.is_across = !table.is_across;
  }
}

}  // namespace inside
}  // namespace loomfolio
