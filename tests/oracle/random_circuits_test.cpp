// SPDX-License-Identifier: MIT
// Random circuits of all laws, solved here and by ngspice: every node within 0.1 % or 1 mV.
#include <doctest/doctest.h>

#include "oracle/compare.h"
#include "solve/newton.h"
#include "solve/random_circuit.h"
#include "solve/spice.h"

using namespace loomfolio;
using namespace loomfolio::test;

namespace {
constexpr int circuits = 260;
}

TEST_CASE("random circuits, more than 240: every node as ngspice has it") {
  std::vector<Question> questions;
  for (int i = 0; i < circuits; ++i) {
    const Circuit circuit = random_circuit(i);
    NodeSolver solver(circuit);
    const NodeVolts ours = solver.solve({}, Flash::lit, {});
    CHECK_MESSAGE(ours.has_settled, "circuit " << i << " after " << ours.steps);
    const std::string name = "random " + std::to_string(i);
    questions.push_back({name, write_netlist({circuit, {}, Flash::lit, name, nullptr}), ours});
  }
  const Verdict verdict = compare_with_ngspice(questions);
  REQUIRE_MESSAGE(verdict.trouble.empty(), verdict.trouble);
  for (const std::string& difference : verdict.differences) CHECK_MESSAGE(false, difference);
  // ngspice itself finds no operating point in a few, where several limits meet; those prove nothing and are counted out.
  CHECK(verdict.answered >= 245);
  CHECK(verdict.from_nothing >= 200);
  CHECK(verdict.nodes > 4000);
  MESSAGE("circuits compared: " << verdict.answered << " of " << circuits << ", nodes: " << verdict.nodes);
}
