// SPDX-License-Identifier: MIT
// The meter tests and the fault charts as a person at the bench meets them: what is measured can be measured there, and
// nothing that matters is left out.
#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <set>

#include "check/paths.h"
#include "sheets/fault_plan.h"
#include "sheets/fuse_order.h"
#include "sheets/interlock_tests.h"
#include "sheets/names.h"
#include "sheets/readings.h"
#include "sheets/sample_sheets.h"
#include "solve/meter.h"

using namespace loomfolio;

namespace {

bool is_motor(const Build& build, InsideRef what) { return inside_of(build, what).type == InsideType::motor; }

std::string value_of(const std::vector<std::pair<std::string, std::string>>& values, const std::string& name) {
  for (const auto& [key, value] : values)
    if (key == name) return value;
  return {};
}

}  // namespace

TEST_CASE("who takes the battery off takes every cable off its earthed pole") {
  const SampleFolio& sample = shared_sample("electric-start-kit");
  for (const SolvedBuild& solved : sample.solved()) {
    const std::string off = value_of(pole_names(solved.build, sample.words()), "earthed_off");
    const TerminalId pole = earthed_pole(solved.build);
    int cables = 0;
    for (const Wire& wire : solved.build.wires) {
      if (wire.from != pole && wire.to != pole) continue;
      ++cables;
      CHECK_MESSAGE(off.find(wire.id) != std::string::npos, off);
    }
    CHECK(cables == 2);
  }
}

TEST_CASE("the interlock is proved before power: open in gear, earthed with the clutch pulled, a diode in neutral") {
  const SampleFolio& sample = shared_sample("electric-start-kit");
  for (const SolvedBuild& solved : sample.solved()) {
    CAPTURE(solved.build.variant);
    std::map<ColdReading, int> shown;
    for (const InterlockTest& test : find_interlock_tests(solved.build)) ++shown[test.shows];
    CHECK(shown[ColdReading::open] == 1);
    CHECK(shown[ColdReading::beeps] == 1);
    CHECK(shown[ColdReading::diode] == 1);
  }
  // Without its diode the neutral switch no longer reaches the interlock: the rows must say so, or be gone.
  Build broken = sample.solved().front().build;
  std::erase_if(broken.wires, [](const Wire& wire) { return wire.id == "8"; });
  for (const InterlockTest& test : find_interlock_tests(broken)) CHECK(test.shows != ColdReading::diode);
}

TEST_CASE("wherever the starter must turn it is asked whether it does, and a failure leads to that situation's chart") {
  int asked = 0;
  for (const std::string& name : sample_names())
    for (const SolvedBuild& solved : shared_sample(name).solved())
      for (const SituationReadings& readings : find_readings(solved)) {
        const Situation& situation = solved.build.situations[readings.situation.at()];
        for (const Expectation& expectation : situation.expectations) {
          const Part& part = solved.build.part(expectation.what.part);
          const bool has_motor = std::any_of(part.insides.begin(), part.insides.end(),
                                             [](const Inside& i) { return i.type == InsideType::motor; });
          if (!has_motor || expectation.state != Expected::on) continue;
          const auto row = std::find_if(readings.readings.begin(), readings.readings.end(), [&](const auto& r) {
            return r.consumer.part == expectation.what.part && is_motor(solved.build, r.consumer);
          });
          REQUIRE(row != readings.readings.end());
          ++asked;
          const FaultPlan& plan = shared_plan(solved);
          const int chart = plan.chart_for(row->consumer, readings.situation);
          REQUIRE(chart >= 0);
          const bool has_own =
              std::any_of(plan.charts.begin(), plan.charts.end(), [&](const FaultChart& c) {
                return c.symptoms.front().what == row->consumer && c.symptoms.front().situation == readings.situation;
              });
          if (has_own)
            CHECK(plan.charts[static_cast<std::size_t>(chart)].symptoms.front().situation == readings.situation);
        }
      }
  CHECK(asked >= 8);
}

TEST_CASE("a battery that is not charged: nothing is blamed that does not lie between generator and battery") {
  for (const std::string& name : sample_names())
    for (const SolvedBuild& solved : shared_sample(name).solved()) {
      const FaultPlan& plan = shared_plan(solved);
      for (const FaultChart& chart : plan.charts) {
        if (chart.kind != Ailing::charging) continue;
        for (const int f : chart.diagnosis.suspects) {
          const Fault& fault = plan.faults[static_cast<std::size_t>(f)];
          CHECK(fault.type != FaultType::contact_stuck);
          CHECK(fault.type != FaultType::switch_stuck);
          CHECK(fault.type != FaultType::output_dead);
          if (!fault.inside.part.is_set()) continue;
          const std::string& group = solved.build.kind_of(solved.build.part(fault.inside.part)).group;
          CHECK(group != "control");
        }
        // Where the generator gives nothing only ohms are asked.
        for (const DiagnosisNode& node : chart.diagnosis.nodes) {
          if (node.probe < 0) continue;
          const Probe& probe = chart.diagnosis.probes[static_cast<std::size_t>(node.probe)];
          if (probe.type != ProbeType::alternating) continue;
          for (const auto& [outcome, child] : node.branches) {
            if (!probe.outcomes[static_cast<std::size_t>(outcome)].is_open) continue;
            const int next = chart.diagnosis.nodes[static_cast<std::size_t>(child)].probe;
            if (next >= 0) CHECK(chart.diagnosis.probes[static_cast<std::size_t>(next)].type == ProbeType::ohms);
          }
        }
      }
    }
}

TEST_CASE("no chart asks for volts that live on a diode's leakage") {
  int loose = 0;
  for (const SolvedBuild& solved : shared_sample("electric-start-kit").solved()) {
    const FaultPlan& plan = shared_plan(solved);
    const FaultBook book = solve_faults(plan.bench.build, plan.bench.solutions, {});
    for (const auto& effects : book.effects)
      for (const FaultEffect& effect : effects)
        loose += static_cast<int>(std::count_if(effect.readings.begin(), effect.readings.end(),
                                                [](const Reading& r) { return r.is_loose && r.volts > 5; }));
    for (const FaultChart& chart : plan.charts)
      for (const Probe& probe : chart.diagnosis.probes) {
        if (probe.type != ProbeType::volts) continue;
        for (const int f : chart.diagnosis.suspects)
          for (const Reading& reading : book.effect(static_cast<std::size_t>(f), probe.situation.at()).readings)
            if (reading.at == probe.at && reading.is_loose) CHECK(std::abs(reading.volts) < 0.5);
      }
  }
  CHECK(loose > 10);  // there are such places to be avoided
}

TEST_CASE("an empty accessory socket is no fault, and a diode fitted backwards is one") {
  const SolvedBuild& solved = shared_sample("electric-start-kit").solved().back();
  int reversed = 0;
  for (const Fault& fault : list_faults(solved.build)) {
    if (fault.type == FaultType::diode_reversed) ++reversed;
    if (fault.inside.part.is_set()) CHECK(solved.build.part(fault.inside.part).id != "socket");
  }
  CHECK(reversed == 1);
  bool is_found = false;
  const FaultPlan& plan = shared_plan(solved);
  for (const FaultChart& chart : plan.charts)
    for (const Probe& probe : chart.diagnosis.probes)
      if (probe.type == ProbeType::ohms && inside_of(solved.build, probe.what).type == InsideType::diode) {
        is_found = true;
        CHECK(probe.outcomes.size() == 3);
      }
  CHECK(is_found);
}

TEST_CASE("behind the test fuse only what it carries is switched on, and no button is pressed") {
  int rows = 0;
  for (const std::string& name : sample_names())
    for (const SolvedBuild& solved : shared_sample(name).solved())
      for (const TrialSituation& trial : situations_behind(solved, Amperes(5))) {
        ++rows;
        CHECK(trial.drawn.number() <= 5 * 0.75);
        CHECK_FALSE(trial.works.empty());
        for (const Setting& setting : solved.build.situations[trial.situation.at()].settings)
          CHECK_FALSE(inside_of(solved.build, setting.actuator).is_sprung);
      }
  CHECK(rows >= 4);
}
