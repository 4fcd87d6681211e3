// SPDX-License-Identifier: MIT
// Of a kit: which fuses and wires also carry what the machine's own wires take at its key switch, which no spec tells.
#pragma once

#include <set>
#include <vector>

#include "solve/solution.h"

namespace loomfolio {

struct OwnSupply {
  std::set<InsideRef> fuses;   ///< their figures are without it
  std::set<WireId> wires;
  std::set<PartId> switches;   ///< the machine's key switches that feed it
};

/// A lamp is hung on each live way of a key switch that the machine brings, and solved: what then carries more feeds it. Nothing where
/// the document is no kit.
OwnSupply find_own_supply(const Build& build, const std::vector<Solution>& solutions);

}  // namespace loomfolio
