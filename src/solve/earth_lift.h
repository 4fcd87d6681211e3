// SPDX-License-Identifier: MIT
// Parts whose earth stands above the battery's: their return is thin, long or shared with something heavy.
#pragma once

#include <vector>

#include "solve/solution.h"

namespace loomfolio {

/// What a part's return may lose: workshop practice for a lamp's earth. The starter's own return is judged by its drop.
inline constexpr Volts most_earth_lift{0.2};

struct EarthLift {
  PartId part;
  TerminalId terminal;    ///< the one that stands highest, of those that metal alone joins to earth
  SituationId situation;  ///< the worst that settled and does not crank
  Volts volts;            ///< against the battery's earthed pole, without sign
};

/// One a part that is lifted by more than `most_earth_lift`, in order of parts; connectors have no earth of their own.
std::vector<EarthLift> find_earth_lifts(const Build& build, const std::vector<Solution>& solutions);

}  // namespace loomfolio
