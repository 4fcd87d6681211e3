// SPDX-License-Identifier: MIT
// Which poles of which battery are the machine's: where the black probe stays, and what feeds everything.
#pragma once

#include "model/build.h"

namespace loomfolio {

/// Of one battery the same twice. Of batteries in series the one at the frame and the one at the far end; of batteries side by
/// side the first. Unset parts: no battery.
struct SupplyPoles {
  InsideRef earthed, live;  ///< the sources that have them
};
SupplyPoles find_supply_poles(const Build& build);

/// A battery's share of the machine's nominal volts: a half for each of two 6 V ones in series at 12 V.
double nominal_share(const Electrics& electrics, const Inside& source);

}  // namespace loomfolio
