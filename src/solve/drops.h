// SPDX-License-Identifier: MIT
// Volts lost on the way to each load and back, by function, against the build's limits.
#pragma once

#include <vector>

#include "solve/solution.h"

namespace loomfolio {

enum class Function : std::uint8_t { starter, charging, lighting, ignition, control, other };

/// What an element counts as: starter motors, chargers, lamps, what is in a part of group ignition, relay coils, the rest.
Function function_of(const Build& build, InsideRef element);
Volts limit_for(const DropLimits& limits, Function function);

struct LoopDrop {
  InsideRef element;
  SituationId situation;  ///< worst
  Function function = Function::other;
  Volts total{0};   ///< source's poles less the element; a charger: its poles less the battery's
  Volts feed{0};    ///< from the live pole to its nearer end
  Volts back{0};    ///< from its other end to the earthed pole
  Volts limit{0};
  bool is_in_series = false;  ///< fed through another load (below half its volts): the figure is no loss in wires
};

/// One an element that is on in some situation, in order of parts.
std::vector<LoopDrop> find_loop_drops(const Build& build, const std::vector<Solution>& solutions);

}  // namespace loomfolio
