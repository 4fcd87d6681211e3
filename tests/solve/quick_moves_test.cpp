// SPDX-License-Identifier: MIT
// Relays moved one by one, and fuses that a short opens: answered from the circuit before, against solving each anew.
#include "solve/quick_moves.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <limits>

#include "solve/faults.h"
#include "solve/fault_bench.h"
#include "solve/machine_maker.h"

using namespace loomfolio;
using namespace loomfolio::test;

namespace {

double over_coil(const Circuit& circuit, const CoilDevice& coil, const NodeVolts& nodes) {
  const Branch& branch = circuit.branches[static_cast<std::size_t>(coil.branch)];
  return nodes.volts[static_cast<std::size_t>(branch.a)] - nodes.volts[static_cast<std::size_t>(branch.b)];
}

/// Fuses that open after a chafe, in order, every fuse asked in the whole circuit each time.
std::vector<InsideRef> blow_anew(const Build& build, Circuit circuit, RelayState relays, TerminalId chafed) {
  Branch chafe;
  chafe.a = chafed.index, chafe.b = circuit.frame;
  chafe.ohms = chafe_to_metal;
  circuit.branches.push_back(chafe);
  std::vector<InsideRef> blown;
  const std::vector<FuseRef> fuses = find_fuses(build);
  for (int round = 0; round < 20; ++round) {
    NodeSolver solver(circuit);
    const NodeVolts nodes = solver.solve(relays, Flash::lit, {});
    REQUIRE(nodes.has_settled);
    Seconds when{std::numeric_limits<double>::infinity()};
    int first = -1;
    for (const FuseRef& fuse : fuses) {
      const int number = circuit.inside_branch[fuse.inside.part.at()][static_cast<std::size_t>(fuse.inside.inside)];
      const Branch& branch = circuit.branches[static_cast<std::size_t>(number)];
      const double volts =
          nodes.volts[static_cast<std::size_t>(branch.a)] - nodes.volts[static_cast<std::size_t>(branch.b)];
      const Seconds opens = slowest_opening(*fuse.family, fuse.rating, Amperes(std::abs(work(branch, volts).amperes)));
      if (branch.a != branch.b && opens < when) when = opens, first = number;
    }
    if (first >= 0) {
      Branch& branch = circuit.branches[static_cast<std::size_t>(first)];
      blown.push_back(branch.inside);
      branch.b = branch.a;
      continue;
    }
    const RelayState next = wanted(circuit, relays, nodes);
    if (next == relays) break;
    relays = next;
  }
  return blown;
}

}  // namespace

TEST_CASE("relays moved one at a time: volts over every coil as if the whole circuit were solved") {
  const BuildMaker m = make_machine(2);
  const Circuit circuit = make_circuit(m.build, SituationId{3}, usual_options(m.build));
  NodeSolver solver(circuit);
  RelayState state = rest_state(circuit);
  const NodeVolts start = solver.solve(state, Flash::lit, {});
  QuickMoves quick(circuit, state, start, Flash::lit);
  const RelayState next = wanted(circuit, state, start);
  int answered = 0;
  for (std::size_t c = 0; c < next.coil_in.size(); ++c) {
    if (next.coil_in[c] == state.coil_in[c]) continue;
    state.coil_in[c] = next.coil_in[c];
    const auto seen = quick.move({GateType::coil, static_cast<int>(c), next.coil_in[c] != 0});
    if (!seen) break;
    const NodeVolts whole = solver.solve(state, Flash::lit, {});
    for (const CoilDevice& coil : circuit.coils)
      CHECK(std::abs(over_coil(circuit, coil, *seen) - over_coil(circuit, coil, whole)) < 0.05);
    CHECK(wanted(circuit, state, *seen) == wanted(circuit, state, whole));
    ++answered;
  }
  CHECK(answered >= 3);
}

TEST_CASE("every chafed wire of two machines on one battery: the same fuses open as when each is asked") {
  const BuildMaker m = make_machine(2, 3);
  const auto solutions = solve_all(m.build);
  const FaultBook book = solve_faults(m.build, solutions, {});
  int blowing = 0;
  for (const std::size_t s : {0U, 1U, 3U, 4U})
    for (std::size_t f = 0; f < book.faults.size(); ++f) {
      if (book.faults[f].type != FaultType::wire_to_earth) continue;
      const TerminalId at = m.build.wire(book.faults[f].wire).to;
      const Circuit circuit = make_circuit(m.build, solutions[s].situation, usual_options(m.build));
      const auto anew = blow_anew(m.build, circuit, solutions[s].relays, at);
      CHECK_MESSAGE(book.effect(f, s).blown == anew, "wire to " << m.build.terminal(at).name << " in " << s);
      blowing += !anew.empty();
    }
  CHECK(blowing > 100);
}
