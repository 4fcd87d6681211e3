// SPDX-License-Identifier: MIT
#include "solve/wire_load.h"

#include <algorithm>
#include <cmath>

#include "solve/circuit.h"
#include "solve/protection.h"

namespace loomfolio {
namespace {

// Copper, crimps and contacts at the build's ambient, as in the solved circuit.
std::vector<Ohms> wire_ohms(const Build& build) {
  std::vector<Ohms> ohms(build.wires.size());
  if (build.situations.empty()) return ohms;
  const Circuit circuit = make_circuit(build, SituationId{0}, usual_options(build));
  for (std::size_t w = 0; w < ohms.size(); ++w) ohms[w] = circuit.branches[static_cast<std::size_t>(circuit.wire_branch[w])].ohms;
  return ohms;
}

// Direct and alternating together heat a wire as one.
double amperes_in(const Solution& solution, std::size_t wire) {
  return std::hypot(solution.wire_amperes[wire].number(), solution.wire_alternating[wire].number());
}

}  // namespace

std::vector<Amperes> find_worst_currents(const Build& build, const std::vector<Solution>& solutions) {
  std::vector<Amperes> worst(build.wires.size());
  for (const Solution& solution : solutions)
    for (std::size_t w = 0; w < worst.size(); ++w)
      worst[w] = std::max(worst[w], Amperes(amperes_in(solution, w)));
  return worst;
}

std::vector<WireLoad> find_wire_loads(const Build& build, const std::vector<Solution>& solutions, const ProtectionStudy& study) {
  constexpr double least = 1e-6;  // A
  std::vector<WireLoad> loads(build.wires.size());
  for (const Solution& solution : solutions)
    for (std::size_t w = 0; w < loads.size(); ++w) {
      const double amperes = amperes_in(solution, w);
      if (amperes < least || amperes <= loads[w].worst.number()) continue;
      loads[w].worst = Amperes(amperes);
      loads[w].situation = solution.situation;
    }
  for (const ChargingExtreme& extreme : study.charging)
    for (std::size_t w = 0; w < loads.size(); ++w) {
      const double amperes = amperes_in(extreme.solution, w);
      if (amperes <= loads[w].worst.number() + no_other_matter.number()) continue;
      loads[w].worst = Amperes(amperes);
      loads[w].situation = extreme.solution.situation;
      loads[w].charging = extreme.state;
    }
  const auto ohms = wire_ohms(build);
  for (std::size_t w = 0; w < loads.size(); ++w) {
    loads[w].drop = loads[w].worst * ohms[w];
    loads[w].ampacity = study.wires[w].ampacity;
    loads[w].fuse = study.wires[w].fuse;
    loads[w].verdict = study.wires[w].verdict;
  }
  return loads;
}

std::vector<WireLoad> find_wire_loads(const Build& build, const std::vector<Solution>& solutions) {
  return find_wire_loads(build, solutions, study_protection(build, solutions));
}

}  // namespace loomfolio
