// SPDX-License-Identifier: MIT
// Where a ring around wires says that they are twisted together or share a sheath. Only diagram_*.cpp include this.
#pragma once

#include <vector>

#include "layout/laid.h"
#include "sheets/diagram_graph.h"

namespace loomfolio {

/// An upright or level ellipse across the wires that it holds.
struct CableRing {
  GridBox box;
  std::vector<std::size_t> wires;  ///< of the graph, from the first to the last that the ring crosses
};

/// A ring for wires of one cable wherever two or more run side by side with nothing between them and room for a ring; each wire is
/// in one ring at most. Wires that nowhere run beside another of their cable are in none.
std::vector<CableRing> find_cable_rings(const Build& build, const DiagramGraph& diagram, const Laid& laid);

}  // namespace loomfolio
