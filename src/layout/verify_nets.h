// SPDX-License-Identifier: MIT
#pragma once

#include <vector>

#include "layout/segments.h"
#include "layout/verify.h"

namespace loomfolio::laying {

/// The promises between wires: distance, crossings, dots, and the netlist re-read from lines and dots.
void verify_nets(const Graph& graph, const Laid& laid, const std::vector<Segment>& segments, std::vector<Violation>& out);

}  // namespace loomfolio::laying
