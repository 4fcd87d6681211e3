// SPDX-License-Identifier: MIT
// What makes many questions cheap - mild bends, lines that are learned, answers that become the base, the order of elimination -
// against solving each changed circuit anew.
#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>

#include "solve/defaults.h"
#include "solve/machine_maker.h"
#include "solve/random_circuit.h"
#include "solve/spread.h"
#include "solve/what_if.h"

using namespace loomfolio;
using namespace loomfolio::test;

namespace {

struct Machine {
  BuildMaker maker;
  Circuit circuit;
  Settled settled;
  Machine(int blocks, int functions, int situation) : maker(make_machine(blocks, functions)) {
    const auto solutions = solve_all(maker.build);
    const Solution& solution = solutions[static_cast<std::size_t>(situation)];
    circuit = make_circuit(maker.build, solution.situation, usual_options(maker.build));
    NodeSolver solver(circuit);
    settled.relays = solution.relays;
    settled.nodes = solver.solve(solution.relays, Flash::lit, {});
  }
};

Branch short_at(int node, int earth, double ohms) {
  Branch branch;
  branch.a = node, branch.b = earth;
  branch.ohms = Ohms(ohms);
  return branch;
}

NodeVolts solve_with(const Machine& m, const Branch& added) {
  Circuit circuit = m.circuit;
  circuit.branches.push_back(added);
  NodeSolver solver(circuit);
  return solver.solve(m.settled.relays, Flash::lit, m.settled.nodes.volts);  // where Newton begins changes no answer
}

double greatest_gap(const WhatIf& answer, const NodeVolts& anew) {
  double gap = 0;
  for (int node = 0; node < static_cast<int>(anew.volts.size()); ++node)
    if (!anew.floating[static_cast<std::size_t>(node)])
      gap = std::max(gap, std::abs(answer.volts(node) - anew.volts[static_cast<std::size_t>(node)]));
  return gap;
}

int count_moved_lamps(const Machine& m, const WhatIf& answer, double least) {
  return static_cast<int>(std::count_if(m.circuit.branches.begin(), m.circuit.branches.end(), [&](const Branch& b) {
    const double was = m.settled.nodes.volts[static_cast<std::size_t>(b.a)] - m.settled.nodes.volts[static_cast<std::size_t>(b.b)];
    return b.law == Law::lamp && std::abs(was) > 6 && std::abs(answer.volts(b.a) - answer.volts(b.b) - was) > least;
  }));
}

}  // namespace

TEST_CASE("a short that pulls down every lamp of two machines changes few places, and is right to a hundredth of a volt") {
  int all = 0;
  for (const int situation : {1, 4}) {
    const Machine m(2, 6, situation);
    WhatIf what_if(m.circuit, m.settled, Flash::lit, {0.005, 0.0005});
    for (const Wire& wire : m.maker.build.wires)
      for (const double ohms : {0.03, 0.3}) {
        const Branch chafe = short_at(wire.to.index, m.circuit.frame, ohms);
        what_if.begin();
        what_if.add(chafe);
        REQUIRE(what_if.solve());
        const double gap = greatest_gap(what_if, solve_with(m, chafe));
        CHECK_MESSAGE(gap < 0.01, m.maker.build.terminal(wire.to).name << " " << ohms << " ohm: " << gap << " V");
        if (count_moved_lamps(m, what_if, 0.1) >= 4 && !what_if.is_whole() && what_if.changed_places() <= 4) ++all;
      }
  }
  CHECK(all > 20);
}

TEST_CASE("lines learned from one short: the same answers to every other short and load, with fewer changed places") {
  std::size_t plain_places = 0, learned_places = 0;
  const Machine m(3, 3, 5);
  constexpr WhatIfAccuracy probing{1, 0.001, WhatIfReach::probe};
  WhatIf plain(m.circuit, m.settled, Flash::lit, probing), learned(m.circuit, m.settled, Flash::lit, probing);
  learned.add(short_at(m.maker.find("battery.+").index, m.circuit.frame, 0.001));
  REQUIRE(learned.solve());
  REQUIRE(learned.changed_places() >= 3);
  learned.learn_lines();
  for (const Wire& wire : m.maker.build.wires)
    for (const double ohms : {0.001, 0.2, 60.0}) {
      const Branch added = short_at(wire.to.index, m.circuit.frame, ohms);
      for (WhatIf* w : {&plain, &learned}) {
        w->begin();
        w->add(added);
        REQUIRE(w->solve());
      }
      double gap = 0, gap_anew = 0;
      const NodeVolts anew = solve_with(m, added);
      for (int node = 0; node < m.circuit.node_count; ++node) {
        if (anew.floating[static_cast<std::size_t>(node)]) continue;
        gap = std::max(gap, std::abs(learned.probe_volts(node) - plain.probe_volts(node)));
        gap_anew = std::max(gap_anew, std::abs(learned.probe_volts(node) - anew.volts[static_cast<std::size_t>(node)]));
      }
      CHECK_MESSAGE(gap < 0.001, m.maker.build.terminal(wire.to).name << " " << ohms << " ohm: " << gap << " V");
      if (ohms == 60.0) CHECK(gap_anew < 0.02);  // stronger shorts bend filaments, which this reach leaves straight
      if (ohms > 0.001) continue;
      plain_places += plain.changed_places();
      learned_places += learned.changed_places();
    }
  CHECK(learned_places < plain_places);
}

TEST_CASE("a question that has begun again reads the sound machine") {
  const Machine m(1, 3, 4);
  WhatIf what_if(m.circuit, m.settled, Flash::lit, {1, 0.001, WhatIfReach::probe});
  const int live = m.maker.find("battery.+").index;
  const double sound = what_if.probe_volts(live);
  what_if.add(short_at(live, m.circuit.frame, 0.01));
  REQUIRE(what_if.solve());
  CHECK(what_if.probe_volts(live) < sound - 1);
  what_if.begin();
  CHECK(what_if.probe_volts(live) == sound);
}

TEST_CASE("an answer that became the base: the next one as if both changes were made anew") {
  int asked = 0;
  for (int seed = 0; seed < 30; ++seed) {
    const Circuit circuit = random_circuit(seed);
    Settled settled;
    NodeSolver solver(circuit);
    settled.nodes = solver.solve({}, Flash::lit, {});
    const int count = static_cast<int>(circuit.branches.size());
    for (int i = 1; i + 1 < count; i += 3) {
      Circuit changed = circuit;
      WhatIf what_if(circuit, settled, Flash::lit, {0, 1e-10});
      for (const int which : {i, i + 1}) {
        Branch& bad = changed.branches[static_cast<std::size_t>(which)];
        if (bad.law != Law::conductor) continue;
        bad.ohms = bad.ohms + Ohms(0.5);
        what_if.begin();
        what_if.change(which, bad);
        REQUIRE(what_if.solve());
        REQUIRE(what_if.adopt());
        NodeSolver fresh(changed);
        CHECK(greatest_gap(what_if, fresh.solve({}, Flash::lit, {})) < 1e-4);
        ++asked;
      }
    }
  }
  CHECK(asked > 150);
}

TEST_CASE("a chain is eliminated by halves: the way up from any row is short, and the system is solved") {
  constexpr int size = 1000;
  std::vector<MatrixEntry> entries;
  for (int row = 0; row < size; ++row) {
    entries.push_back({row, row, 2.01});
    if (row > 0) entries.push_back({row, row - 1, -1.0});
  }
  SymmetricMatrix matrix;
  REQUIRE(matrix.factor(size, entries));
  Spreading spreading(matrix.lower());
  std::size_t longest = 0;
  for (int row = 0; row < size; ++row)
    longest = std::max(longest, spreading.forward(spreading.factor_row(row), -1).rows.size());
  CHECK(longest <= 20);  // log2 of 1000 is 10
  std::vector<double> x(size);
  for (int row = 0; row < size; ++row) x[static_cast<std::size_t>(row)] = row % 7 - 3;
  const std::vector<double> right = x;
  matrix.solve(x);
  for (int row = 0; row < size; ++row) {
    const auto at = [&](int i) { return i < 0 || i >= size ? 0.0 : x[static_cast<std::size_t>(i)]; };
    CHECK(2.01 * at(row) - at(row - 1) - at(row + 1) == doctest::Approx(right[static_cast<std::size_t>(row)]).epsilon(1e-9));
  }
}

TEST_CASE("a branch that joins a floating island to the rest: its terminals read, and nothing flows that is not there") {
  BuildMaker m;
  m.part("battery", {"+", "-"}, {battery(0.012)}, {TerminalForm::stud});
  m.part("fuse", {"in", "out"}, {fuse(10)});
  m.part("key", {"a", "b"}, {make_switch({"a", "b"})});
  m.part("light", {"a", "b"}, {make_switch({"a", "b"})});
  m.part("lamp", {"+", "-"}, {lamp("lamp", {"+", "-"}, 26.5)});
  m.earth("E", 0.001);
  m.wire("battery.-", "E", 16, 0.3);
  m.wire("battery.+", "fuse.in");
  m.wire("fuse.out", "key.a");
  const WireId island = m.wire("key.b", "light.a");
  m.wire("light.b", "lamp.+");
  m.wire("lamp.-", "E");
  const SituationId rest = m.situation("rest");
  const Circuit circuit = make_circuit(m.build, rest, usual_options(m.build));
  NodeSolver solver(circuit);
  Settled settled;
  settled.relays = rest_state(circuit);
  settled.nodes = solver.solve(settled.relays, Flash::lit, {});
  const int node = m.build.wire(island).from.index;
  REQUIRE(settled.nodes.floating[static_cast<std::size_t>(node)]);
  WhatIf what_if(circuit, settled, Flash::lit, {0.02, 0.0005});
  what_if.add(short_at(m.find("key.a").index, node, 0.01));
  REQUIRE(what_if.solve());
  CHECK(!what_if.is_floating(node));
  CHECK(what_if.volts(node) == doctest::Approx(12.6).epsilon(0.001));
  CHECK(std::abs(what_if.amperes(circuit.wire_branch[1])) < 0.001);
  CHECK(what_if.volts(m.find("battery.+").index) == doctest::Approx(12.6).epsilon(0.001));
}
