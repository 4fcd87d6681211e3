// SPDX-License-Identifier: MIT
// The answer to 'what if' against solving the changed circuit anew.
#include <doctest/doctest.h>

#include <cmath>

#include "solve/islands.h"
#include "solve/random_circuit.h"
#include "solve/what_if.h"

using namespace loomfolio;
using namespace loomfolio::test;

namespace {

constexpr WhatIfAccuracy exact{0, 1e-13};

struct Base {
  Circuit circuit;
  Settled settled;
  explicit Base(int seed) : circuit(random_circuit(seed)) {
    NodeSolver solver(circuit);
    settled.nodes = solver.solve({}, Flash::lit, {});
  }
};

/// All equations anew; begun at the sound circuit's volts, since where Newton begins changes no answer.
NodeVolts solve_anew(const Circuit& circuit, const Base& base) {
  NodeSolver solver(circuit);
  return solver.solve({}, Flash::lit, base.settled.nodes.volts);
}

/// Nodes that hang on leaks alone - a shut diode, a limit reached - in the circuit solved anew: their volts mean nothing.
std::vector<char> find_leaking(const Circuit& circuit, const NodeVolts& nodes) {
  Islands islands(circuit.node_count);
  for (const Branch& branch : circuit.branches) {
    const double volts = nodes.volts[static_cast<std::size_t>(branch.a)] - nodes.volts[static_cast<std::size_t>(branch.b)];
    if (work(branch, volts).siemens > 1e-6) islands.join(branch.a, branch.b);
  }
  std::vector<char> leaking;
  for (int node = 0; node < circuit.node_count; ++node) leaking.push_back(islands.are_joined(node, circuit.reference) ? 0 : 1);
  return leaking;
}

/// Nodes that differ by more than 0.1 % and 1 mV.
int count_apart(const WhatIf& answer, const Circuit& circuit, const NodeVolts& anew) {
  int apart = 0;
  const auto leaking = find_leaking(circuit, anew);
  for (int node = 0; node < static_cast<int>(anew.volts.size()); ++node) {
    if (leaking[static_cast<std::size_t>(node)]) continue;
    const double expected = anew.volts[static_cast<std::size_t>(node)];
    if (anew.floating[static_cast<std::size_t>(node)] != 0 || answer.is_floating(node)) {
      apart += (anew.floating[static_cast<std::size_t>(node)] != 0) != answer.is_floating(node);
      continue;
    }
    apart += std::abs(answer.volts(node) - expected) > std::max(0.001, 0.001 * std::abs(expected));
  }
  return apart;
}

}  // namespace

TEST_CASE("each branch opened, one at a time: as if solved anew") {
  int asked = 0;
  for (int seed = 0; seed < 40; ++seed) {
    const Base base(seed);
    WhatIf what_if(base.circuit, base.settled, Flash::lit, exact);
    for (int i = 1; i < static_cast<int>(base.circuit.branches.size()); ++i) {
      Circuit without = base.circuit;
      without.branches.erase(without.branches.begin() + i);
      const NodeVolts anew = solve_anew(without, base);
      what_if.begin();
      what_if.open(i);
      CHECK_MESSAGE(what_if.solve(), "circuit " << seed << " branch " << i);
      const int apart = count_apart(what_if, without, anew);
      CHECK_MESSAGE(apart == 0, "circuit " << seed << " branch " << i << ": " << apart << " nodes apart");
      ++asked;
    }
  }
  CHECK(asked > 1000);
}

TEST_CASE("each node shorted to the reference, each conductor made bad: as if solved anew") {
  for (int seed = 0; seed < 40; ++seed) {
    const Base base(seed);
    WhatIf what_if(base.circuit, base.settled, Flash::lit, exact);
    for (int node = 0; node < base.circuit.node_count; ++node) {
      Circuit changed = base.circuit;
      Branch dead_short;
      dead_short.a = node;
      dead_short.b = base.circuit.reference;
      dead_short.ohms = Ohms(0.01);
      changed.branches.push_back(dead_short);
      what_if.begin();
      what_if.add(dead_short);
      CHECK(what_if.solve());
      if (base.settled.nodes.floating[static_cast<std::size_t>(node)]) continue;  // brings an island back: not a question for it
      CHECK_MESSAGE(count_apart(what_if, changed, solve_anew(changed, base)) == 0, "circuit " << seed << " node " << node);
    }
    for (int i = 0; i < static_cast<int>(base.circuit.branches.size()); ++i) {
      if (base.circuit.branches[static_cast<std::size_t>(i)].law != Law::conductor) continue;
      Circuit changed = base.circuit;
      Branch& bad = changed.branches[static_cast<std::size_t>(i)];
      bad.ohms = bad.ohms + Ohms(0.5);
      what_if.begin();
      what_if.change(i, bad);
      CHECK(what_if.solve());
      CHECK_MESSAGE(count_apart(what_if, changed, solve_anew(changed, base)) == 0, "circuit " << seed << " branch " << i);
    }
  }
}

TEST_CASE("a coarser question visits less and stays within what was asked") {
  std::size_t fine = 0, coarse = 0;
  for (int seed = 0; seed < 40; ++seed) {
    const Base base(seed);
    WhatIf whole(base.circuit, base.settled, Flash::lit, exact);
    WhatIf rough(base.circuit, base.settled, Flash::lit, {0.05, 0.001});
    for (int i = 1; i < static_cast<int>(base.circuit.branches.size()); ++i) {
      for (WhatIf* w : {&whole, &rough}) {
        w->begin();
        w->open(i);
        CHECK(w->solve());
      }
      fine += whole.touched().size();
      coarse += rough.touched().size();
      for (int node = 0; node < base.circuit.node_count; ++node) {
        if (whole.is_floating(node)) continue;
        // 0.05 V asked for; a diode just under its knee in a part not visited may add as much again.
        CHECK(std::abs(whole.volts(node) - rough.volts(node)) < 0.15);
      }
    }
  }
  CHECK(coarse < fine);
}
