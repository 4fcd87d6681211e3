// SPDX-License-Identifier: MIT
// The wire ends that the fitter makes, each fitting once: wires that share a terminal which takes one fitting share it.
#pragma once

#include <string>
#include <vector>

#include "model/build.h"

namespace loomfolio {

struct FittedEnd {
  TerminalId terminal;
  std::vector<WireId> wires;  ///< those that the fitter joins, at least one
  std::vector<WireId> all;    ///< in the fitting, the machine's own wires with them
  SquareMillimetres area;     ///< of all the metal in the fitting, the machine's own wires with it
  std::string size;           ///< as printed: '0.75 mm²', or of several together '1.5 mm²'
};

/// In the order of the build's wires; ends in splices too, each for itself.
std::vector<FittedEnd> find_fitted_ends(const Build& build);

}  // namespace loomfolio
