// SPDX-License-Identifier: MIT
// Volts lost on the way to each load and back, by function, against the build's limits.
#pragma once

#include <string_view>
#include <vector>

#include "solve/solution.h"

namespace loomfolio {

/// What a load's loop may lose volts for; not the function that a diagram shows (layout/split.h).
enum class DropFunction : std::uint8_t { starter, charging, lighting, ignition, control, other };

/// What an element counts as, by itself and by the group of its kind: starter motors, chargers, coils, what is in a
/// part of group ignition, lamps and what else gives light (a lamp of an instrument is no lighting), the rest.
DropFunction drop_function_of(const Build& build, InsideRef element);
/// The volts that its whole loop may lose.
Volts drop_limit(const DropLimits& limits, DropFunction function);
/// 'lighting': the key of its limit in the spec.
std::string_view word_of(DropFunction function);

struct LoopDrop {
  InsideRef element;
  SituationId situation;  ///< worst
  DropFunction function = DropFunction::other;
  Volts total{0};  ///< source's poles less the element; a charger: its poles less the battery's
  Volts feed{0};   ///< from the live pole to its nearer end
  Volts back{0};   ///< from its other end to the earthed pole
  Volts limit{0};
  bool is_in_series = false;  ///< fed through another load (below half its volts): the figure is no loss in wires
};

/// One an element that is on in some situation, in order of parts.
std::vector<LoopDrop> find_loop_drops(const Build& build, const std::vector<Solution>& solutions);

}  // namespace loomfolio
