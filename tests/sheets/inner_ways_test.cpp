// SPDX-License-Identifier: MIT
// What carries current inside a part, where dashed links end, and where current leaves a situation's sheet.
#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>

#include "sheets/inner_links.h"
#include "sheets/inner_ways.h"
#include "sheets/sample_sheets.h"
#include "sheets/situation_exits.h"
#include "sheets/situation_paths.h"
#include "sheets/situation_state.h"

using namespace loomfolio;

namespace {

PlacedSymbol symbol_at(Symbol symbol, int inside, GridPoint first, GridPoint second, int node_a, int node_b) {
  PlacedSymbol placed;
  placed.symbol = symbol;
  placed.inside = inside;
  placed.at = {(first.x + second.x) / 2, (first.y + second.y) / 2};
  placed.pins = {first, second};
  placed.nodes = {node_a, node_b};
  return placed;
}

/// A terminal (node 0) that feeds two lamps, the first of which is lit; their other ends are nodes 1 and 2.
struct TwoLamps {
  PartDrawing drawing;
  PartState state;

  TwoLamps() {
    PlacedTerminal terminal;
    terminal.terminal = 0;
    terminal.lead = {1000, 0};
    terminal.taps = {terminal.lead};
    drawing.terminals.push_back(terminal);
    drawing.lines.push_back({InnerStyle::wire, 0, {{1000, 0}, {1000, 500}}, {}});
    drawing.lines.push_back({InnerStyle::wire, 0, {{500, 800}, {500, 500}, {1500, 500}, {1500, 800}}, {}});
    drawing.symbols.push_back(symbol_at(Symbol::lamp, 0, {500, 800}, {500, 1400}, 0, 1));
    drawing.symbols.push_back(symbol_at(Symbol::lamp, 1, {1500, 800}, {1500, 1400}, 0, 2));
    state.is_known = true;
    state.live_nodes = {true, true, false};
    state.held_nodes = {true, false, false};
    state.fed = {true};
    state.passed = {true, false};
    state.insides.resize(2);
    state.joints.resize(2);
  }

  bool is_live_at(GridPoint p) const {
    for (const InnerRun& run : runs_of_lines(drawing, state))
      for (std::size_t i = 1; i < run.line.points.size(); ++i) {
        const GridPoint a = run.line.points[i - 1], b = run.line.points[i];
        if (p.x >= std::min(a.x, b.x) && p.x <= std::max(a.x, b.x) && p.y >= std::min(a.y, b.y) && p.y <= std::max(a.y, b.y)) return run.is_live;
      }
    FAIL("no line there");
    return false;
  }
};

}  // namespace

TEST_CASE("inside a part the leg of a lamp that is out carries nothing, though its node does") {
  const TwoLamps lamps;
  CHECK(lamps.is_live_at({1000, 200}));
  CHECK(lamps.is_live_at({700, 500}));
  CHECK(lamps.is_live_at({500, 700}));
  CHECK_FALSE(lamps.is_live_at({1300, 500}));
  CHECK_FALSE(lamps.is_live_at({1500, 700}));
}

TEST_CASE("a terminal whose wire carries nothing is the end of a dead leg, and a stub at an open contact is one") {
  TwoLamps lamps;
  lamps.state.fed = {false};
  lamps.state.passed = {true, true};
  CHECK_FALSE(lamps.is_live_at({1000, 200}));
  CHECK(lamps.is_live_at({1300, 500}));
  lamps.state.fed = {true};
  lamps.drawing.symbols[1].symbol = Symbol::make_contact;
  CHECK_FALSE(lamps.is_live_at({1500, 700}));
  lamps.state.live_nodes = {true, true, true};
  lamps.state.joints[1] = {{0, 2}};
  CHECK(lamps.is_live_at({1500, 700}));
}

TEST_CASE("a dashed link ends on the blade, wherever it stands") {
  PartDrawing drawing;
  drawing.symbols.push_back(symbol_at(Symbol::make_contact, 0, {1000, 625}, {1000, 1375}, 0, 1));
  const InnerLine link{InnerStyle::link, -1, {{300, 1000}, {855, 1000}}, {}};
  SymbolState opened, closed;
  opened.is_known = closed.is_known = closed.is_on = true;
  CHECK(end_on_blades(link, drawing, {closed}).points.back() == GridPoint{1000, 1000});
  const GridPoint at_rest = end_on_blades(link, drawing, {opened}).points.back();
  CHECK(at_rest.x < 900);
  CHECK(at_rest.y == 1000);
  // From above: the corner goes along.
  const InnerLine cornered{InnerStyle::link, -1, {{300, 300}, {855, 300}, {855, 1000}}, {}};
  CHECK(end_on_blades(cornered, drawing, {closed}).points[1] == GridPoint{1000, 300});
}

TEST_CASE("at a splice of a situation's sheet drawn wires and named exits take and bring the same current") {
  int exits_seen = 0;
  for (const char* name : {"street-single", "electric-start-kit", "driving-lamp-kit"})
    for (const SolvedBuild& solved : shared_sample(name).solved())
      for (std::size_t s = 0; s < solved.build.situations.size(); ++s) {
        const auto pair = find_pair(solved, SituationId{static_cast<std::int32_t>(s)});
        if (!pair) continue;
        const Build& build = solved.build;
        const std::vector<WireId> drawn = find_story(build, *pair, StoryWidth::waiting);
        const std::vector<CurrentExit> exits = find_exits(build, *pair, drawn);
        for (const Splice& splice : build.splices) {
          double in = 0;
          bool is_drawn = false;
          for (const WireId id : drawn) {
            const Wire& wire = build.wire(id);
            if (wire.from != splice.terminal && wire.to != splice.terminal) continue;
            is_drawn = true;
            const double amperes = pair->after.solution.wire_amperes[id.at()].number();
            in += wire.to == splice.terminal ? amperes : -amperes;
          }
          if (!is_drawn) continue;
          for (const CurrentExit& exit : exits)
            if (exit.at == splice.terminal) {
              in += exit.is_leaving ? -exit.after.number() : exit.after.number();
              ++exits_seen;
              CHECK_FALSE(exit.wires.empty());
            }
          // What is no current to a person, and strays, are not told.
          CHECK_MESSAGE(std::abs(in) < 0.06, name << " " << pair->after.situation.name << " " << splice.id);
        }
      }
  CHECK(exits_seen > 0);
}
