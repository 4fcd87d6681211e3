// SPDX-License-Identifier: MIT
// From symptom to suspect on a whole machine: the tree must end at the fault that was put in.
#include "solve/diagnose.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>

#include "solve/machine_maker.h"
#include "solve/reading_limits.h"

using namespace loomfolio;
using namespace loomfolio::test;

namespace {

// What the probe shows when that suspect is the fault: an outcome of the probe.
int outcome_of(const BuildMaker& m, const std::vector<Solution>& solutions, const FaultBook& book, const Probe& probe,
               int fault) {
  const auto f = static_cast<std::size_t>(fault);
  const std::size_t s = probe.situation.at();
  if (probe.type == ProbeType::volts) {
    double volts = solutions[s].terminal_volts[probe.at.at()].number();
    for (const Reading& reading : book.effect(f, s).readings)
      if (reading.at == probe.at) volts = reading.volts;
    if (std::isnan(volts)) volts = 0;
    for (std::size_t o = 0; o < probe.outcomes.size(); ++o)
      if (volts >= probe.outcomes[o].least && volts <= probe.outcomes[o].most) return static_cast<int>(o);
    return -1;
  }
  if (probe.type == ProbeType::short_to_earth) {
    const auto& blown = book.effect(f, s).blown;
    return std::find(blown.begin(), blown.end(), probe.what) != blown.end() ? 0 : 1;
  }
  if (probe.type == ProbeType::ohms) {
    const auto& blown = book.effect(f, s).blown;
    const bool is_open =
        book.faults[f].inside == probe.what || std::find(blown.begin(), blown.end(), probe.what) != blown.end();
    return is_open ? 1 : 0;
  }
  Expected seen = observed(m.build.part(probe.what.part).insides[static_cast<std::size_t>(probe.what.inside)],
                           solutions[s].insides[probe.what.part.at()][static_cast<std::size_t>(probe.what.inside)]);
  for (const StateChange& change : book.effect(f, s).changes)
    if (change.what == probe.what) seen = change.after;
  for (std::size_t o = 0; o < probe.outcomes.size(); ++o)
    if (probe.outcomes[o].state == seen) return static_cast<int>(o);
  return -1;
}

}  // namespace

TEST_CASE("every suspect of every symptom is reached by following its own readings") {
  const BuildMaker m = make_machine(1, 2);
  const auto solutions = solve_all(m.build);
  const FaultBook book = solve_faults(m.build, solutions, {});
  const auto symptoms = list_symptoms(m.build, solutions, book);
  CHECK(symptoms.size() > 8);
  int followed = 0;
  for (const Symptom& symptom : symptoms) {
    const Diagnosis d = diagnose(m.build, solutions, book, symptom);
    REQUIRE(!d.nodes.empty());
    for (std::size_t i = 0; i < d.suspects.size(); ++i) {
      int node = 0;
      while (d.nodes[static_cast<std::size_t>(node)].probe >= 0) {
        const DiagnosisNode& at = d.nodes[static_cast<std::size_t>(node)];
        const int outcome = outcome_of(m, solutions, book, d.probes[static_cast<std::size_t>(at.probe)], d.suspects[i]);
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
  const Symptom symptom{SituationId{3}, m.inside("lamp0-0", "lamp"), Expected::on, Expected::off};
  const Diagnosis d = diagnose(m.build, solutions, book, symptom);
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
