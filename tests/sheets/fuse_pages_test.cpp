// SPDX-License-Identifier: MIT
// What the fuse chart says of the main fuse, and how tables are cut at the foot of a page.
#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <set>

#include "check/paths.h"
#include "sheets/names.h"
#include "sheets/page_flow.h"
#include "sheets/print_text.h"
#include "sheets/situation_state.h"
#include "sheets/reference.h"
#include "sheets/sample_sheets.h"
#include "sheets/table.h"
#include "solve/own_supply.h"

using namespace loomfolio;

namespace {

const FuseStudy& main_fuse(const SolvedBuild& solved) {
  for (const FuseStudy& study : solved.study->fuses)
    if (inside_of(solved.build, study.fuse).id == "main") return study;
  FAIL("no main fuse");
  return solved.study->fuses.front();
}

std::string text_of(const Sheet& sheet) {
  std::string all;
  for (const Item& item : sheet.items)
    if (const auto* text = std::get_if<TextItem>(&item)) all += text->text + " ";
  return all;
}

}  // namespace

TEST_CASE("the main fuse must carry all that the generator fed: its load is that with the charging dead") {
  const SampleFolio& sample = shared_sample("street-single");
  const SolvedBuild& solved = sample.solved().front();
  const FuseStudy& study = main_fuse(solved);
  CHECK(study.is_uncharged);
  const Solution& charged = solved.solutions[study.situation.at()];
  REQUIRE(charged.situation == study.situation);
  // With the engine running the same loads come along wire 30 from the regulator: at most a tenth more, for its volts.
  const auto wire =
      std::find_if(solved.build.wires.begin(), solved.build.wires.end(), [](const Wire& w) { return w.id == "30"; });
  REQUIRE(wire != solved.build.wires.end());
  const double fed =
      std::abs(charged.wire_amperes[static_cast<std::size_t>(wire - solved.build.wires.begin())].number());
  CHECK(study.load.number() < fed);
  CHECK(study.load.number() > fed * 0.9);
  const double now =
      std::abs(charged.insides[study.fuse.part.at()][static_cast<std::size_t>(study.fuse.inside)].amperes.number());
  CHECK(study.load.number() > now + 5);
}

TEST_CASE("the charging fuse and its wires must carry what the generator puts into an empty battery") {
  for (const SolvedBuild& solved : shared_sample("electric-start-kit").solved()) {
    const Build& build = solved.build;
    const auto fuse = std::find_if(solved.study->fuses.begin(), solved.study->fuses.end(),
                                   [&](const FuseStudy& study) { return build.part(study.fuse.part).id == "charge-fuse"; });
    REQUIRE(fuse != solved.study->fuses.end());
    // 150 W at 14.2 V, all of which passes this fuse: nothing of the machine hangs on the regulator's side of it.
    CHECK(fuse->into_empty.number() == doctest::Approx(150 / 14.2).epsilon(0.02));
    CHECK(fuse->into_empty > fuse->load);
    for (std::size_t w = 0; w < build.wires.size(); ++w)
      if (build.wires[w].id == "C7") {
        CHECK(solved.wire_loads[w].worst.number() == doctest::Approx(fuse->into_empty.number()).epsilon(0.001));
        CHECK(solved.wire_loads[w].charging == ChargeState::into_empty);
      }
  }
}

TEST_CASE("how it works gives a fuse's most as the fuse chart does") {
  const SampleFolio& sample = shared_sample("street-single");
  const FuseStudy& study = main_fuse(sample.solved().front());
  const double most = std::max({study.load.number(), study.at_once.number(), study.into_empty.number()});
  const std::string figure = "30a carries " + print_flow(Amperes(most));
  std::string works;
  for (const Sheet& sheet : sample.composed().folio.sheets)
    if (first_of_run(sheet.id) == "works") works += text_of(sheet);
  CHECK_MESSAGE(works.find(figure) != std::string::npos, figure);
}

TEST_CASE("of a kit, what hangs on the machine's own key switch is said not to be in the figures of what feeds it") {
  for (const SolvedBuild& solved : shared_sample("electric-start-kit").solved()) {
    const OwnSupply own = find_own_supply(solved.build, solved.solutions);
    std::set<std::string> fuses, wires;
    for (const InsideRef fuse : own.fuses) fuses.insert(solved.build.part(fuse.part).id);
    for (const WireId wire : own.wires) wires.insert(solved.build.wire(wire).id);
    CHECK(fuses == std::set<std::string>{"control-fuse", "relay"});
    CHECK(wires.contains("1"));
    CHECK_FALSE(wires.contains("3"));   // the take-off
    CHECK_FALSE(wires.contains("C7"));  // charging
  }
  const SolvedBuild& machine = shared_sample("street-single").solved().front();
  CHECK(find_own_supply(machine.build, machine.solutions).fuses.empty());
}

TEST_CASE("a blown main fuse: parked everything stops, riding nothing does, and the chart says both") {
  const SampleFolio& sample = shared_sample("street-single");
  const FuseStudy& study = main_fuse(sample.solved().front());
  CHECK(study.stops_all_parked);
  CHECK(study.stops_running.empty());
  std::string chart;
  for (const Sheet& sheet : sample.composed().folio.sheets)
    if (sheet.id.starts_with("fuses")) chart += text_of(sheet);
  for (const char* key : {"fuses.running_nothing", "fuses.uncharged"}) {
    // Cells wrap: the first two words stand together.
    const std::string words = sample.words()(key);
    CHECK_MESSAGE(chart.find(words.substr(0, words.find(' ', words.find(' ') + 1))) != std::string::npos, words);
  }
  for (const FuseStudy& other : sample.solved().front().study->fuses)
    if (other.fuse != study.fuse && !other.stops.empty()) CHECK(other.stops_running.size() <= other.stops.size());
}

TEST_CASE("a fuse in a part of another trade bears its own name") {
  const SolvedBuild& solved = shared_sample("electric-start-kit").solved().front();
  const std::string name = fuse_name(solved.build, main_fuse(solved).fuse);
  CHECK(name == "Starter relay, main fuse");
}

TEST_CASE("no page begins or ends a table with fewer than three rows") {
  const SampleFolio& sample = shared_sample("driving-lamp-kit");
  const FixedTextMeasure fixed_face;
  const FolioInput input = sample.input(fixed_face);
  const SheetContext context{input, sample.solved().front(), {}, {}};
  for (std::size_t rows = 1; rows < 90; ++rows) {
    CAPTURE(rows);
    Table table;
    table.columns = {{"A", CellAlign::near, Wrapping::keeps, 0}};
    for (std::size_t i = 0; i < rows; ++i) table.rows.push_back({{text_cell("row")}});
    PageFlow flow(context, {"table", "Table", {}});
    add_table(flow, table);
    std::size_t all = 0;
    for (const Sheet& sheet : flow.take()) {
      const auto here =
          static_cast<std::size_t>(std::count_if(sheet.items.begin(), sheet.items.end(), [](const Item& item) {
            const auto* text = std::get_if<TextItem>(&item);
            return text != nullptr && text->text == "row";
          }));
      CHECK(here >= std::min<std::size_t>(3, rows));
      all += here;
    }
    CHECK(all == rows);
  }
}

TEST_CASE("the last row of a group does not stand alone on the next page") {
  const SampleFolio& sample = shared_sample("driving-lamp-kit");
  const FixedTextMeasure fixed_face;
  const FolioInput input = sample.input(fixed_face);
  const SheetContext context{input, sample.solved().front(), {}, {}};
  std::size_t continued = 0;
  for (std::size_t rows = 4; rows < 90; ++rows) {
    CAPTURE(rows);
    Table table;
    table.columns = {{"A", CellAlign::near, Wrapping::keeps, 0}};
    table.rows.push_back(group_row("first"));
    for (std::size_t i = 0; i < rows; ++i) table.rows.push_back({{text_cell("of the first")}});
    table.rows.push_back(group_row("second"));
    for (std::size_t i = 0; i < 6; ++i) table.rows.push_back({{text_cell("of the second")}});
    PageFlow flow(context, {"table", "Table", {}});
    add_table(flow, table);
    for (const Sheet& sheet : flow.take()) {
      const auto here = std::count_if(sheet.items.begin(), sheet.items.end(), [](const Item& item) {
        const auto* text = std::get_if<TextItem>(&item);
        return text != nullptr && text->text == "of the first";
      });
      CHECK(here != 1);
      continued += here > 0 ? 1 : 0;
    }
  }
  CHECK(continued > 86);  // some groups take two pages
}
