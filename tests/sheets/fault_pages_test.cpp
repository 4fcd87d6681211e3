// SPDX-License-Identifier: MIT
// The fault pages: nothing is lost when a chart is cut, following the readings of a fault ends at that fault, and every
// chart fits.
#include "sheets/fault_pages.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <set>

#include "check/paths.h"
#include "sheets/cold_tests.h"
#include "sheets/fault_plan.h"
#include "sheets/reference.h"
#include "sheets/sample_sheets.h"
#include "solve/follow_fault.h"

using namespace loomfolio;

namespace {

std::set<int> all_ends(const std::vector<ChartBox>& boxes) {
  std::set<int> ends;
  for (const ChartBox& box : boxes)
    for (const ChartExit& exit : box.exits)
      for (const int suspect : exit.suspects) CHECK(ends.insert(suspect).second);  // each in one end only
  return ends;
}

/// What an end would ask next parts just what stands there.
void check_next_questions(const Diagnosis& d, const std::vector<ChartBox>& boxes) {
  for (const ChartBox& box : boxes)
    for (const ChartExit& exit : box.exits) {
      if (exit.node < 0) continue;
      const DiagnosisNode& node = d.nodes[static_cast<std::size_t>(exit.node)];
      CHECK(exit.is_cut);
      CHECK(node.branches.size() > 1);
      std::multiset<int> told;
      for (const auto& [outcome, child] : node.branches)
        for (const int s : d.nodes[static_cast<std::size_t>(child)].suspects) told.insert(d.suspects[static_cast<std::size_t>(s)]);
      CHECK(told == std::multiset<int>(exit.suspects.begin(), exit.suspects.end()));
    }
}

/// The end that the fault's own readings lead to.
const ChartExit* follow(FaultStudy& study, const FaultChart& chart, const std::vector<ChartBox>& boxes, int fault) {
  std::size_t at = 0;
  for (std::size_t steps = 0; steps <= boxes.size(); ++steps) {
    const ChartBox& box = boxes[at];
    const ChartExit* taken = box.probe < 0 ? &box.exits.front() : nullptr;
    if (box.probe >= 0) {
      const Probe& probe = chart.diagnosis.probes[static_cast<std::size_t>(box.probe)];
      const int outcome = test::outcome_shown(study, chart.diagnosis, probe, static_cast<std::size_t>(fault));
      for (const ChartExit& exit : box.exits)
        if (exit.outcome == outcome || std::find(exit.also.begin(), exit.also.end(), outcome) != exit.also.end())
          taken = &exit;
    }
    if (taken == nullptr || taken->next < 0) return taken;
    CHECK(taken->next > static_cast<int>(at));  // reading order: never back
    at = static_cast<std::size_t>(taken->next);
  }
  return nullptr;
}

}  // namespace

TEST_CASE("however small a chart is cut, every suspect stands in one of its ends, and larger charts tell no less") {
  const SampleFolio& sample = shared_sample("electric-start-kit");
  for (const SolvedBuild& solved : sample.solved()) {
    const FaultPlan& plan = shared_plan(solved);
    CHECK(plan.charts.size() >= 3);
    for (const FaultChart& chart : plan.charts) {
      const std::set<int> suspects(chart.diagnosis.suspects.begin(), chart.diagnosis.suspects.end());
      std::size_t last = 0;
      for (const std::size_t most : {1u, 2u, 5u, 9u, 100u}) {
        const std::vector<ChartBox> boxes = cut_chart(plan, chart, most);
        CHECK(boxes.size() <= most);
        CHECK(boxes.size() >= last);
        last = boxes.size();
        CHECK(all_ends(boxes) == suspects);
        check_next_questions(chart.diagnosis, boxes);
      }
    }
  }
}

TEST_CASE("who follows a fault's own readings comes to an end that names it") {
  const SampleFolio& sample = shared_sample("electric-start-kit");
  int followed = 0;
  for (const SolvedBuild& solved : sample.solved()) {
    const BenchSituations& bench = shared_plan(solved).bench;
    const FaultBook book = solve_faults(bench.build, bench.solutions, {});
    FaultStudy study(bench.build, bench.solutions, book);
    for (const FaultChart& chart : shared_plan(solved).charts)
      for (const std::size_t most : {4u, 100u}) {
        const std::vector<ChartBox> boxes = cut_chart(shared_plan(solved), chart, most);
        for (const int fault : chart.diagnosis.suspects) {
          const ChartExit* end = follow(study, chart, boxes, fault);
          REQUIRE(end != nullptr);
          CHECK(std::find(end->suspects.begin(), end->suspects.end(), fault) != end->suspects.end());
          ++followed;
        }
      }
  }
  CHECK(followed > 400);
}

TEST_CASE("an end that is neither cut nor said to be inseparable names one thing to mend") {
  const SampleFolio& sample = shared_sample("driving-lamp-kit");
  int single = 0;
  for (const SolvedBuild& solved : sample.solved())
    for (const FaultChart& chart : shared_plan(solved).charts)
      for (const ChartBox& box : cut_chart(shared_plan(solved), chart, 100))
        for (const ChartExit& exit : box.exits) {
          CHECK_FALSE(exit.is_cut);
          std::set<Mend> mends;
          for (const int s : exit.suspects) mends.insert(mend_for(shared_plan(solved).faults[static_cast<std::size_t>(s)]));
          if (mends.size() == 1) ++single;
        }
  CHECK(single > 30);
}

TEST_CASE("a box asks only for what can be reached with the fault at hand") {
  for (const std::string& name : sample_names())
    for (const SolvedBuild& solved : shared_sample(name).solved()) {
      const FaultPlan& plan = shared_plan(solved);
      const FaultBook book = solve_faults(plan.bench.build, plan.bench.solutions, {});
      FaultStudy study(plan.bench.build, plan.bench.solutions, book);
      for (const FaultChart& chart : plan.charts) {
        const std::size_t head = chart.diagnosis.symptom.situation.at();
        for (const Probe& probe : chart.diagnosis.probes) {
          if (probe.type == ProbeType::volts) CHECK(probe.situation.at() == head);
          const bool runs = plan.bench.build.situations[probe.situation.at()].engine == EngineState::running;
          if (chart.kind == Ailing::starter || chart.kind == Ailing::ignition) CHECK_FALSE(runs);
          for (const int f : chart.diagnosis.suspects) {
            const auto fault = static_cast<std::size_t>(f);
            CHECK_FALSE(study.burns(fault, head));
            if (probe.type != ProbeType::watch) continue;
            if (runs) CHECK_FALSE(study.stops_engine(fault, probe.situation.at(), head));
            CHECK(study.effect(fault, probe.situation.at(), head).blown == book.effect(fault, head).blown);
          }
        }
      }
    }
}

TEST_CASE("a battery that is not charged has the generator's phases among its suspects") {
  const SampleFolio& sample = shared_sample("street-single");
  for (const SolvedBuild& solved : sample.solved()) {
    const FaultPlan& plan = shared_plan(solved);
    const auto chart = std::find_if(plan.charts.begin(), plan.charts.end(),
                                    [](const FaultChart& c) { return c.kind == Ailing::charging; });
    REQUIRE(chart != plan.charts.end());
    int windings = 0, fuses = 0;
    for (const int f : chart->diagnosis.suspects) {
      const Fault& fault = plan.faults[static_cast<std::size_t>(f)];
      if (fault.type == FaultType::element_dead && inside_of(solved.build, fault.inside).is_winding) ++windings;
      if (fault.type == FaultType::fuse_blown) ++fuses;
    }
    CHECK(windings == 3);
    CHECK(fuses >= 1);
  }
}

TEST_CASE("no element that is dead is said to work") {
  for (const std::string& name : sample_names()) {
    const SampleFolio& sample = shared_sample(name);
    for (const SolvedBuild& solved : sample.solved())
      for (const OddSymptom& odd : shared_plan(solved).odd)
        for (const int s : odd.suspects)
          for (const Symptom& symptom : odd.symptoms) {
            const Fault& fault = shared_plan(solved).faults[static_cast<std::size_t>(s)];
            CHECK_FALSE((fault.type == FaultType::element_dead && fault.inside == symptom.what));
          }
  }
}

TEST_CASE("every chart has its number and place on one sheet, and the tests lead to it") {
  const SampleFolio& sample = shared_sample("driving-lamp-kit");
  std::map<std::string, int> anchors;
  std::size_t links = 0, charts = 0;
  for (const Sheet& sheet : sample.composed().folio.sheets) {
    const std::string kind = family_of(first_of_run(sheet.id));
    for (const Item& item : sheet.items) {
      if (const auto* anchor = std::get_if<AnchorItem>(&item); anchor != nullptr && kind.ends_with("faults"))
        ++anchors[kind + anchor->name];
      if (const auto* link = std::get_if<LinkItem>(&item);
          link != nullptr && kind.ends_with("tests") && link->anchor.starts_with("F"))
        ++links;
    }
  }
  for (const SolvedBuild& solved : sample.solved()) charts += shared_plan(solved).charts.size();
  CHECK(anchors.size() >= charts);
  for (const auto& [name, count] : anchors) CHECK_MESSAGE(count == 1, name);
  CHECK(links >= 4);
}

TEST_CASE("ohms before the battery: pulled fuses leave what hangs behind them, and limits stand on both sides") {
  const SampleFolio& sample = shared_sample("electric-start-kit");
  const Build& build = sample.solved().front().build;
  const std::vector<InsulationTest> tests = find_insulation_tests(build);
  REQUIRE(tests.size() >= 2);
  for (const InsulationTest& test : tests) CHECK((test.is_open || test.least.number() > 0));
  for (const PartOhms& part : find_part_ohms(build)) {
    CHECK(part.least < part.ohms);
    CHECK(part.most > part.ohms);
  }
  CHECK(print_ohms(Ohms(4.23)) == "4.2\u00a0\u2126");
  CHECK(print_ohms(Ohms(200)) == "200\u00a0\u2126");
  CHECK(print_ohms(Ohms(1500)) == "1.5\u00a0k\u2126");
}

TEST_CASE("smoke stands first in the list of what a person sees") {
  for (const std::string& name : sample_names()) {
    CAPTURE(name);
    const SampleFolio& sample = shared_sample(name);
    std::vector<std::string> texts;  // of all sheets of fault finding
    for (const Sheet& sheet : sample.composed().folio.sheets)
      if (first_of_run(sheet.id).ends_with("faults"))
        for (const Item& item : sheet.items)
          if (const auto* text = std::get_if<TextItem>(&item)) texts.push_back(text->text);
    const std::string smoke = sample.words()("faults.burning").substr(0, 5);
    const auto first = std::find(texts.begin(), texts.end(), fault_page_number(0, sample.words()));
    CHECK(first != texts.end());
    CHECK(std::any_of(texts.begin(), first, [&](const std::string& text) { return text.starts_with(smoke); }));
  }
}

TEST_CASE("what the spec says must stay off has its row for that situation") {
  std::size_t rows = 0;
  for (const std::string& name : sample_names()) {
    CAPTURE(name);
    const SampleFolio& sample = shared_sample(name);
    for (const SolvedBuild& solved : sample.solved()) {
      const FaultPlan& plan = shared_plan(solved);
      for (std::size_t s = 0; s < solved.build.situations.size(); ++s)
        for (const Expectation& expectation : solved.build.situations[s].expectations) {
          if (expectation.state != Expected::off) continue;
          CAPTURE(solved.build.part(expectation.what.part).id);
          CAPTURE(solved.build.situations[s].name);
          const bool has_row = std::any_of(plan.odd.begin(), plan.odd.end(), [&](const OddSymptom& odd) {
            return std::any_of(odd.symptoms.begin(), odd.symptoms.end(), [&](const Symptom& symptom) {
              return symptom.situation.at() == s && symptom.what.part == expectation.what.part &&
                     symptom.seen == Expected::on && !odd.suspects.empty();
            });
          });
          rows += has_row ? 1 : 0;
          const Part& part = solved.build.part(expectation.what.part);
          const bool is_proof = part.id == "starter" || part.id == "coil";
          if (is_proof) CHECK(has_row);
        }
    }
  }
  CHECK(rows > 20);
}

TEST_CASE("the tests lead to the very row of what must stay off") {
  const SampleFolio& sample = shared_sample("street-single");
  std::set<std::string> rows;
  std::size_t links = 0;
  for (const Sheet& sheet : sample.composed().folio.sheets)
    for (const Item& item : sheet.items)
      if (const auto* anchor = std::get_if<AnchorItem>(&item)) rows.insert(anchor->name);
  for (const Sheet& sheet : sample.composed().folio.sheets)
    for (const Item& item : sheet.items)
      if (const auto* link = std::get_if<LinkItem>(&item); link != nullptr && link->anchor.starts_with("odd ")) {
        ++links;
        CHECK_MESSAGE(rows.contains(link->anchor), link->anchor);
      }
  CHECK(links > 10);
}
