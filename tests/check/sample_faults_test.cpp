// SPDX-License-Identifier: MIT
// Fault finding over a whole machine: every single fault of the street single that a person would notice is led to a
// leaf of its own, or to one that names those which no measurement tells apart from it.
#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <set>

#include "disk_files.h"
#include "model/shipped.h"
#include "solve/diagnose.h"

using namespace loomfolio;

namespace {

Build read_machine() {
  std::string why;
  const std::string path = test::source_folder + "/samples/street-single.toml";
  const auto text = DiskFiles().read(path, why);
  REQUIRE(text);
  Sources sources = test::shipped().sources;
  Diagnostics findings;
  const Project project = read_spec(path, *text, test::shipped().library, sources, findings);
  REQUIRE(findings.empty());
  return project.builds.at(0);
}

bool is_noticed(InsideType type) {
  return type == InsideType::lamp || type == InsideType::load || type == InsideType::motor ||
         type == InsideType::charger;
}

struct Machine {
  Build build = read_machine();
  std::vector<Solution> solutions = solve_all(build);
  FaultBook book = solve_faults(build, solutions, {});
  FaultStudy study{build, solutions, book};

  /// A short that no fuse ends is no suspect of any symptom: it burns.
  bool burns(std::size_t fault) const {
    for (std::size_t s = 0; s < solutions.size(); ++s)
      if (study.burns(fault, s)) return true;
    return false;
  }
  bool is_visible(std::size_t fault) const {
    for (std::size_t s = 0; s < solutions.size(); ++s)
      for (const StateChange& change : book.effect(fault, s).changes)
        if (is_noticed(build.part(change.what.part).insides[static_cast<std::size_t>(change.what.inside)].type))
          return true;
    return false;
  }
  double reading(int fault, std::size_t situation, TerminalId at) const {
    for (const Reading& r : book.effect(static_cast<std::size_t>(fault), situation).readings)
      if (r.at == at) return std::isnan(r.volts) ? 0 : r.volts;
    const double sound = solutions[situation].terminal_volts[at.at()].number();
    return std::isnan(sound) ? 0 : sound;
  }
  /// Greatest difference that a meter could see between two faults, at any terminal but a splice.
  double difference(int one, int other, std::size_t situation) const {
    double most = 0;
    for (std::size_t t = 0; t < build.terminals.size(); ++t) {
      if (build.terminals[t].owner == OwnerType::splice) continue;
      const TerminalId at{static_cast<std::int32_t>(t)};
      most = std::max(most, std::abs(reading(one, situation, at) - reading(other, situation, at)));
    }
    return most;
  }
};

void check_leaf(const Machine& m, const Diagnosis& d, const DiagnosisNode& leaf) {
  for (std::size_t i = 0; i < leaf.suspects.size(); ++i)
    for (std::size_t j = i + 1; j < leaf.suspects.size(); ++j) {
      const int one = d.suspects[static_cast<std::size_t>(leaf.suspects[i])],
                other = d.suspects[static_cast<std::size_t>(leaf.suspects[j])];
      CHECK_MESSAGE(m.difference(one, other, d.symptom.situation.at()) < 1.0,
                    "faults " << one << " and " << other << " share a leaf");
    }
}

}  // namespace

TEST_CASE(
    "street single: every fault that shows is found, in a leaf of its own or named with those that read the same") {
  Machine m;
  const auto symptoms = list_symptoms(m.build, m.solutions, m.book);
  std::set<int> found;
  std::size_t leaves = 0, alone = 0;
  for (const Symptom& symptom : symptoms) {
    const Diagnosis d = diagnose(m.study, symptom);
    if (d.suspects.empty()) continue;              // none but what burns
    std::vector<int> times(d.suspects.size(), 0);  // each suspect stands in one leaf
    for (const DiagnosisNode& node : d.nodes) {
      if (node.probe >= 0) continue;
      ++leaves;
      if (node.suspects.size() == 1) ++alone;
      for (const int s : node.suspects) ++times[static_cast<std::size_t>(s)];
      check_leaf(m, d, node);
    }
    CHECK(std::all_of(times.begin(), times.end(), [](int n) { return n == 1; }));
    found.insert(d.suspects.begin(), d.suspects.end());
  }
  std::size_t visible = 0;
  for (std::size_t f = 0; f < m.book.faults.size(); ++f) {
    if (!m.is_visible(f) || m.burns(f)) continue;
    ++visible;
    CHECK_MESSAGE(found.count(static_cast<int>(f)) == 1, "fault " << f << " is no symptom's suspect");
  }
  CHECK(m.book.faults.size() > 600);
  CHECK(visible > 300);
  CHECK(alone * 4 > leaves * 3);
  MESSAGE(m.book.faults.size() << " faults, " << visible << " show; " << symptoms.size() << " symptoms, " << leaves
                               << " leaves, " << alone << " of them with one suspect");
}
