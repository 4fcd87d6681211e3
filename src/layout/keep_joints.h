// SPDX-License-Identifier: MIT
// Joints and wide terminals of a graph that is to stay near an earlier drawing. Only keep*.cpp include this.
#pragma once

#include <vector>

#include "layout/laid.h"

namespace loomfolio::laying {

/// Gives joints the sides and order of terminals that they were settled with, and new wires of theirs the sides that
/// are free; wires of a wide terminal keep their order, new ones come last. `graph` gets their sizes and terminals.
std::vector<SettledJoint> keep_joints(const Laid& earlier, const Graph& earlier_graph, Graph& graph);

}  // namespace loomfolio::laying
