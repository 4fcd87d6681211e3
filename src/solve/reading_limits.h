// SPDX-License-Identifier: MIT
// Between which volts a sound machine may read where the solved one reads so much.
#pragma once

#include <vector>

#include "solve/solution.h"

namespace loomfolio {

/// How far a sound machine may be from the described one.
namespace sound {
inline constexpr double least_charge = 0.75;     ///< of the battery; the loss of volts is that of the trade table in battery.cpp
inline constexpr Volts freshest{0.5};            ///< above the spec's resting volts, on 12 V: fresh from the charger; common practice, no source
inline constexpr double battery_ohms = 1.5;      ///< times: older and colder, from memory
inline constexpr Volts regulator{0.3};           ///< either way, on 12 V, from memory
inline constexpr double longer = 1.1, shorter = 0.9;           ///< times a wire's length: cut to fit, common practice
inline constexpr double worn_joint = 3.0, best_joint = 0.5;    ///< times a new joint's ohms, from memory
inline constexpr double meter_share = 0.005;     ///< of the reading: a common hand meter, from memory
inline constexpr Volts meter_digits{0.02};       ///< and two digits of its 20 V range
}  // namespace sound

/// By TerminalId, against the battery's earthed pole; nan where nothing holds the place.
struct ReadingLimits {
  std::vector<Volts> least, most;
};

/// Solves the situation at the four corners of battery and joints with relays as they stand, and adds the meter's own error.
/// `solution` is of the build.
ReadingLimits find_reading_limits(const Build& build, const Solution& solution);

}  // namespace loomfolio
