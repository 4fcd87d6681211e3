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
  Amperes amperes;  ///< through it from first node to second; a switch: through its most loaded joint
  bool is_on = false;      ///< lamp lit, load fed, motor turning, coil pulled in, contact or switch closed, output on, charger charging
  bool is_flashing = false;  ///< on only while a flasher's contact is closed
  bool is_dim = false;       ///< lamp lit, but under 0.70 of its test voltage: under a third of its light
  bool is_limiting = false;  ///< output or charger held at its greatest current
};

/// Why a solution may not be trusted as one state.
enum class Settling : std::uint8_t { settled, chatters, several_states, diverged };

/// Where relays and control-unit outputs stand, over the circuit's devices (solve/circuit.h).
struct RelayState {
  std::vector<char> coil_in;    ///< by CoilDevice: pulled in
  std::vector<char> output_on;  ///< by OutputDevice
  friend auto operator<=>(const RelayState&, const RelayState&) = default;
};

struct Solution {
  SituationId situation;
  Settling settling = Settling::settled;
  std::vector<std::string> unsettled_by;  ///< every coil and output that chatters, or whose state differs: `relay.coil`
  std::vector<Volts> terminal_volts;    ///< by TerminalId, against the battery's earthed pole; nan where floating
  std::vector<Amperes> wire_amperes;    ///< by WireId, positive from `from` to `to`
  std::vector<Amperes> wire_alternating;  ///< by WireId: effective, between a generator and its regulator; else 0
  std::vector<std::vector<InsideState>> insides;  ///< [part][inside]
  RelayState relays;                    ///< in which it settled
};

/// A situation solved; flashers closed (lit) while what they feed takes current, else open, as they rest.
/// Never throws; a circuit that has no single state says so in `settling`.
Solution solve_situation(const Build& build, SituationId situation);

/// All situations of the build, in order.
std::vector<Solution> solve_all(const Build& build);

/// What a person sees of that element: lit, dim, flashing, charging. `off` when none holds.
Expected observed(const Inside& inside, const InsideState& state);

}  // namespace loomfolio
