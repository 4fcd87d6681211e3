// SPDX-License-Identifier: MIT
// The order of assembly and the readings of the tests, over all samples.
#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <map>

#include "sheets/assembly_plan.h"
#include "sheets/earth_net.h"
#include "sheets/fuse_list.h"
#include "sheets/readings.h"
#include "sheets/sample_sheets.h"

using namespace loomfolio;

namespace {

std::vector<Action> actions_in_order(const std::vector<StagePlan>& plan) {
  std::vector<Action> actions;
  for (const StagePlan& stage : plan)
    for (const ActionGroup& group : stage.groups)
      for (const Action& action : group.actions) actions.push_back(action);
  return actions;
}

}  // namespace

TEST_CASE("every wire end is joined once, every part fitted, every fuse laid out, every splice made") {
  for (const std::string& name : sample_names()) {
    CAPTURE(name);
    const SampleFolio& sample = shared_sample(name);
    for (const SolvedBuild& solved : sample.solved()) {
      const Build& build = solved.build;
      std::map<std::pair<int, int>, int> ends;
      std::size_t mounted = 0, spliced = 0, fuses = 0;
      for (const Action& action : actions_in_order(plan_assembly(solved, sample.words()))) {
        if (action.type == ActionType::join_end) ++ends[{action.wire.index, action.terminal.index}];
        if (action.type == ActionType::mount) ++mounted;
        if (action.type == ActionType::make_splice) ++spliced;
        if (action.type == ActionType::lay_fuse) ++fuses;
      }
      // What the machine has is found, not fitted.
      const auto is_new = [](const Part& part) { return part.provided == Provider::kit; };
      CHECK(mounted == static_cast<std::size_t>(std::count_if(build.parts.begin(), build.parts.end(), is_new)));
      CHECK(spliced == build.splices.size());
      CHECK(fuses == list_fuses(build).size());
      for (std::size_t w = 0; w < build.wires.size(); ++w)
        for (const TerminalId end : {build.wires[w].from, build.wires[w].to}) {
          // Ends in splices are joined where the splice is made; the machine's own wires are joined already.
          const bool is_done = build.terminal(end).owner == OwnerType::splice || !is_joined_by_fitter(build.wires[w]);
          const int wanted = is_done ? 0 : 1;
          CHECK(ends[{static_cast<int>(w), end.index}] == wanted);
        }
    }
  }
}

TEST_CASE("the battery comes last, its earthed pole last of all, and then the tests") {
  for (const std::string& name : sample_names()) {
    CAPTURE(name);
    const SampleFolio& sample = shared_sample(name);
    for (const SolvedBuild& solved : sample.solved()) {
      const std::vector<StagePlan> plan = plan_assembly(solved, sample.words());
      REQUIRE(plan.size() >= 2);
      CHECK(plan.back().stage == Stage::tests);
      const StagePlan& battery = plan[plan.size() - 2];
      CHECK(battery.stage == Stage::battery);
      // The tests without power come before the first cable.
      REQUIRE_FALSE(battery.groups.empty());
      REQUIRE(battery.groups.front().actions.size() >= 2);
      CHECK(battery.groups.front().actions[0].type == ActionType::test_cold);
      CHECK(battery.groups.front().actions[1].type == ActionType::test_fuse);
      const std::vector<bool> is_earthed = find_earth_net(solved.build);
      bool has_met_earthed = false;
      for (const ActionGroup& group : battery.groups)
        for (const Action& action : group.actions) {
          if (action.type != ActionType::join_end) continue;
          const bool is_earthed_pole = is_earthed[action.terminal.at()];
          const bool live_after_earthed = has_met_earthed && !is_earthed_pole;
          CHECK_FALSE(live_after_earthed);
          has_met_earthed = has_met_earthed || is_earthed_pole;
        }
    }
  }
}

TEST_CASE("a kit's steps begin with the battery off, and fit nothing that the machine has") {
  for (const char* name : {"electric-start-kit", "driving-lamp-kit"}) {
    CAPTURE(name);
    const SampleFolio& sample = shared_sample(name);
    for (const SolvedBuild& solved : sample.solved()) {
      const std::vector<Action> actions = actions_in_order(plan_assembly(solved, sample.words()));
      REQUIRE_FALSE(actions.empty());
      CHECK(actions.front().type == ActionType::disconnect);
      std::size_t found = 0;
      for (const Action& action : actions) {
        if (action.type == ActionType::mount) CHECK(solved.build.part(action.part).provided == Provider::kit);
        if (action.type == ActionType::join_end) CHECK(solved.build.wire(action.wire).provided == Provider::kit);
        if (action.type != ActionType::find) continue;
        ++found;
        CHECK(solved.build.part(action.part).provided == Provider::machine);
      }
      CHECK(found >= 2);
    }
  }
}

TEST_CASE("each earth's metal is cleaned before a ring is bolted to it") {
  for (const std::string& name : sample_names()) {
    CAPTURE(name);
    const SampleFolio& sample = shared_sample(name);
    for (const SolvedBuild& solved : sample.solved()) {
      std::vector<bool> is_clean(solved.build.earths.size(), false);
      for (const Action& action : actions_in_order(plan_assembly(solved, sample.words()))) {
        if (action.type == ActionType::clean_earth) is_clean[action.earth.at()] = true;
        if (action.type != ActionType::join_end) continue;
        const Terminal& terminal = solved.build.terminal(action.terminal);
        if (terminal.owner == OwnerType::earth) CHECK(is_clean[static_cast<std::size_t>(terminal.owner_index)]);
      }
      CHECK(std::find(is_clean.begin(), is_clean.end(), false) == is_clean.end());
    }
  }
}

TEST_CASE("each consumer is measured where it first works, with a figure, and nowhere twice in the same state") {
  const SampleFolio& sample = shared_sample("street-single");
  REQUIRE(sample.solved().size() == 1);
  const std::vector<SituationReadings> all = find_readings(sample.solved().front());
  CHECK(all.size() == sample.solved().front().build.situations.size());
  std::map<std::pair<InsideRef, Expected>, int> seen;
  std::size_t count = 0;
  for (const SituationReadings& readings : all)
    for (const ExpectedReading& reading : readings.readings) {
      ++count;
      CHECK(++seen[{reading.consumer, reading.state}] == 1);
      CHECK(reading.state != Expected::off);
      CHECK(std::isfinite(reading.feed_volts.number()));
      if (reading.back.is_set()) CHECK(std::abs(reading.feed_volts.number()) >= std::abs(reading.back_volts.number()));
    }
  CHECK(count > 15);
}
