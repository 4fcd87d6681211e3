// SPDX-License-Identifier: MIT
// From symptom to suspect on a whole machine: the tree must end at the fault that was put in.
#include "solve/diagnose.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>

#include "solve/follow_fault.h"
#include "solve/machine_maker.h"
#include "solve/reading_limits.h"

using namespace loomfolio;
using namespace loomfolio::test;

TEST_CASE("every suspect of every symptom is reached by following its own readings") {
  const BuildMaker m = make_machine(1, 2);
  const auto solutions = solve_all(m.build);
  const FaultBook book = solve_faults(m.build, solutions, {});
  FaultStudy study(m.build, solutions, book);
  const auto symptoms = list_symptoms(m.build, solutions, book);
  CHECK(symptoms.size() > 8);
  int followed = 0;
  for (const Symptom& symptom : symptoms) {
    const Diagnosis d = diagnose(study, symptom);
    if (d.suspects.empty()) continue;  // none but what burns
    for (std::size_t i = 0; i < d.suspects.size(); ++i) {
      int node = 0;
      while (d.nodes[static_cast<std::size_t>(node)].probe >= 0) {
        const DiagnosisNode& at = d.nodes[static_cast<std::size_t>(node)];
        const int outcome = outcome_shown(study, d, d.probes[static_cast<std::size_t>(at.probe)],
                                          static_cast<std::size_t>(d.suspects[i]));
        const auto next =
            std::find_if(at.branches.begin(), at.branches.end(), [&](const auto& b) { return b.first == outcome; });
        REQUIRE(next != at.branches.end());
        node = next->second;
      }
      const auto& left = d.nodes[static_cast<std::size_t>(node)].suspects;
      CHECK(std::find(left.begin(), left.end(), static_cast<int>(i)) != left.end());
      ++followed;
    }
  }
  CHECK(followed > 100);
}

TEST_CASE(
    "ranges of readings stay apart, hold what a sound machine may read, and leave a dead place some tenths of a volt") {
  for (const double nominal : {12.0, 6.0}) {
    BuildMaker m = make_machine(1, 2);
    const double gap = nominal / 12;
    m.build.electrics.nominal = Volts(nominal);
    m.build.electrics.resting = Volts(12.6 * gap);
    m.build.electrics.running = Volts(14.2 * gap);
    for (Part& part : m.build.parts)
      for (Inside& inside : part.insides) {
        if (inside.at_voltage) inside.at_voltage = *inside.at_voltage * gap;
        if (inside.pull_in) inside.pull_in = *inside.pull_in * gap;
        if (inside.drop_out) inside.drop_out = *inside.drop_out * gap;
      }
    const auto solutions = solve_all(m.build);
    const FaultBook book = solve_faults(m.build, solutions, {});
    int sound = 0, dead = 0;
    for (const Symptom& symptom : list_symptoms(m.build, solutions, book)) {
      const ReadingLimits limits = find_reading_limits(m.build, solutions[symptom.situation.at()]);
      const Diagnosis d = diagnose(m.build, solutions, book, symptom);
      for (const Probe& probe : d.probes) {
        if (probe.type != ProbeType::volts) continue;
        for (std::size_t o = 1; o < probe.outcomes.size(); ++o)
          CHECK(probe.outcomes[o].least > probe.outcomes[o - 1].most);
        for (const ProbeOutcome& outcome : probe.outcomes) {
          if (!(outcome.least < 0 && outcome.most > 0)) continue;
          ++dead;
          CHECK(outcome.most - outcome.least >= 2 * 0.29 * gap);
        }
        // A suspect that changes nothing at the place: the meter may show there what a sound machine may show.
        const double reads = solutions[symptom.situation.at()].terminal_volts[probe.at.at()].number();
        const auto changes_place = [&](int suspect) {
          const auto& readings = book.effect(static_cast<std::size_t>(suspect), symptom.situation.at()).readings;
          return std::any_of(readings.begin(), readings.end(), [&](const Reading& r) { return r.at == probe.at; });
        };
        if (!(std::abs(reads) >= gap) || std::all_of(d.suspects.begin(), d.suspects.end(), changes_place)) continue;
        const auto outcome = std::find_if(probe.outcomes.begin(), probe.outcomes.end(),
                                          [&](const ProbeOutcome& o) { return o.least <= reads && reads <= o.most; });
        REQUIRE(outcome != probe.outcomes.end());
        ++sound;
        CHECK(outcome->least <= std::max(limits.least[probe.at.at()].number(), reads - 0.45 * gap) + 0.05 * gap);
        CHECK(outcome->most >= std::min(limits.most[probe.at.at()].number(), reads + 0.45 * gap) - 0.05 * gap);
      }
    }
    CHECK(sound > 5);
    CHECK(dead > 5);
  }
}

TEST_CASE("a dead lamp beside a lit one: first looks cost less than opening a connector") {
  const BuildMaker m = make_machine(1, 2);
  const auto solutions = solve_all(m.build);
  const FaultBook book = solve_faults(m.build, solutions, {});
  FaultStudy study(m.build, solutions, book);
  const Symptom symptom{SituationId{3}, m.inside("lamp0-0", "lamp"), Expected::on, Expected::off};
  const Diagnosis d = diagnose(study, symptom);
  CHECK(d.suspects.size() > 15);
  CHECK(d.expected_minutes > 0.5);
  CHECK(d.expected_minutes < 15);
  // No two suspects whose readings differ by volts share a leaf: only joints and wires in one row may.
  for (const DiagnosisNode& node : d.nodes) {
    if (node.probe >= 0 || node.suspects.size() < 2) continue;
    for (const int s : node.suspects) {
      const FaultType type = book.faults[static_cast<std::size_t>(d.suspects[static_cast<std::size_t>(s)])].type;
      CHECK(type != FaultType::fuse_blown);
      CHECK(type != FaultType::battery_flat);
    }
  }
}

TEST_CASE("a blown fuse stays blown in every later situation, and what burns is nobody's suspect") {
  const BuildMaker m = make_machine(1, 2);
  const auto solutions = solve_all(m.build);
  const FaultBook book = solve_faults(m.build, solutions, {});
  FaultStudy study(m.build, solutions, book);
  int carried = 0;
  for (std::size_t f = 0; f < book.faults.size(); ++f)
    for (std::size_t first = 0; first < solutions.size(); ++first)
      for (std::size_t s = 0; s < solutions.size(); ++s) {
        const auto &then = book.effect(f, first).blown, &now = study.effect(f, s, first).blown;
        for (const InsideRef fuse : then) CHECK(std::find(now.begin(), now.end(), fuse) != now.end());
        if (!then.empty() && book.effect(f, s).blown.empty()) ++carried;
      }
  CHECK(carried > 20);
  for (const Symptom& symptom : list_symptoms(m.build, solutions, book))
    for (const int f : diagnose(study, symptom).suspects)
      CHECK_FALSE(study.burns(static_cast<std::size_t>(f), symptom.situation.at()));
}

TEST_CASE("the bulb and the fuse are looked at first") {
  const BuildMaker m = make_machine(1, 2);
  const auto solutions = solve_all(m.build);
  const FaultBook book = solve_faults(m.build, solutions, {});
  FaultStudy study(m.build, solutions, book);
  const Diagnosis d = diagnose(study, {SituationId{3}, m.inside("lamp0-0", "lamp"), Expected::on, Expected::off});
  REQUIRE(d.nodes.front().probe >= 0);
  const Probe& first = d.probes[static_cast<std::size_t>(d.nodes.front().probe)];
  CHECK(first.type == ProbeType::ohms);
  const InsideType type = probed_inside(m.build, first.what).type;
  CHECK((type == InsideType::lamp || type == InsideType::fuse));
}

TEST_CASE("a short is looked for behind the fuse that is out, where each suspect that blew it can be seen") {
  const BuildMaker m = make_machine(1, 2);
  const auto solutions = solve_all(m.build);
  const FaultBook book = solve_faults(m.build, solutions, {});
  FaultStudy study(m.build, solutions, book);
  int shorts = 0;
  for (const Symptom& symptom : list_symptoms(m.build, solutions, book)) {
    const Diagnosis d = diagnose(study, symptom);
    for (const DiagnosisNode& node : d.nodes) {
      if (node.probe < 0) continue;
      const Probe& probe = d.probes[static_cast<std::size_t>(node.probe)];
      if (probe.type != ProbeType::short_to_earth) continue;
      for (const auto& [outcome, child] : node.branches) {
        if (probe.outcomes[static_cast<std::size_t>(outcome)].is_open) continue;
        for (const int s : d.nodes[static_cast<std::size_t>(child)].suspects) {
          const auto fault = static_cast<std::size_t>(d.suspects[static_cast<std::size_t>(s)]);
          const auto& blown = book.effect(fault, symptom.situation.at()).blown;
          CHECK(read_dead_ohms(m.build, probe, book.faults[fault], blown) < 1);
          ++shorts;
        }
      }
    }
  }
  CHECK(shorts > 3);
}
