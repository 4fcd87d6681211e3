// SPDX-License-Identifier: MIT
// What metal joins that nothing opens: wires, links inside parts, and all that is bolted to the frame.
#pragma once

#include <vector>

#include "model/build.h"
#include "solve/islands.h"

namespace loomfolio {

/// Points: terminals by TerminalId, then the inner points part by part, then the frame.
struct PlainMetal {
  std::vector<int> first_inner;  ///< by PartId: the number of its first inner point
  int frame = 0;                 ///< the last point
  Islands islands{0};

  int point(const Part& part, std::size_t index, const Inside::Node& node) const {
    if (node.terminal < 0) return first_inner[index] + node.inner;
    return part.terminals[static_cast<std::size_t>(node.terminal)].index;
  }
};

PlainMetal join_plain_metal(const Build& build);

}  // namespace loomfolio
