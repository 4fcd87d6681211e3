// SPDX-License-Identifier: MIT
// Places whose volts live on a diode's leakage alone: a meter there shows about nothing, or drifts.
#pragma once

#include <cmath>
#include <vector>

#include "solve/circuit.h"
#include "solve/islands.h"

namespace loomfolio {

/// Amperes below which a diode leaks rather than conducts; above the leakage of a usual silicon diode, from memory.
inline constexpr double diode_conducts_from = 1e-6;

/// By node: not joined to the battery's earthed pole by anything that carries, diodes that only leak left out.
/// `is_there(branch)` and `amperes(branch)` are asked by index; `joined` are pairs of nodes that hang together besides.
template <class IsThere, class AmperesOf>
std::vector<char> find_loose(const Circuit& circuit, const IsThere& is_there, const AmperesOf& amperes,
                             const std::vector<std::pair<int, int>>& joined) {
  Islands islands(circuit.node_count);
  for (std::size_t i = 0; i < circuit.branches.size(); ++i) {
    const Branch& branch = circuit.branches[i];
    const int number = static_cast<int>(i);
    if (!is_there(number)) continue;
    if (branch.law == Law::diode && std::abs(amperes(number)) < diode_conducts_from) continue;
    islands.join(branch.a, branch.b);
  }
  for (const auto& [a, b] : joined) islands.join(a, b);
  std::vector<char> loose(static_cast<std::size_t>(circuit.node_count));
  for (int node = 0; node < circuit.node_count; ++node)
    loose[static_cast<std::size_t>(node)] = islands.are_joined(node, circuit.reference) ? 0 : 1;
  return loose;
}

/// The same for a solved situation of the build.
std::vector<char> find_loose_in(const Build& build, const Solution& solution);

}  // namespace loomfolio
