// SPDX-License-Identifier: MIT
// What the solver gives: the state a person would see in one situation.
#pragma once

#include <string>
#include <vector>

#include "base/ids.h"
#include "base/quantity.h"
#include "model/build.h"

namespace loomfolio {

/// State of one element inside a part.
struct InsideState {
  Volts volts;      ///< over its first two nodes, first minus second
  Amperes amperes;  ///< through it from first node to second
  bool is_on = false;      ///< lamp lit, load fed, motor turning, coil pulled in, contact or switch closed, output on, charger charging
  bool is_flashing = false;
};

/// Why a solution may not be trusted as one state.
enum class Settling : std::uint8_t { settled, chatters, several_states, diverged };

struct Solution {
  SituationId situation;
  Settling settling = Settling::settled;
  std::string unsettled_by;             ///< `relay.coil` that chatters; else empty
  std::vector<Volts> terminal_volts;    ///< by TerminalId, against the battery's earthed pole; nan where floating
  std::vector<Amperes> wire_amperes;    ///< by WireId, positive from `from` to `to`
  std::vector<std::vector<InsideState>> insides;  ///< [part][inside]
};

/// A situation solved; a flashing build is solved with flashers closed (lit).
/// Never throws; a circuit that has no single state says so in `settling`.
Solution solve_situation(const Build& build, SituationId situation);

/// All situations of the build, in order.
std::vector<Solution> solve_all(const Build& build);

}  // namespace loomfolio
