// SPDX-License-Identifier: MIT
// Every single fault, solved in every situation: what stops, what comes on, what reads what.
#pragma once

#include <string>
#include <vector>

#include "solve/solution.h"

namespace loomfolio {

enum class FaultType : std::uint8_t {
  wire_open,       ///< broken, or off its terminal at either end
  bad_joint,       ///< corroded: loses 3 V at the wire's worst load
  wire_to_earth,   ///< chafed through
  fuse_blown,
  contact_open,    ///< a relay's contact that never makes
  contact_stuck,   ///< that never opens
  switch_open,     ///< a joint of a switch that never makes
  switch_stuck,    ///< that never opens
  earth_loose,     ///< an earth bolt, or a part's body on its bracket
  element_dead,    ///< burnt out or open inside: lamp, load, motor, coil, winding, diode
  output_dead,     ///< a control unit's driver that never switches on
  charger_dead,    ///< a regulator that gives nothing
  battery_flat,    ///< 0.85 of its volts, ten times its resistance
  diode_reversed,  ///< fitted the wrong way round
  wire_to_live,    ///< chafed against a wire that is live with everything off; of wires that are not earthed in plain metal
};

struct Fault {
  FaultType type = FaultType::wire_open;
  WireId wire;        ///< wire faults
  TerminalId end;     ///< bad_joint: at which end; earth_loose: the body's terminal
  InsideRef inside;   ///< fuse, contact, switch, element, output, charger, battery
  int first = -1, second = -1;  ///< switch: the joint, as indices into Inside::nodes
  EarthId earth;
  double weight = 0;  ///< how likely, relative; see weigh_faults()
};

/// The faults of a build, in a fixed order: wires (open, joints, to earth), then earths, then insides.
std::vector<Fault> list_faults(const Build& build);

/// Weights from workshop practice (from memory): bulb 25, joint 20, earth 12, battery 12, switch 10, fuse 8, chafed wire 6, regulator
/// 5, relay 4, winding 3, coil 3, starter relay 2, wires chafed against each other 2; each shared among its faults. A broken wire counts
/// among the joints.
void weigh_faults(const Build& build, std::vector<Fault>& faults);

/// A person sees this element do something else than in the sound machine.
struct StateChange {
  InsideRef what;
  Expected before = Expected::off, after = Expected::off;
};

/// A terminal reads something else; nan: floating, a meter shows about 0 V.
struct Reading {
  TerminalId at;
  float volts = 0;
  bool is_loose = false;  ///< a diode's leakage alone holds it: no meter shows these volts
};

struct FaultEffect {
  std::vector<StateChange> changes;  ///< by part and inside
  std::vector<Reading> readings;     ///< terminals that moved by FaultOptions::least_volts or more, or came loose or fast, by id
  std::vector<InsideRef> blown;      ///< fuses that open, in order
  Settling settling = Settling::settled;
};

struct FaultOptions {
  Volts least_volts{0.1};
};

/// All faults in all situations. Faults that are the same to the circuit (the two joints of a wire) share their effects.
struct FaultBook {
  std::vector<Fault> faults;
  std::vector<int> effect_of;                         ///< by fault: index into each situation's effects
  std::vector<std::vector<FaultEffect>> effects;      ///< [situation][effect]
  const FaultEffect& effect(std::size_t fault, std::size_t situation) const {
    return effects[situation][static_cast<std::size_t>(effect_of[fault])];
  }
};

FaultBook solve_faults(const Build& build, const std::vector<Solution>& solutions, const FaultOptions& options);

/// A few faults only, in the same form.
FaultBook solve_these_faults(const Build& build, const std::vector<Solution>& solutions, std::vector<Fault> faults,
                             const FaultOptions& options);

}  // namespace loomfolio
