// SPDX-License-Identifier: MIT
// A connector is a narrow gate that wires pass through: one row a way, half A at the left, half B at the right.
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

}  // namespace

PartDrawing draw_connector(const Plan& plan) {
  const std::vector<Way> ways = find_ways(plan);
  const SymbolRoom room = room_of(Symbol::contact_pair);
  PartDrawing drawing;
  drawing.width = up_to_module(room.length + 2 * (widest_name(plan, ways) + 200));
  Grid y = 2 * module;
  const auto put = [&](int terminal, Side side, Grid at) {
    if (terminal < 0) return;
    PlacedTerminal placed;
    placed.terminal = terminal;
    placed.side = side;
    placed.lead = {side == Side::left ? 0 : drawing.width, at};
    const int ends = plan.ends[static_cast<std::size_t>(terminal)];
    placed.is_open = ends == 0;
    const int taps = std::max(ends, 1);
    for (int i = 0; i < taps; ++i) placed.taps.push_back({placed.lead.x, at + (2 * i - (taps - 1)) * module});
    drawing.terminals.push_back(std::move(placed));
  };
  for (const Way& way : ways) {
    y += (way.taps - 1) * module;
    put(way.a, Side::left, y);
    put(way.b, Side::right, y);
    PlacedSymbol symbol;
    symbol.symbol = Symbol::contact_pair;
    symbol.inside = way.inside;
    symbol.at = {drawing.width / 2, y};
    symbol.heading = Heading::right;
    symbol.pins = {{symbol.at.x - room.length / 2, y}, {symbol.at.x + room.length / 2, y}};
    symbol.nodes = {way.a, way.b};
    if (way.a >= 0) drawing.lines.push_back({InnerStyle::wire, way.a, {{0, y}, symbol.pins[0]}, {}});
    if (way.b >= 0) drawing.lines.push_back({InnerStyle::wire, way.b, {symbol.pins[1], {drawing.width, y}}, {}});
    drawing.symbols.push_back(std::move(symbol));
    y += (way.taps + 1) * module;
  }
  drawing.height = y - module;
  put_terminal_names(plan, drawing);
  put_part_name(plan, drawing);
  return drawing;
}

}  // namespace loomfolio::inside
