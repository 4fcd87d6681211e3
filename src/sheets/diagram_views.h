// SPDX-License-Identifier: MIT
// Which terminals of a part a diagram shows. Only diagram_*.cpp include this.
#pragma once

#include <vector>

#include "sheets/diagram_graph.h"

namespace loomfolio {

/// A terminal as a diagram sees it.
struct TerminalUse {
  bool is_shown = false;
  std::vector<std::size_t> wires;      ///< indices into the plan's wires that end here
  std::vector<std::size_t> elsewhere;  ///< diagrams that draw its other wires, ascending
};

/// By TerminalId of the build.
std::vector<TerminalUse> find_uses(const GraphRequest& request);

}  // namespace loomfolio
