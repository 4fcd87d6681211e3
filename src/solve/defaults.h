// SPDX-License-Identifier: MIT
// What the solver takes where a spec is silent, each with where it came from. One place, so that a page can print what was used.
#pragma once

#include <string_view>

#include "base/quantity.h"
#include "model/build.h"
#include "solve/conductor.h"

namespace loomfolio {

/// Resistance where a wire meets a terminal of that form: the touching metal only, without the crimp. From memory (new, clean,
/// of the order of a maker's limit for a new contact); a corroded joint is a fault, not a default.
Ohms contact_resistance(TerminalForm form);

/// Resistance of one crimp: that of 20 mm of its wire. Common practice: a good crimp is no worse than its own length of wire.
Ohms crimp_resistance(const ConductorSize& size);

/// Contact and crimp of one wire end.
Ohms joint_resistance(const Build& build, const Wire& wire, TerminalId end);

/// Cold resistance of a fuse: maker's open data for regular blades where there is a row (from memory), else 0.080 V / rating.
Ohms cold_fuse_resistance(Amperes rating);
/// Resistance of the same fuse at its full rating: 1.44 x cold (derived from the same rows).
Ohms hot_fuse_resistance(Amperes rating);

namespace standard {
inline constexpr Ohms closed_contact{0.002};    ///< relay data sheet: 20 mV at 10 A
inline constexpr Ohms starter_contact{0.001};   ///< rating from 60 A up: 0.1 V at 100 A, from memory
inline constexpr Ohms closed_switch{0.010};     ///< from memory
inline constexpr Ohms link{0.0001};             ///< inside one part, from memory
inline constexpr Ohms connector_pair{0.005};    ///< tab and receptacle of a connector, from memory
inline constexpr Ohms earth{0.002};             ///< earth bolt through the metal to the strap, from memory; as in model/build.h
inline constexpr Ohms body{0.0005};             ///< a part's body on its bracket or on the engine, from memory
inline constexpr Ohms output_on{0.020};         ///< a control unit's driver, on, from memory
inline constexpr Ohms input_pull{4700};         ///< a control unit's input to its supply (earthed inputs) or earth (live ones), from memory
inline constexpr Ohms charger{0.020};           ///< slope of a regulated generator, from memory
inline constexpr Ohms coil_12_volt{90};         ///< plug relay data sheet, at 12 V; other voltages by equal power
inline constexpr Ohms winding{0.3};             ///< generator phase, 0.2 to 1 ohm in a trade guide
inline constexpr double pull_in_share = 0.60;   ///< of nominal; relay data sheets 6.9 to 8.4 V at 12 V
inline constexpr double drop_out_share = 0.10;  ///< of nominal; usual least figure of relay data sheets
inline constexpr Volts diode_forward{0.7};      ///< at 1 A
inline constexpr double lamp_exponent = 0.55;   ///< I ~ V^0.55, Standard Handbook for Electrical Engineers
inline constexpr double lamp_cold_share = 0.1;  ///< cold resistance over hot, trade paper
inline constexpr double cold_cranking_ohm_volts = 3.0;  ///< R at 25 degC = 3.0 V / cold cranking amperes (EN 50342), factor from memory
inline constexpr double cold_cranking_ohm_volts_cold = 5.1;  ///< the same at -18 degC: (12.6 - 7.5) V, EN 50342
inline constexpr double cranking_per_ampere_hour = 12;  ///< unknown cold cranking amperes of a starter battery, from memory
inline constexpr double charge_acceptance = 0.1;  ///< a charged battery takes 0.1 of its ampere-hours at the running voltage, from memory
inline constexpr double one_phase_share = 0.58;   ///< of a three-phase generator's power with one phase open, from memory
}  // namespace standard

}  // namespace loomfolio
