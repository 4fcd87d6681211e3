// SPDX-License-Identifier: MIT
// Current between a generator's windings and its regulator: alternating, so no part of the DC solution.
#pragma once

#include "solve/circuit.h"

namespace loomfolio {

/// Effective amperes by WireId, 0 off a generator. From what the charger gives: 0.816 of it in each of three phases (a bridge's square
/// root of 2/3), 1.11 of it in a single phase's two wires (form factor of a rectified sine): textbook relations, from memory.
std::vector<Amperes> find_alternating(const Build& build, const Circuit& circuit, const Situation& situation,
                                      const std::vector<std::vector<InsideState>>& insides);

}  // namespace loomfolio
