// SPDX-License-Identifier: MIT
#include "sheets/diagram_part.h"

#include <algorithm>

namespace loomfolio {
namespace {

constexpr Millimetres ring_radius{1.0}, dot_radius{0.55}, hop_radius{0.8};

struct PartInk {
  Items& items;
  const PartDrawing& drawing;
  Point at;
  const PartState& state;

  Point place(GridPoint p) const { return at + to_mm(p); }
  bool is_live(int node) const {
    return !state.is_known || (node >= 0 && static_cast<std::size_t>(node) < state.live_nodes.size() &&
                               state.live_nodes[static_cast<std::size_t>(node)]);
  }
  Colour colour_of(int node) const { return is_live(node) ? look::ink : look::dead_wire; }
};

/// A polyline that hops, from left to right or right to left, over what it crosses.
std::vector<PathPiece> path_with_hops(const PartInk& ink, const InnerLine& line) {
  std::vector<PathPiece> path{PathMove{ink.place(line.points.front())}};
  for (std::size_t i = 1; i < line.points.size(); ++i) {
    const GridPoint from = line.points[i - 1], to = line.points[i];
    std::vector<GridPoint> hops;
    for (const GridPoint& hop : line.hops)
      if (from.y == to.y && hop.y == from.y && hop.x > std::min(from.x, to.x) && hop.x < std::max(from.x, to.x))
        hops.push_back(hop);
    if (from.x > to.x) std::reverse(hops.begin(), hops.end());
    for (const GridPoint& hop : hops) {
      const Point centre = ink.place(hop);
      if (from.x < to.x) {
        path.push_back(PathLine{{centre.x - hop_radius, centre.y}});
        path.push_back(PathArc{centre, hop_radius, 180, 360});
      } else {
        path.push_back(PathLine{{centre.x + hop_radius, centre.y}});
        path.push_back(PathCurve{{centre.x + hop_radius, centre.y - hop_radius * 1.33},
                                 {centre.x - hop_radius, centre.y - hop_radius * 1.33},
                                 {centre.x - hop_radius, centre.y}});
      }
    }
    path.push_back(PathLine{ink.place(to)});
  }
  return path;
}

void draw_lines(const PartInk& ink) {
  for (const InnerLine& line : ink.drawing.lines) {
    PathItem item;
    item.pieces = path_with_hops(ink, line);
    const bool is_link = line.style == InnerStyle::link;
    item.stroke = {true, is_link ? Pen{look::ink, look::line, {Millimetres(0.9), Millimetres(0.6)}, Cap::butt}
                                 : Pen{ink.colour_of(line.node), look::part_line, {}, Cap::round}};
    ink.items.push_back(std::move(item));
  }
  for (const GridPoint& dot : ink.drawing.dots)
    add_circle(ink.items, ink.place(dot), dot_radius, {false, {}}, {true, look::ink});
}

void draw_table(const PartInk& ink, const SwitchTable& table) {
  const auto spot = [&](Grid column, Grid row) {
    return ink.place(table.is_across ? GridPoint{row, column} : GridPoint{column, row});
  };
  const Pen hairline{look::hairline_grey, look::thin_line, {}, Cap::butt},
      bar{look::ink, look::heavy_line, {}, Cap::round};
  const Pen lead{look::ink, look::part_line, {}, Cap::round};
  if (table.rows.empty() || table.columns.empty()) return;
  const auto [least, most] = std::minmax_element(table.columns.begin(), table.columns.end());
  for (const SwitchTable::Row& row : table.rows)
    add_line(ink.items, spot(*least - 120, row.y), spot(*most + 120, row.y), hairline);
  // A node's line runs from the edge its wire comes from to the last position that joins it.
  const Grid start = table.is_across ? table.box.x0 : table.box.y0, end = table.is_across ? table.box.x1 : table.box.y1;
  for (std::size_t c = 0; c < table.columns.size(); ++c) {
    Grid first = end, last = start;
    for (const SwitchTable::Row& row : table.rows)
      for (const auto& group : row.joined)
        if (std::find(group.begin(), group.end(), static_cast<int>(c)) != group.end()) {
          first = std::min(first, row.y);
          last = std::max(last, row.y);
        }
    const bool from_start = table.from_start[c];
    add_line(ink.items, spot(table.columns[c], from_start ? table.reach_start : table.reach_end),
             spot(table.columns[c], from_start ? last : first), lead);
  }
  for (const SwitchTable::Row& row : table.rows)
    for (const auto& group : row.joined) {
      Grid low = table.columns[static_cast<std::size_t>(group[0])], high = low;
      for (int c : group) {
        low = std::min(low, table.columns[static_cast<std::size_t>(c)]);
        high = std::max(high, table.columns[static_cast<std::size_t>(c)]);
      }
      add_line(ink.items, spot(low, row.y), spot(high, row.y), bar);
      for (int c : group)
        add_circle(ink.items, spot(table.columns[static_cast<std::size_t>(c)], row.y), Millimetres(0.75),
                   {true, {look::ink, look::part_line}}, {true, look::paper});
    }
}

void draw_terminal(const PartInk& ink, const PlacedTerminal& terminal) {
  const Pen pen{look::ink, look::part_line, {}, Cap::round};
  const auto [least, most] = std::minmax_element(terminal.taps.begin(), terminal.taps.end());
  const Point first = ink.place(*least), last = ink.place(*most);
  if (terminal.taps.size() == 1) {
    add_circle(ink.items, first, ring_radius, {true, pen}, {true, look::paper});
    return;
  }
  // Several wires on one terminal: a ring drawn long.
  const Rect rect{first.x - ring_radius, first.y - ring_radius, last.x - first.x + ring_radius * 2,
                  last.y - first.y + ring_radius * 2};
  add_boxed_rect(ink.items, rect, look::paper, pen, ring_radius);
}

}  // namespace

InsideStyles inside_styles() { return {look::part_name, look::part_value, look::terminal_name, look::small}; }

void draw_part(Items& items, const PartDrawing& drawing, Point at, const PartState& state) {
  const PartInk ink{items, drawing, at, state};
  add_boxed_rect(items, {at.x, at.y, to_mm(drawing.width), to_mm(drawing.height)}, look::paper,
                 {look::ink, look::part_line});
  draw_lines(ink);
  for (const PlacedSymbol& symbol : drawing.symbols) {
    SymbolState symbol_state;
    if (state.is_known && symbol.inside >= 0) symbol_state = state.insides[static_cast<std::size_t>(symbol.inside)];
    draw_symbol(items, symbol, at, {look::ink, look::part_line, look::paper}, symbol_state);
  }
  for (const SwitchTable& table : drawing.tables) draw_table(ink, table);
  for (const PlacedTerminal& terminal : drawing.terminals) draw_terminal(ink, terminal);
  for (const InnerText& text : drawing.texts) add_text(items, ink.place(text.baseline), text.text, text.style);
}

}  // namespace loomfolio
