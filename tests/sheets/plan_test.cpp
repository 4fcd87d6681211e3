// SPDX-License-Identifier: MIT
// The order of assembly and the readings of the tests, over all samples.
#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <functional>
#include <map>
#include <tuple>

#include "sheets/assembly_plan.h"
#include "sheets/cold_tests.h"
#include "sheets/earth_net.h"
#include "sheets/fuse_list.h"
#include "sheets/fuse_order.h"
#include "sheets/readings.h"
#include "sheets/sample_sheets.h"
#include "solve/meter.h"

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
        if (action.type == ActionType::join_end)
          for (const WireId wire : action.wires) ++ends[{wire.index, action.terminal.index}];
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
          // At the battery's poles they are joined again, since all were taken off.
          const bool is_pole = end == live_pole(build) || end == earthed_pole(build);
          const bool is_done =
              build.terminal(end).owner == OwnerType::splice || (!is_pole && !is_joined_by_fitter(build.wires[w]));
          const int wanted = is_done ? 0 : 1;
          CHECK(ends[{static_cast<int>(w), end.index}] == wanted);
        }
    }
  }
}

namespace {

std::ptrdiff_t place_of(const std::vector<Action>& actions, ActionType type, TerminalId terminal = {}) {
  const auto found = std::find_if(actions.begin(), actions.end(), [&](const Action& action) {
    return action.type == type && (!terminal.is_set() || action.terminal == terminal);
  });
  return found == actions.end() ? -1 : found - actions.begin();
}

/// The test fuse stands between pole and rings from its clip until the tests of first power have passed; then the
/// earthed pole parts, the live pole is bolted, and the earthed pole last of all.
void check_battery_order(const SolvedBuild& solved, const Words& words) {
  const std::vector<Action> actions = actions_in_order(plan_assembly(solved, words));
  const TerminalId live = live_pole(solved.build), earthed = earthed_pole(solved.build);
  const std::vector<std::ptrdiff_t> order{place_of(actions, ActionType::test_cold),
                                          place_of(actions, ActionType::clip_test_fuse, live),
                                          place_of(actions, ActionType::join_for_test, earthed),
                                          place_of(actions, ActionType::test_first),
                                          place_of(actions, ActionType::part_again, earthed),
                                          place_of(actions, ActionType::unclip_test_fuse, live),
                                          place_of(actions, ActionType::join_end, live),
                                          place_of(actions, ActionType::join_end, earthed),
                                          place_of(actions, ActionType::test_live)};
  CHECK(order.front() >= 0);
  CHECK(std::adjacent_find(order.begin(), order.end(), std::greater_equal<>()) == order.end());
}

}  // namespace

TEST_CASE(
    "the test fuse stands in line until first power has passed; the earthed pole is joined last, then all is tested") {
  for (const std::string& name : sample_names()) {
    CAPTURE(name);
    const SampleFolio& sample = shared_sample(name);
    for (const SolvedBuild& solved : sample.solved()) {
      const std::vector<StagePlan> plan = plan_assembly(solved, sample.words());
      CHECK(plan.back().stage == Stage::tests);
      check_battery_order(solved, sample.words());
    }
  }
}

TEST_CASE("on a machine with its positive pole earthed, that pole is the one that parts and is joined last") {
  const SampleFolio& sample = shared_sample("street-single");
  Build turned = sample.solved().front().build;
  turned.electrics.is_positive_earth = true;
  const SolvedBuild solved{turned, {}};
  CHECK(turned.terminal(live_pole(turned)).name.ends_with(".-"));
  check_battery_order(solved, sample.words());
}

TEST_CASE("every ring on a battery pole is clipped to the test fuse and bolted again, the machine's own too") {
  const SampleFolio& sample = shared_sample("driving-lamp-kit");
  for (const SolvedBuild& solved : sample.solved()) {
    const auto wires = wires_at_terminals(solved.build);
    std::size_t machines = 0;
    for (const Action& action : actions_in_order(plan_assembly(solved, sample.words()))) {
      const bool is_pole = action.terminal == live_pole(solved.build) || action.terminal == earthed_pole(solved.build);
      if (!is_pole || action.type == ActionType::ready_ring) continue;
      CHECK(action.wires.size() == wires[action.terminal.at()].size());
      for (const WireId wire : action.wires)
        if (solved.build.wire(wire).provided == Provider::machine) ++machines;
    }
    CHECK(machines > 0);
  }
}

TEST_CASE(
    "a machine is made free before the work and closed after it; connectors are pushed together before the tests") {
  for (const std::string& name : sample_names()) {
    CAPTURE(name);
    const SampleFolio& sample = shared_sample(name);
    for (const SolvedBuild& solved : sample.solved()) {
      const std::vector<Action> actions = actions_in_order(plan_assembly(solved, sample.words()));
      const auto off = place_of(actions, ActionType::remove_covers), tank = place_of(actions, ActionType::refit_tank);
      const auto live = place_of(actions, ActionType::test_live), on = place_of(actions, ActionType::refit_covers);
      const auto lay = place_of(actions, ActionType::lay_wires), plug = place_of(actions, ActionType::plug);
      const bool is_in_order = off >= 0 && off < lay && lay < plug && plug < place_of(actions, ActionType::test_cold) &&
                               tank < live && live < on;
      CHECK(is_in_order);
      CHECK(place_of(actions, ActionType::make_splice) < lay);
      std::size_t spliced_late = 0;
      for (std::size_t i = static_cast<std::size_t>(lay); i < actions.size(); ++i)
        if (actions[i].type == ActionType::make_splice) ++spliced_late;
      CHECK(spliced_late == 0);
    }
  }
  const SampleFolio& kit = shared_sample("electric-start-kit");
  const std::vector<Action> actions = actions_in_order(plan_assembly(kit.solved().front(), kit.words()));
  CHECK(place_of(actions, ActionType::take_battery) > place_of(actions, ActionType::disconnect));
}

TEST_CASE("a new battery is fitted last, and the tank comes back while the battery is off, its tap shut") {
  const SampleFolio& kit = shared_sample("electric-start-kit");
  for (const SolvedBuild& solved : kit.solved()) {
    const std::vector<Action> actions = actions_in_order(plan_assembly(solved, kit.words()));
    const auto fitted = std::find_if(actions.begin(), actions.end(), [&](const Action& action) {
      return action.type == ActionType::mount && solved.build.part(action.part).id == "battery";
    });
    REQUIRE(fitted != actions.end());
    CHECK(fitted - actions.begin() > place_of(actions, ActionType::test_cold));
    CHECK(fitted - actions.begin() < place_of(actions, ActionType::clip_test_fuse));
    const auto tank = place_of(actions, ActionType::refit_tank);
    CHECK(place_of(actions, ActionType::unclip_test_fuse) < tank);
    const TerminalId live = live_pole(solved.build), back = earthed_pole(solved.build);
    for (std::size_t i = 0; i < actions.size(); ++i)
      if (actions[i].type == ActionType::join_end && (actions[i].terminal == live || actions[i].terminal == back))
        CHECK(static_cast<std::ptrdiff_t>(i) > tank);
    // No ring may spark beside an open tap.
    const auto tap = place_of(actions, ActionType::open_tap);
    for (std::size_t i = 0; i < actions.size(); ++i)
      if (actions[i].type == ActionType::join_end || actions[i].type == ActionType::unclip_test_fuse) CHECK(static_cast<std::ptrdiff_t>(i) < tap);
  }
}

TEST_CASE("a fuse of the machine is taken out after its holder was found") {
  const SampleFolio& kit = shared_sample("electric-start-kit");
  const SolvedBuild& given = kit.solved().front();
  Build build = given.build;
  for (Part& part : build.parts)
    if (part.id == "charge-fuse") part.provided = Provider::machine;
  const SolvedBuild solved{build, given.solutions, given.study, given.wire_loads};
  const std::vector<Action> actions = actions_in_order(plan_assembly(solved, kit.words()));
  std::size_t taken = 0;
  for (std::size_t i = 0; i < actions.size(); ++i) {
    if (actions[i].type != ActionType::take_fuse) continue;
    ++taken;
    CHECK(std::any_of(actions.begin(), actions.begin() + static_cast<std::ptrdiff_t>(i), [&](const Action& action) {
      return action.type == ActionType::find && action.part == actions[i].fuse.part;
    }));
  }
  CHECK(taken == 1);
}

TEST_CASE(
    "two wires at a terminal that takes one fitting are one action; so are the rings of one bolt, the widest first") {
  const SampleFolio& sample = shared_sample("street-single");
  const Build& build = sample.solved().front().build;
  std::size_t shared = 0, bolts = 0;
  for (const Action& action : actions_in_order(plan_assembly(sample.solved().front(), sample.words()))) {
    if (action.type != ActionType::join_end || action.wires.size() < 2) continue;
    ++(shares_fitting(build, action.terminal) ? shared : bolts);
    for (std::size_t i = 1; i < action.wires.size(); ++i)
      CHECK(build.wire(action.wires[i - 1]).area.number() >= build.wire(action.wires[i]).area.number());
  }
  CHECK(shared > 0);
  CHECK(bolts > 0);
}

TEST_CASE("an author's step stands beside the part that it names") {
  const SampleFolio& sample = shared_sample("electric-start-kit");
  const std::vector<Action> actions = actions_in_order(plan_assembly(sample.solved().front(), sample.words()));
  const Build& build = sample.solved().front().build;
  bool has_met = false;
  for (std::size_t i = 1; i + 1 < actions.size(); ++i) {
    if (actions[i].type != ActionType::mount || build.part(actions[i].part).id != "relay") continue;
    has_met = true;
    CHECK(actions[i - 1].type == ActionType::author);
  }
  CHECK(has_met);
  bool has_found = false;
  for (std::size_t i = 0; i + 1 < actions.size(); ++i) {
    if (actions[i].type != ActionType::find || build.part(actions[i].part).id != "regulator") continue;
    has_found = true;
    CHECK(actions[i + 1].type == ActionType::author);
  }
  CHECK(has_found);
}

TEST_CASE("a kit's steps begin with key, covers and battery off, and fit nothing that the machine has") {
  for (const char* name : {"electric-start-kit", "driving-lamp-kit"}) {
    CAPTURE(name);
    const SampleFolio& sample = shared_sample(name);
    for (const SolvedBuild& solved : sample.solved()) {
      std::vector<Action> actions = actions_in_order(plan_assembly(solved, sample.words()));
      REQUIRE_FALSE(actions.empty());
      if (actions.front().type == ActionType::author) actions.erase(actions.begin());  // a condition of the hook-up
      REQUIRE(actions.size() > 4);
      CHECK(actions.front().type == ActionType::key_off);
      CHECK(actions[1].type == ActionType::remove_covers);  // they hide the battery
      CHECK(actions[2].type == ActionType::disconnect);
      std::size_t found = 0;
      for (const Action& action : actions) {
        if (action.type == ActionType::mount) CHECK(solved.build.part(action.part).provided == Provider::kit);
        if (action.type == ActionType::ready_ring)
          CHECK(solved.build.wire(action.wires.front()).provided == Provider::kit);
        if (action.type != ActionType::find) continue;
        ++found;
        CHECK(solved.build.part(action.part).provided == Provider::machine);
      }
      CHECK(found >= 2);
    }
  }
}

TEST_CASE("fuses go in from the battery outwards, each while its supply is live, through a test fuse that carries it") {
  const SampleFolio& sample = shared_sample("street-single");
  const Build& build = sample.solved().front().build;
  const std::vector<FuseTrial> trials = order_fuses(build);
  REQUIRE(trials.size() == list_fuses(build).size());
  CHECK(build.part(trials.front().fuse.part).id == "starter-relay");  // the main fuse, inside the starter relay
  CHECK(trials.front().settings.empty());
  CHECK(trials.back().has_supply);
  std::size_t with_key = 0;
  for (std::size_t i = 0; i < trials.size(); ++i) {
    if (!trials[i].settings.empty()) ++with_key;
    if (i > 0) CHECK(trials[i].settings.size() >= trials[i - 1].settings.size());
    CHECK(trials[i].drawn.number() <= trial_fuse(trials[i].drawn).number() * 0.75);
  }
  CHECK(with_key >= 1);
  CHECK(with_key < trials.size());
  CHECK(trial_fuse(Amperes(0)).number() == 3);
  CHECK(trial_fuse(Amperes(2.3)).number() == 5);
  CHECK(trial_fuse(Amperes(5.9)).number() == 10);
}

TEST_CASE("each earth's metal is cleaned before a part may cover it, and before a ring is bolted to it") {
  for (const std::string& name : sample_names()) {
    CAPTURE(name);
    const SampleFolio& sample = shared_sample(name);
    for (const SolvedBuild& solved : sample.solved()) {
      std::vector<bool> is_clean(solved.build.earths.size(), false);
      bool is_covered = false;
      for (const Action& action : actions_in_order(plan_assembly(solved, sample.words()))) {
        is_covered = is_covered || action.type == ActionType::mount;
        if (action.type == ActionType::clean_earth) {
          is_clean[action.earth.at()] = true;
          CHECK_FALSE(is_covered);
        }
        if (action.type != ActionType::join_end) continue;
        const Terminal& terminal = solved.build.terminal(action.terminal);
        if (terminal.owner == OwnerType::earth) CHECK(is_clean[static_cast<std::size_t>(terminal.owner_index)]);
      }
      CHECK(std::find(is_clean.begin(), is_clean.end(), false) == is_clean.end());
    }
  }
}

TEST_CASE("each consumer is measured once for each way it is fed, with a figure") {
  const SampleFolio& sample = shared_sample("street-single");
  REQUIRE(sample.solved().size() == 1);
  const std::vector<SituationReadings> all = find_readings(sample.solved().front());
  CHECK(all.size() == sample.solved().front().build.situations.size());
  std::map<std::tuple<InsideRef, Expected, std::vector<InsideRef>>, int> seen;
  std::size_t count = 0;
  for (const SituationReadings& readings : all)
    for (const ExpectedReading& reading : readings.readings) {
      ++count;
      CHECK(++seen[{reading.consumer, reading.state, reading.way}] == 1);
      CHECK(reading.state != Expected::off);
      CHECK(std::isfinite(reading.feed_volts.number()));
      if (reading.back.is_set()) CHECK(std::abs(reading.feed_volts.number()) >= std::abs(reading.back_volts.number()));
    }
  CHECK(count > 15);
}

TEST_CASE(
    "the stop lamp is measured for both brakes, the starter for both branches of its interlock, the charging at the "
    "battery") {
  const SampleFolio& sample = shared_sample("street-single");
  const Build& build = sample.solved().front().build;
  std::map<std::string, int> ways;
  bool has_charging = false;
  for (const SituationReadings& readings : find_readings(sample.solved().front()))
    for (const ExpectedReading& reading : readings.readings) {
      const Inside& inside =
          build.part(reading.consumer.part).insides[static_cast<std::size_t>(reading.consumer.inside)];
      ++ways[inside.type == InsideType::motor ? "motor" : inside.id];
      if (inside.type != InsideType::charger) continue;
      has_charging = true;
      CHECK(reading.feed == live_pole(build));
      CHECK(reading.feed_volts.number() > build.electrics.resting.number());
    }
  CHECK(has_charging);
  CHECK(ways["motor"] >= 2);
  CHECK(ways["stop"] >= 2);
}

TEST_CASE("with the engine running a gear is in only where the reading needs it") {
  const SampleFolio& sample = shared_sample("street-single");
  const SolvedBuild& solved = sample.solved().front();
  std::size_t neutral = 0, in_gear = 0;
  for (const SituationReadings& readings : find_readings(solved)) {
    const Situation& situation = solved.build.situations[readings.situation.at()];
    const bool is_less = readings.settings.size() < situation.settings.size();
    if (is_less) CHECK(readings.gear == Gear::neutral);
    neutral += is_less ? 1 : 0;
    in_gear += readings.gear == Gear::in ? 1 : 0;
  }
  CHECK(neutral >= 4);
  CHECK(in_gear >= 1);
}

TEST_CASE("ohms are told as a pocket meter shows them") {
  CHECK(beep_limit(0.01).number() == doctest::Approx(0.5));
  CHECK(beep_limit(0.4).number() == doctest::Approx(1.0));
  CHECK(sound_floor(Ohms(1260)).number() == doctest::Approx(500));
  CHECK(sound_floor(Ohms(3.7)).number() == doctest::Approx(2));
  CHECK(sound_floor(Ohms(18563)).number() == doctest::Approx(1000));
  const SampleFolio& sample = shared_sample("driving-lamp-kit");
  const Build& build = sample.solved().front().build;
  for (std::size_t t = 0; t < build.terminals.size(); ++t) {
    if (build.terminals[t].name != "left-plug.b2") continue;
    std::vector<std::string> ids;
    for (const WireId wire : way_to_earth(build, TerminalId{static_cast<std::int32_t>(t)}))
      ids.push_back(build.wire(wire).id);
    CHECK(ids == std::vector<std::string>{"6", "8"});
  }
}

TEST_CASE("a plug of the machine that gets a wire is unplugged, and a wire that will share its contact freed, before all joins") {
  const SampleFolio& sample = shared_sample("driving-lamp-kit");
  const auto actions_of = [&](const SolvedBuild& solved) {
    return actions_in_order(plan_assembly(solved, sample.words()));
  };
  const std::vector<Action> with_beam = actions_of(sample.solved().front()), own = actions_of(sample.solved().back());
  CHECK(place_of(with_beam, ActionType::unplug) == -1);
  CHECK(place_of(with_beam, ActionType::free_wire) == -1);
  const auto find = place_of(own, ActionType::unplug), free = place_of(own, ActionType::free_wire);
  REQUIRE(free > find);
  const Action& freed = own[static_cast<std::size_t>(free)];
  CHECK(sample.solved().back().build.wire(freed.wires.front()).id == "M4");
  CHECK(own[static_cast<std::size_t>(free) + 1].turn == 2);
  CHECK(free < place_of(own, ActionType::join_end, freed.terminal));
  // The plug goes on again.
  CHECK(std::any_of(own.begin() + free, own.end(), [&](const Action& action) {
    return action.type == ActionType::plug && action.part == freed.part;
  }));
}
