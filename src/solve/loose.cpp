// SPDX-License-Identifier: MIT
#include "solve/loose.h"

#include "solve/branch_law.h"
#include "solve/newton.h"

namespace loomfolio {

std::vector<char> find_loose_in(const Build& build, const Solution& solution) {
  const Circuit circuit = make_circuit(build, solution.situation, usual_options(build));
  NodeSolver solver(circuit);
  const NodeVolts nodes = solver.solve(solution.relays, Flash::lit, {});
  const auto branch = [&](int number) -> const Branch& { return circuit.branches[static_cast<std::size_t>(number)]; };
  return find_loose(
      circuit, [&](int number) { return is_active(branch(number), solution.relays, Flash::lit); },
      [&](int number) {
        const Branch& b = branch(number);
        return work(b, nodes.volts[static_cast<std::size_t>(b.a)] - nodes.volts[static_cast<std::size_t>(b.b)]).amperes;
      },
      {});
}

}  // namespace loomfolio
