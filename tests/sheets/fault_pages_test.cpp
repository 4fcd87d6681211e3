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

using namespace loomfolio;

namespace {

/// Made once a test program.
const FaultPlan& plan_of(const SolvedBuild& solved) {
  static std::map<const Build*, FaultPlan> plans;
  const auto [place, is_new] = plans.try_emplace(&solved.build);
  if (is_new) place->second = plan_faults(solved.build, solved.solutions);
  return place->second;
}

std::set<int> all_ends(const std::vector<ChartBox>& boxes) {
  std::set<int> ends;
  for (const ChartBox& box : boxes)
    for (const ChartExit& exit : box.exits)
      for (const int suspect : exit.suspects) CHECK(ends.insert(suspect).second);  // each in one end only
  return ends;
}

/// The outcome of the probe that a fault shows; -1: none of them.
int outcome_of(const SolvedBuild& solved, const FaultBook& book, const Probe& probe, std::size_t fault) {
  const std::size_t s = probe.situation.at();
  const FaultEffect& effect = book.effect(fault, s);
  const bool is_blown = std::find(effect.blown.begin(), effect.blown.end(), probe.what) != effect.blown.end();
  const auto find = [&](const auto& matches) {
    const auto found = std::find_if(probe.outcomes.begin(), probe.outcomes.end(), matches);
    return found == probe.outcomes.end() ? -1 : static_cast<int>(found - probe.outcomes.begin());
  };
  if (probe.type == ProbeType::volts) {
    double volts = solved.solutions[s].terminal_volts[probe.at.at()].number();
    for (const Reading& reading : effect.readings)
      if (reading.at == probe.at) volts = reading.volts;
    if (std::isnan(volts)) volts = 0;
    return find([&](const ProbeOutcome& o) { return volts >= o.least && volts <= o.most; });
  }
  if (probe.type == ProbeType::short_to_earth)
    return find([&](const ProbeOutcome& o) { return o.is_open != is_blown; });
  if (probe.type == ProbeType::ohms) {
    const Fault& f = book.faults[fault];
    const bool is_open =
        is_blown || (f.inside == probe.what && (f.type == FaultType::element_dead || f.type == FaultType::fuse_blown));
    return find([&](const ProbeOutcome& o) { return o.is_open == is_open; });
  }
  Expected seen =
      observed(inside_of(solved.build, probe.what),
               solved.solutions[s].insides[probe.what.part.at()][static_cast<std::size_t>(probe.what.inside)]);
  for (const StateChange& change : effect.changes)
    if (change.what == probe.what) seen = change.after;
  return find([&](const ProbeOutcome& o) { return o.state == seen; });
}

/// The end that the fault's own readings lead to.
const ChartExit* follow(const SolvedBuild& solved, const FaultBook& book, const FaultChart& chart,
                        const std::vector<ChartBox>& boxes, int fault) {
  std::size_t at = 0;
  for (std::size_t steps = 0; steps <= boxes.size(); ++steps) {
    const ChartBox& box = boxes[at];
    const ChartExit* taken = box.probe < 0 ? &box.exits.front() : nullptr;
    if (box.probe >= 0) {
      const int outcome = outcome_of(solved, book, chart.diagnosis.probes[static_cast<std::size_t>(box.probe)],
                                     static_cast<std::size_t>(fault));
      for (const ChartExit& exit : box.exits)
        if (exit.outcome == outcome) taken = &exit;
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
    const FaultPlan& plan = plan_of(solved);
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
      }
    }
  }
}

TEST_CASE("who follows a fault's own readings comes to an end that names it") {
  const SampleFolio& sample = shared_sample("electric-start-kit");
  int followed = 0;
  for (const SolvedBuild& solved : sample.solved()) {
    const FaultBook book = solve_faults(solved.build, solved.solutions, {});
    for (const FaultChart& chart : plan_of(solved).charts)
      for (const std::size_t most : {4u, 100u}) {
        const std::vector<ChartBox> boxes = cut_chart(plan_of(solved), chart, most);
        for (const int fault : chart.diagnosis.suspects) {
          const ChartExit* end = follow(solved, book, chart, boxes, fault);
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
    for (const FaultChart& chart : plan_of(solved).charts)
      for (const ChartBox& box : cut_chart(plan_of(solved), chart, 100))
        for (const ChartExit& exit : box.exits) {
          CHECK_FALSE(exit.is_cut);
          std::set<Mend> mends;
          for (const int s : exit.suspects) mends.insert(mend_for(plan_of(solved).faults[static_cast<std::size_t>(s)]));
          if (mends.size() == 1) ++single;
        }
  CHECK(single > 30);
}

TEST_CASE("no element that is dead is said to work") {
  for (const std::string& name : sample_names()) {
    const SampleFolio& sample = shared_sample(name);
    for (const SolvedBuild& solved : sample.solved())
      for (const OddSymptom& odd : plan_of(solved).odd)
        for (const int s : odd.suspects)
          for (const Symptom& symptom : odd.symptoms) {
            const Fault& fault = plan_of(solved).faults[static_cast<std::size_t>(s)];
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
  for (const SolvedBuild& solved : sample.solved()) charts += plan_of(solved).charts.size();
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
