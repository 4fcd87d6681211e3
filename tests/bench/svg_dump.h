// SPDX-License-Identifier: MIT
// A plain SVG of a layout, for looking at the engine's work without the rest of the program.
#pragma once

#include <string>

#include "layout/laid.h"

namespace loomfolio {

std::string dump_svg(const Graph& graph, const Laid& laid);

}  // namespace loomfolio
