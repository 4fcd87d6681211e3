// SPDX-License-Identifier: MIT
// What a wire carries for ever, and how long it stands more.
#pragma once

#include "solve/conductor.h"

namespace loomfolio {

/// One wire in still air, horizontal.
struct HeatBalanceRequest {
  Ohms per_metre_at_20;
  Millimetres conductor, outside;     ///< diameters over the metal and over the insulation
  Celsius rating, ambient;            ///< of the conductor; of the air
  double thermal_resistivity = 5.0;   ///< of the insulation, K m/W: PVC 5.0, cross-linked 3.5 (IEC 60287-2-1)
  double emissivity = 0.9;
};
struct HeatBalance {
  Amperes amperes;
  Celsius surface;                    ///< of the insulation
  double convection = 0, radiation = 0;  ///< W/(m2 K)
};
/// 0 A when the air is as hot as the rating.
HeatBalance balance_heat(const HeatBalanceRequest& request);

/// The request for a wire of a build: its size, its outside diameter as given or by default, its insulation's rating.
HeatBalanceRequest heat_balance_of(const Wire& wire, Celsius ambient);

/// Share of its free-air current a wire may carry among `wires` in a bundle that uses `load_share` (0 .. 1) of the sum of their
/// free-air currents. MIL-W-5088L / AS50881 bundle curves as digitised by a third party; above 19 wires and below 20 % continued,
/// from memory.
double bundle_factor(int wires, double load_share);

/// How many wires lie together where a wire runs in the most crowded place, and how hard they work.
struct Bundle {
  int wires = 1;
  double load_share = 1;
};
Amperes ampacity(const Wire& wire, Celsius ambient, Bundle bundle);

/// Short-circuit factor k of I2 t = k2 S2 for copper (A s^0.5 / mm2): 226 sqrt(ln((234.5 + Tf) / (234.5 + Ti))), IEC 60949.
double short_circuit_factor(Celsius start, Celsius end);
/// Greatest temperature that the insulation stands for a few seconds: PVC 160, cross-linked 250, silicone 350 degC (IEC 60364-4-43).
Celsius short_circuit_limit(Insulation insulation);

/// How long a wire that already works at its rating stands a current before its insulation's short-circuit limit: adiabatic for a
/// strong current, with the heat it gives away counted for a weak one; infinite when it never gets there. `carries` is its ampacity.
/// Starts at rating: the safe side.
Seconds withstands(const Wire& wire, Celsius ambient, Amperes carries, Amperes current);

/// Melting of a bare conductor, Onderdonk: circular mils, seconds, degC.
Amperes melting_current(double circular_mils, Seconds time, Celsius ambient);

}  // namespace loomfolio
