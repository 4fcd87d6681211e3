// SPDX-License-Identifier: MIT
// The circuit of a build in one situation, as nodes and branches: what is solved, exported, faulted and protected.
//
// A node is a terminal (by TerminalId), then the inner points of parts, then the frame. A branch joins two nodes by one law. One
// wire is one branch: its copper, its two crimps and its two contacts in series. Switches appear as they stand; contacts and
// outputs appear always and are active or not by the relay state, so that one circuit serves while relays move.
#pragma once

#include <string>
#include <vector>

#include "base/ids.h"
#include "base/quantity.h"
#include "model/build.h"
#include "solve/solution.h"

namespace loomfolio {

/// How current through a branch (a to b) follows from the volts over it (a minus b). See branch_law.h for each formula.
enum class Law : std::uint8_t {
  conductor,         ///< volts / ohms
  source,            ///< battery: (volts - emf) / ohms, with `charge_ohms` instead where it takes current
  lamp,              ///< filament: amperes x (volts / rated volts)^0.55, its cold resistance below that
  diode,             ///< exponential, `volts` forward at 1 A
  constant_power,    ///< volts x amperes / volts over; a resistor below half its rated volts
  constant_current,  ///< amperes; a resistor below a tenth of its rated volts
  limited,           ///< volts / ohms up to `amperes` in the forward direction
  charger,           ///< gives (`volts` - volts over) / ohms, never less than nothing nor more than `amperes`
};

/// What a branch belongs to.
enum class BranchOrigin : std::uint8_t { wire, inside, earth, body, frame, input };

/// When a branch is there.
enum class GateType : std::uint8_t { always, coil, output, lit };
struct Gate {
  GateType type = GateType::always;
  int device = -1;                ///< index of the CoilDevice or OutputDevice
  bool when_in = true;            ///< coil: there while it is pulled in; else while it is not
  bool flashes = false;           ///< and only while flashers are lit
};

struct Branch {
  int a = -1, b = -1;  ///< nodes
  Law law = Law::conductor;
  Ohms ohms{0};
  Volts volts{0};      ///< emf, rated, forward or regulated
  Amperes amperes{0};  ///< rated or limiting; 0 in `limited`: no limit
  Ohms charge_ohms{0};
  Gate gate;
  BranchOrigin origin = BranchOrigin::inside;
  WireId wire;         ///< origin wire
  InsideRef inside;    ///< origin inside, input
  EarthId earth;       ///< origin earth
  TerminalId terminal; ///< origin body
};

/// A relay's coil: pulled in at or above `pull_in`, let go at or below `drop_out`, else as it was.
struct CoilDevice {
  int branch = -1;
  Volts pull_in, drop_out;
  InsideRef inside;
};

/// A control unit's driver: on when the unit is fed and all conditions hold.
struct OutputDevice {
  int branch = -1;
  int supply = -1, earth = -1;  ///< nodes
  struct Condition {
    int node = -1;
    bool when_live = true;
  };
  std::vector<Condition> conditions;
  InsideRef inside;
};

/// What was taken because the spec is silent; sheets and checks say so.
enum class AssumptionType : std::uint8_t {
  wire_length,    ///< 1 m
  wire_size,      ///< 1 mm2: size is "auto" and not yet chosen
  battery,        ///< resistance from ampere-hours
  earth_return,   ///< no wire joins the battery's earthed pole to an earth: taken as joined
  no_source,      ///< nothing feeds the circuit
};
struct Assumption {
  AssumptionType type;
  WireId wire;
  PartId part;
};

struct Circuit {
  int node_count = 0;
  int reference = -1;      ///< the battery's earthed pole: 0 V
  int frame = -1;          ///< node of the frame's metal
  int terminal_count = 0;  ///< nodes 0 .. terminal_count - 1 are terminals by TerminalId
  std::vector<int> inner_base;  ///< by PartId: node of the part's inner point 0
  std::vector<Branch> branches;
  std::vector<CoilDevice> coils;
  std::vector<OutputDevice> outputs;
  std::vector<int> wire_branch;                 ///< by WireId
  std::vector<std::vector<int>> inside_branch;  ///< [part][inside]: its first branch, -1 where it has none
  std::vector<Assumption> assumptions;
  Volts nominal{12};
};

/// Which battery, wires and fuses: the usual machine, or the safe side of a protection study.
enum class FuseHeat : std::uint8_t { cold, hot };
struct CircuitOptions {
  Celsius wire_temperature{40};
  FuseHeat fuses = FuseHeat::cold;
  Volts emf{0};                 ///< of batteries; 0: electrics.resting
  double battery_ohm_volts = 0; ///< ohms x cold cranking amperes; 0: at 25 degC
};
/// Wires at the build's ambient, cold fuses, rested battery at 25 degC.
CircuitOptions usual_options(const Build& build);

/// The circuit as the situation's switches and engine set it. Never fails: a part with missing values gets defaults.h.
Circuit make_circuit(const Build& build, SituationId situation, const CircuitOptions& options);
/// The same for a situation that is not one of the build's: everything at rest, a switch tried on the bench.
Circuit make_circuit(const Build& build, const Situation& situation, const CircuitOptions& options);

/// Relays let go, outputs off.
RelayState rest_state(const Circuit& circuit);

/// Flashers closed or open.
enum class Flash : std::uint8_t { lit, dark };

/// Whether the branch is there in that state.
bool is_active(const Branch& branch, const RelayState& state, Flash flash);

/// Node of a part's inside point; -1 where the point does not exist.
int node_of(const Build& build, const Circuit& circuit, PartId part, const Inside::Node& node);

/// The circuit's own name of a node for people and netlists: `relay.86`, `relay.inner0`, `frame`.
std::string node_name(const Build& build, const Circuit& circuit, int node);

}  // namespace loomfolio
