// SPDX-License-Identifier: MIT
// Labels for wires that the layout found no room beside: set on the wire itself, which shows on either side of the tag.
// Only diagram_*.cpp include this.
#pragma once

#include <vector>

#include "layout/laid.h"
#include "sheets/diagram_graph.h"

namespace loomfolio {

struct SpareTag {
  std::size_t wire = 0;  ///< of the graph
  GridBox box;
  bool is_upright = false;
  bool is_number_only = false;  ///< colour and size are then told in the legend
};

/// A tag for each wire without a label that has room for one; in order of wires.
std::vector<SpareTag> find_spare_tags(const DiagramGraph& diagram, const Laid& laid);

}  // namespace loomfolio
