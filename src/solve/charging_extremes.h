// SPDX-License-Identifier: MIT
// What flows when the generator charges an empty battery, and when it gives nothing: more than a full battery and sound charging ask of a
// fuse or a wire.
#pragma once

#include <vector>

#include "solve/solution.h"

namespace loomfolio {

enum class ChargeState : std::uint8_t {
  as_stated,   ///< the battery as [electrics] has it, the chargers sound
  dead,        ///< no charger gives anything: the battery feeds what they did
  into_empty,  ///< the battery is empty and takes all that the chargers have left over, as far as their own limit
};

/// What more than as stated is no other matter: the battery's volts differ a little from the generator's.
inline constexpr Amperes no_other_matter{0.5};

struct ChargingExtreme {
  ChargeState state = ChargeState::as_stated;
  Solution solution;
};

/// Both for each of the solved situations in which a charger gives something. An empty battery rests at what battery.h gives for no
/// charge, and takes current over its own resistance alone: the safe side, since a worn one takes less.
std::vector<ChargingExtreme> solve_charging_extremes(const Build& build, const std::vector<Solution>& solutions);

}  // namespace loomfolio
