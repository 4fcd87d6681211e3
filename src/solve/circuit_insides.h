// SPDX-License-Identifier: MIT
// Branches of what is inside parts. For make_circuit() only.
#pragma once

#include "solve/circuit.h"
#include "solve/islands.h"

namespace loomfolio {

/// Metal that joins its points whatever the situation: links, fuses, resistors, switches and contacts in any position.
bool is_metal_path(InsideType type);

/// Joins all points of an element.
void join_inside(const Build& build, const Circuit& circuit, PartId part, const Inside& inside, Islands& islands);

void add_insides(const Build& build, const Situation& situation, const CircuitOptions& options, Circuit& circuit);

}  // namespace loomfolio
