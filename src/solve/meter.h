// SPDX-License-Identifier: MIT
// What a meter reads on the machine: volts between two terminals, amperes through a wire, ohms with the battery off.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "solve/solution.h"

namespace loomfolio {

enum class MeterUse : std::uint8_t { volts, amperes, ohms };

/// Where the probes are. Volts: red on `red`, black on `black` (unset: the battery's earthed pole). Amperes: through `wire`.
struct MeterPlace {
  MeterUse use = MeterUse::volts;
  TerminalId red, black;
  WireId wire;
};

/// Reads 'headlamp.56a', 'headlamp.56a headlamp.31', 'E1', 'wire 12', 'ohms fuse.in fuse.out'; nothing when a name is not known, and
/// `unknown` then holds it.
std::optional<MeterPlace> find_meter_place(const Build& build, std::string_view where, std::string& unknown);

struct MeterAnswer {
  double number = 0;        ///< V, A or ohm; infinite ohms: open
  bool is_floating = false; ///< volts: nothing holds the place, the meter itself decides and shows about 0 V
};

/// The meter's 10 megohm are in the circuit, so that a place nothing holds reads as it would. `solution` is of the build.
MeterAnswer read_meter(const Build& build, const Solution& solution, const MeterPlace& place);

/// Ohms between two terminals as the situation's switches stand: battery and generator off, relays at rest, filaments cold, the
/// meter's fifth of a volt too little for a diode. A bulb reads about a tenth of its hot resistance.
MeterAnswer read_ohms(const Build& build, const Situation& situation, TerminalId red, TerminalId black);

/// Volts that the diode range shows, its 2.5 V behind 2.5 kilohm (from memory of usual meters), the machine as for
/// read_ohms(); infinite: OL.
MeterAnswer read_diode_range(const Build& build, const Situation& situation, TerminalId red, TerminalId black);

/// The terminals of the supply's poles (solve/supply.h); unset without a battery.
TerminalId earthed_pole(const Build& build);
TerminalId live_pole(const Build& build);

}  // namespace loomfolio
