// SPDX-License-Identifier: MIT
// Whether a generator reaches a charger.
#pragma once

#include "solve/circuit.h"

namespace loomfolio {

/// Share of its power that a charger can give: 1 when every `fed_by` terminal reaches the same generator through metal as it
/// stands, standard::one_phase_share when two of three do, 0 when the generator does not reach it. 1 for a charger without `fed_by`.
double charger_feed_share(const Build& build, const Circuit& circuit, const Situation& situation, PartId part, const Inside& charger);

}  // namespace loomfolio
