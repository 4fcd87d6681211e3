// SPDX-License-Identifier: MIT
// A connector is a narrow gate that wires pass through: one row a way, half A at the left, half B at the right; or
// upright, one column a way, where both ends of its wires lie the same way across the sheet.
#include <algorithm>

#include "layout/inside_flow.h"

namespace loomfolio::inside {
namespace {

struct Way {
  int inside = -1;
  int a = -1, b = -1;  ///< terminals; -1: not shown
  int taps = 1;
};

std::vector<Way> find_ways(const Plan& plan) {
  std::vector<Way> ways;
  const auto shown = [&](int terminal) { return terminal >= 0 && plan.ends[static_cast<std::size_t>(terminal)] >= 0; };
  for (std::size_t i = 0; i < plan.part->insides.size(); ++i) {
    const Inside& inside = plan.part->insides[i];
    if (inside.nodes.size() < 2) continue;
    Way way{static_cast<int>(i), inside.nodes[0].terminal, inside.nodes[1].terminal, 1};
    if (way.a >= 0 && way.b >= 0 && plan.kind->terminals[static_cast<std::size_t>(way.a)].side == Side::right)
      std::swap(way.a, way.b);
    for (int* end : {&way.a, &way.b}) {
      if (!shown(*end))
        *end = -1;
      else
        way.taps = std::max(way.taps, plan.ends[static_cast<std::size_t>(*end)]);
    }
    if (way.a >= 0 || way.b >= 0) ways.push_back(way);
  }
  return ways;
}

Grid widest_name(const Plan& plan, const std::vector<Way>& ways) {
  Grid widest = 0;
  for (const Way& way : ways)
    for (int end : {way.a, way.b})
      if (end >= 0)
        widest = std::max(widest, size_in_flow(plan, plan.kind->terminals[static_cast<std::size_t>(end)].id,
                                               plan.request->styles.terminal, false)
                                      .x);
  return widest;
}

/// The gate being drawn: `along` is the way the wires pass, `across` runs over the ways.
struct Gate {
  const Plan& plan;
  PartDrawing drawing;
  Grid length = 0;  ///< along

  bool is_level() const { return plan.request->lie == ConnectorLie::level; }
  GridPoint at(Grid along, Grid across) const {
    return is_level() ? GridPoint{along, across} : GridPoint{across, along};
  }
};

/// Half A comes first unless the gate stands with B above.
bool is_first(const Gate& gate, bool is_a) { return is_a == (gate.plan.request->lie != ConnectorLie::b_above); }

void put_terminal(Gate& gate, int terminal, bool is_a, Grid across) {
  if (terminal < 0) return;
  const bool first = is_first(gate, is_a);
  PlacedTerminal placed;
  placed.terminal = terminal;
  placed.side = gate.is_level() ? (first ? Side::left : Side::right) : (first ? Side::top : Side::bottom);
  const Grid along = first ? 0 : gate.length;
  placed.lead = gate.at(along, across);
  const int ends = gate.plan.ends[static_cast<std::size_t>(terminal)];
  placed.is_open = ends == 0;
  const int taps = std::max(ends, 1);
  for (int i = 0; i < taps; ++i) placed.taps.push_back(gate.at(along, across + (2 * i - (taps - 1)) * module));
  gate.drawing.terminals.push_back(std::move(placed));
}

void put_way(Gate& gate, const Way& way, Grid across) {
  put_terminal(gate, way.a, true, across);
  put_terminal(gate, way.b, false, across);
  const SymbolRoom room = room_of(Symbol::contact_pair);
  const Grid middle = gate.length / 2, half = room.length / 2;
  const bool a_first = is_first(gate, true);
  PlacedSymbol symbol;
  symbol.symbol = Symbol::contact_pair;
  symbol.inside = way.inside;
  symbol.at = gate.at(middle, across);
  symbol.heading = gate.is_level() ? Heading::right : a_first ? Heading::down : Heading::up;
  symbol.pins = {gate.at(a_first ? middle - half : middle + half, across),
                 gate.at(a_first ? middle + half : middle - half, across)};
  symbol.nodes = {way.a, way.b};
  const GridPoint edge_a = gate.at(a_first ? 0 : gate.length, across),
                  edge_b = gate.at(a_first ? gate.length : 0, across);
  if (way.a >= 0) gate.drawing.lines.push_back({InnerStyle::wire, way.a, {edge_a, symbol.pins[0]}, {}});
  if (way.b >= 0) gate.drawing.lines.push_back({InnerStyle::wire, way.b, {symbol.pins[1], edge_b}, {}});
  gate.drawing.symbols.push_back(std::move(symbol));
}

}  // namespace

PartDrawing draw_connector(const Plan& plan) {
  constexpr Grid name_height = 300;
  const std::vector<Way> ways = find_ways(plan);
  Gate gate{plan, {}, 0};
  const Grid names = gate.is_level() ? widest_name(plan, ways) + 200 : name_height;
  gate.length = up_to_module(room_of(Symbol::contact_pair).length + 2 * names);
  Grid across = 2 * module;
  for (const Way& way : ways) {
    across += (way.taps - 1) * module;
    put_way(gate, way, across);
    across += (way.taps + 1) * module;
  }
  const GridPoint size = gate.at(gate.length, gate.is_level() ? across - module : across);
  gate.drawing.width = size.x;
  gate.drawing.height = size.y;
  put_terminal_names(plan, gate.drawing);
  put_part_name(plan, gate.drawing);
  return std::move(gate.drawing);
}

}  // namespace loomfolio::inside
