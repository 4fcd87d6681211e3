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

/// Whether the symbol's insides, as they stand, join the two nodes.
bool joins(const PartState& state, const PlacedSymbol& symbol, int a, int b) {
  std::vector<NodeJoint> joints = state.links;
  const auto add = [&](int inside) {
    const auto& own = state.joints[static_cast<std::size_t>(inside)];
    joints.insert(joints.end(), own.begin(), own.end());
  };
  add(symbol.inside);
  for (int inside : symbol.also) add(inside);
  std::vector<int> reached{a};
  for (std::size_t r = 0; r < reached.size(); ++r)
    for (const NodeJoint& joint : joints)
      for (const auto& [from, to] : {std::pair(joint.a, joint.b), std::pair(joint.b, joint.a)})
        if (from == reached[r] && std::find(reached.begin(), reached.end(), to) == reached.end()) reached.push_back(to);
  return std::find(reached.begin(), reached.end(), b) != reached.end();
}

/// How the symbol stands: a contact or selector by what it joins, any other by its element.
SymbolState state_of(const PartState& state, const PlacedSymbol& symbol) {
  if (!state.is_known || symbol.inside < 0) return {};
  SymbolState found = state.insides[static_cast<std::size_t>(symbol.inside)];
  const bool is_contact = symbol.symbol == Symbol::make_contact || symbol.symbol == Symbol::break_contact;
  if (is_contact && symbol.nodes.size() >= 2) found.is_on = joins(state, symbol, symbol.nodes[0], symbol.nodes[1]);
  if (symbol.symbol == Symbol::selector)
    for (std::size_t pin = 1; pin < symbol.nodes.size() && found.way < 0; ++pin)
      if (joins(state, symbol, symbol.nodes[0], symbol.nodes[pin])) found.way = static_cast<int>(pin);
  return found;
}

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
    const bool is_live = ink.state.is_known && ink.is_live(line.node);
    item.stroke = {
        true, is_link ? Pen{look::ink, look::line, {Millimetres(0.9), Millimetres(0.6)}, Cap::butt}
                      : Pen{ink.colour_of(line.node), is_live ? look::live_line : look::part_line, {}, Cap::round}};
    ink.items.push_back(std::move(item));
  }
  for (const GridPoint& dot : ink.drawing.dots)
    add_circle(ink.items, ink.place(dot), dot_radius, {false, {}}, {true, look::ink});
}

/// Rings are filled in the row in which the switch stands; the other rows step back.
bool is_in_force(const PartInk& ink, const SwitchTable& table, const SwitchTable::Row& row) {
  return !ink.state.is_known || ink.state.positions[static_cast<std::size_t>(table.inside)] == row.position;
}

void draw_table(const PartInk& ink, const SwitchTable& table) {
  const auto spot = [&](Grid column, Grid row) {
    return ink.place(table.is_across ? GridPoint{row, column} : GridPoint{column, row});
  };
  const Pen hairline{look::hairline_grey, look::thin_line, {}, Cap::butt};
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
      const Colour colour = is_in_force(ink, table, row) ? look::ink : look::dead_wire;
      const bool is_filled = ink.state.is_known && is_in_force(ink, table, row);
      add_line(ink.items, spot(low, row.y), spot(high, row.y), {colour, look::heavy_line, {}, Cap::round});
      for (int c : group)
        add_circle(ink.items, spot(table.columns[static_cast<std::size_t>(c)], row.y), Millimetres(0.75),
                   {true, {colour, look::part_line}}, {true, is_filled ? look::ink : look::paper});
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

/// A terminal's mark; its figure stands at the right end of the room kept for it.
void draw_terminal_text(const PartInk& ink, const InnerText& text) {
  const std::size_t gap = text.text.find(figure_gap);
  const std::string mark = text.text.substr(0, gap);
  add_text(ink.items, ink.place(text.baseline), mark, text.style);
  if (gap == std::string::npos) return;
  for (std::size_t t = 0; t < ink.state.figures.size(); ++t)
    if (ink.state.marks[t] == mark && !ink.state.figures[t].empty())
      add_text(ink.items, ink.place({text.box.x1, text.baseline.y}), ink.state.figures[t], look::volts, look::accent,
               Align::right);
}

}  // namespace

InsideStyles inside_styles() { return {look::part_name, look::part_value, look::terminal_name, look::small}; }

void draw_part(Items& items, const PartDrawing& drawing, Point at, const PartState& state) {
  const PartInk ink{items, drawing, at, state};
  add_boxed_rect(items, {at.x, at.y, to_mm(drawing.width), to_mm(drawing.height)}, look::paper,
                 {look::ink, look::part_line});
  draw_lines(ink);
  for (const PlacedSymbol& symbol : drawing.symbols) {
    draw_symbol(items, symbol, at, {look::ink, look::part_line, look::paper}, state_of(state, symbol));
  }
  for (const SwitchTable& table : drawing.tables) draw_table(ink, table);
  for (const PlacedTerminal& terminal : drawing.terminals) draw_terminal(ink, terminal);
  for (const InnerText& text : drawing.texts)
    if (text.role == TextRole::terminal)
      draw_terminal_text(ink, text);
    else
      add_text(items, ink.place(text.baseline), text.text, text.style);
}

}  // namespace loomfolio
