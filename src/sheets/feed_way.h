// SPDX-License-Identifier: MIT
// By which switches and contacts a consumer is fed in a solved situation.
#pragma once

#include <vector>

#include "check/paths.h"
#include "solve/solution.h"

namespace loomfolio {

/// Walks with the current from the consumer to both sides, up to a fuse, a source or the frame; where a relay's contact
/// is on the way, also from its coil. Sorted. `solution` is of `situation` in `build`.
std::vector<InsideRef> find_feed_way(const Build& build, const Paths& paths, const Situation& situation,
                                     const Solution& solution, InsideRef consumer);

}  // namespace loomfolio
