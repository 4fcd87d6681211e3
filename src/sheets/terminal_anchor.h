// SPDX-License-Identifier: MIT
// Where a part's terminal stands on a diagram: references name the field of the ring, not of the box.
#pragma once

#include <string>

#include "model/build.h"

namespace loomfolio {

inline std::string terminal_anchor(const Terminal& terminal) { return "terminal " + terminal.name; }

}  // namespace loomfolio
