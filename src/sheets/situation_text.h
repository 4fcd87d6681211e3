// SPDX-License-Identifier: MIT
// What a person sees in a solved situation, in words: what works, what the battery shows.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "model/words.h"
#include "solve/solution.h"

namespace loomfolio {

/// Everything that a person sees or hears working, with how when not plainly on; empty: nothing works.
std::string working_text(const Build& build, const Solution& solution, const Words& words);

/// Parts that work in the state, as working_text() names them.
std::vector<PartId> working_parts(const Build& build, const Solution& solution);

struct BatteryReading {
  Volts volts;
  Amperes amperes;  ///< out of the battery
};

/// The first source of the build: its poles' difference and what it gives.
std::optional<BatteryReading> read_battery(const Build& build, const Solution& solution);

}  // namespace loomfolio
