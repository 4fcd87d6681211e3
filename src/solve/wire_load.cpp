// SPDX-License-Identifier: MIT
#include "solve/wire_load.h"

#include <cmath>

namespace loomfolio {

std::vector<WireLoad> find_wire_loads(const Build& build, const std::vector<Solution>& solutions) {
  std::vector<WireLoad> loads(build.wires.size());
  for (const Solution& solution : solutions)
    for (std::size_t w = 0; w < loads.size(); ++w) {
      const double amperes = std::abs(solution.wire_amperes[w].number());
      if (amperes < 1e-6 || amperes <= loads[w].worst.number()) continue;
      const Wire& wire = build.wires[w];
      loads[w].worst = Amperes(amperes);
      loads[w].situation = solution.situation;
      loads[w].drop = Volts(std::abs((solution.terminal_volts[wire.from.at()] - solution.terminal_volts[wire.to.at()]).number()));
    }
  return loads;
}

}  // namespace loomfolio
