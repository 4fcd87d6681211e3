// SPDX-License-Identifier: MIT
// Which wires lie together along the machine, and how hard they work.
#pragma once

#include <vector>

#include "solve/ampacity.h"
#include "solve/solution.h"

namespace loomfolio {

/// By WireId, at each wire's most crowded place. Zones stand in a row along the machine: a wire between two zones lies with all wires
/// that pass the same stretch; a wire within a zone with those within it (the safe side: there they part). Battery cables run alone.
/// Load shares are the worst over the solutions; without solutions a bundle counts as 60 % used.
std::vector<Bundle> find_bundles(const Build& build, const std::vector<Solution>& solutions);

}  // namespace loomfolio
