// SPDX-License-Identifier: MIT
// What lies between a charger and the battery: whose fault can leave the battery uncharged, and whose cannot.
#pragma once

#include <set>

#include "solve/faults.h"

namespace loomfolio {

/// The way of least ohms from the charger to the battery's live pole and back, as switches and relays stand.
struct ChargingPath {
  std::set<WireId> wires;
  std::set<InsideRef> insides;  ///< fuses, contacts, switches, diodes, and the charger itself
  std::set<EarthId> earths;
  std::set<TerminalId> bodies;  ///< of parts whose metal is their return
};
ChargingPath find_charging_path(const Build& build, const Solution& solution, InsideRef charger);

/// Whether the fault opens that way; `effect` is the fault's own in that situation.
bool opens_path(const ChargingPath& path, const Fault& fault, const FaultEffect& effect);

}  // namespace loomfolio
