// SPDX-License-Identifier: MIT
#pragma once

#include "model/build.h"
#include "sheets/diagram_graph.h"

namespace loomfolio {

/// Hands the wishes of [layout] on to the engine, for what stands on this diagram.
void add_wishes(const Build& build, DiagramGraph& diagram);

}  // namespace loomfolio
