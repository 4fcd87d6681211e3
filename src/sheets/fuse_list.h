// SPDX-License-Identifier: MIT
// The fuses that a build uses.
#pragma once

#include <vector>

#include "model/build.h"

namespace loomfolio {

/// All fuses between wires, in the order of parts; ways of a fuse box that no wire leaves are left out.
std::vector<InsideRef> list_fuses(const Build& build);

/// What stands in the circuit for a fuse that is not in.
inline constexpr Ohms pulled_fuse{1e9};

}  // namespace loomfolio
