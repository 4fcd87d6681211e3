// SPDX-License-Identifier: MIT
// What is drawn inside a part: promises that hold for every kind of layouts/parts, and a few drawings known by their
// parts.
#include <doctest/doctest.h>

#include <algorithm>
#include <map>

#include "layout/inside_helper.h"

using namespace loomfolio;
using namespace loomfolio::test;

namespace {

const KindBench& bench() {
  static const KindBench made = all_kinds();
  return made;
}

const Part& part_of_kind(const std::string& kind) {
  for (const Part& part : bench().build.parts)
    if (bench().build.kind_of(part).id == kind) return part;
  FAIL("no such kind: " << kind);
  return bench().build.parts.front();
}

PartDrawing draw(const Part& part, std::vector<int> ends) {
  static const FixedTextMeasure measure;
  const auto index = static_cast<std::int32_t>(&part - bench().build.parts.data());
  return draw_inside({bench().build, PartId{index}, measure, std::move(ends)});
}

PartDrawing draw(const Part& part) { return draw(part, ends_for(bench().build.kind_of(part), 1)); }

std::ptrdiff_t count(const PartDrawing& drawing, Symbol symbol) {
  return std::count_if(drawing.symbols.begin(), drawing.symbols.end(),
                       [symbol](auto& s) { return s.symbol == symbol; });
}

std::vector<int> ends_at(const Kind& kind, const std::vector<std::string>& shown) {
  std::vector<int> ends;
  for (const KindTerminal& terminal : kind.terminals)
    ends.push_back(std::find(shown.begin(), shown.end(), terminal.id) == shown.end() ? -1 : 1);
  return ends;
}

}  // namespace

TEST_CASE("every kind is drawn whole: each node hangs together, nothing lies on anything else") {
  REQUIRE_MESSAGE(bench().errors.empty(), bench().errors);
  REQUIRE(bench().build.parts.size() > 50);
  for (const Part& part : bench().build.parts)
    for (int wires : {1, 2, 4}) {
      const PartDrawing drawing = draw(part, ends_for(bench().build.kind_of(part), wires));
      for (const std::string& fault : faults_of(bench().build, part, drawing))
        FAIL_CHECK(fault << " (" << wires << " wires)");
      for (const std::string& fault : faults_of(bench().build, part, mirrored(drawing)))
        FAIL_CHECK("mirrored " << fault);
    }
}

TEST_CASE("every terminal of a kind stands on its side, in the kind's order") {
  for (const Part& part : bench().build.parts) {
    const Kind& kind = bench().build.kind_of(part);
    const PartDrawing drawing = draw(part);
    std::map<Side, Grid> last;
    for (const PlacedTerminal& placed : drawing.terminals) {
      const KindTerminal& terminal = kind.terminals[static_cast<std::size_t>(placed.terminal)];
      CHECK_MESSAGE(placed.side == terminal.side, part.label << " " << terminal.id);
      const bool is_level = placed.side == Side::top || placed.side == Side::bottom;
      const Grid along = is_level ? placed.lead.x : placed.lead.y;
      if (last.count(placed.side) != 0) CHECK_MESSAGE(along > last[placed.side], part.label << " " << terminal.id);
      last[placed.side] = along;
    }
  }
}

TEST_CASE("the same request gives the same drawing") {
  for (const Part& part : bench().build.parts) {
    const PartDrawing one = draw(part), two = draw(part);
    CHECK(one.width == two.width);
    CHECK(one.height == two.height);
    REQUIRE(one.lines.size() == two.lines.size());
    for (std::size_t i = 0; i < one.lines.size(); ++i) CHECK(one.lines[i].points == two.lines[i].points);
  }
}

TEST_CASE("a make relay is a coil beside a contact, joined by a dashed link") {
  const PartDrawing relay = draw(part_of_kind("plug-relay-make"));
  CHECK(count(relay, Symbol::coil) == 1);
  CHECK(count(relay, Symbol::make_contact) == 1);
  REQUIRE(std::count_if(relay.lines.begin(), relay.lines.end(), [](auto& l) { return l.style == InnerStyle::link; }) ==
          1);
  CHECK(relay.symbols[0].at.y == relay.symbols[1].at.y);
}

TEST_CASE("a changeover relay's two contacts are one selector that rests on 87a") {
  const Part& part = part_of_kind("plug-relay-changeover");
  const PartDrawing relay = draw(part);
  const auto selector =
      std::find_if(relay.symbols.begin(), relay.symbols.end(), [](auto& s) { return s.symbol == Symbol::selector; });
  REQUIRE(selector != relay.symbols.end());
  REQUIRE(selector->way >= 1);
  const int rests_on = selector->nodes[static_cast<std::size_t>(selector->way)];
  CHECK(bench().build.kind_of(part).terminals[static_cast<std::size_t>(rests_on)].id == "87a");
  CHECK(selector->also.size() == 1);
}

TEST_CASE("a switch that its positions explain best is a table") {
  const PartDrawing key = draw(part_of_kind("key-switch"));
  REQUIRE(key.tables.size() == 1);
  CHECK(key.tables[0].rows.size() == 3);
  CHECK(key.tables[0].rows[0].is_rest);
  CHECK(key.tables[0].rows[2].joined.size() == 2);
}

TEST_CASE("a body bolted down ends in an earth of its own, not in a terminal") {
  const PartDrawing motor = draw(part_of_kind("starter-motor"));
  CHECK(motor.terminals.size() == 1);
  CHECK(count(motor, Symbol::frame_earth) == 1);
}

TEST_CASE("a partial view keeps what lies between the terminals shown and nothing else") {
  const Part& box = part_of_kind("fuse-box-6");
  const PartDrawing drawing = draw(box, ends_at(bench().build.kind_of(box), {"in2", "out2"}));
  CHECK(drawing.terminals.size() == 2);
  CHECK(count(drawing, Symbol::fuse) == 1);
  const Part& bar = part_of_kind("left-bar-cluster");
  const PartDrawing horn = draw(bar, ends_at(bench().build.kind_of(bar), {"31b", "31"}));
  CHECK(horn.symbols.size() == 1);
  CHECK(faults_of(bench().build, bar, horn).empty());
}

TEST_CASE("several wires on one terminal each get a tap of their own, two modules apart") {
  const PartDrawing drawing = draw(part_of_kind("battery"), {3, 1});
  REQUIRE(drawing.terminals[0].taps.size() == 3);
  CHECK(drawing.terminals[0].taps[1].x - drawing.terminals[0].taps[0].x == 2 * module);
  CHECK(drawing.terminals[0].lead == drawing.terminals[0].taps[1]);
}
