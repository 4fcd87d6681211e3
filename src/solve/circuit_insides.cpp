// SPDX-License-Identifier: MIT
// One function an element type, from its values to its branch. Where a value is missing, defaults.h says what is taken.
#include "solve/circuit_insides.h"

#include <algorithm>
#include <cmath>

#include "solve/charger_feed.h"
#include "solve/defaults.h"
#include "solve/supply.h"

namespace loomfolio {
namespace {

struct Adding {
  const Build& build;
  const Situation& situation;
  const CircuitOptions& options;
  Circuit& circuit;
  PartId part;
  int index = 0;
  const Inside& inside() const { return build.part(part).insides[static_cast<std::size_t>(index)]; }
  int node(std::size_t i) const {
    return i < inside().nodes.size() ? node_of(build, circuit, part, inside().nodes[i]) : -1;
  }
};

// Adds the branch between the two nodes unless one is missing; returns its index or -1.
int add_branch(Adding& a, int from, int to, Branch branch) {
  if (from < 0 || to < 0) return -1;
  branch.a = from;
  branch.b = to;
  branch.inside = {a.part, a.index};
  a.circuit.branches.push_back(branch);
  const int number = static_cast<int>(a.circuit.branches.size()) - 1;
  int& first = a.circuit.inside_branch[a.part.at()][static_cast<std::size_t>(a.index)];
  if (first < 0 && branch.origin == BranchOrigin::inside) first = number;
  return number;
}

Branch conductor(Ohms ohms) {
  Branch branch;
  branch.ohms = ohms;
  return branch;
}

std::string_view engine_word(EngineState state) {
  switch (state) {
    case EngineState::stopped: return "stopped";
    case EngineState::cranking: return "cranking";
    case EngineState::running: return "running";
  }
  return "";
}

bool is_its_engine_state(const Adding& a) {
  return a.inside().only_when.empty() || a.inside().only_when == engine_word(a.situation.engine);
}

// Rated volts where the spec is silent: nominal for loads; 13.5 V a nominal 12 V for lamps (UN Regulation No. 37).
Volts rated_volts(const Adding& a) {
  const Inside& inside = a.inside();
  if (inside.at_voltage) return *inside.at_voltage;
  const Volts nominal = a.build.electrics.nominal;
  return inside.type == InsideType::lamp ? nominal * (13.5 / 12) : nominal;
}

// Amperes at rated volts, from current, power or resistance; nothing when none is given.
std::optional<Amperes> rated_amperes(const Adding& a) {
  const Inside& inside = a.inside();
  const Volts volts = rated_volts(a);
  if (inside.current) return *inside.current;
  if (inside.power && volts.number() > 0) return *inside.power / volts;
  if (inside.resistance && inside.resistance->number() > 0 && inside.type != InsideType::motor) return volts / *inside.resistance;
  return std::nullopt;
}

void add_source(Adding& a) {
  const Inside& inside = a.inside();
  const Electrics& electrics = a.build.electrics;
  Branch branch;
  branch.law = Law::source;
  const double part_of_whole = nominal_share(electrics, inside);
  branch.volts = (a.options.emf.number() > 0 ? a.options.emf : electrics.resting) * part_of_whole;
  const double hours = inside.capacity ? inside.capacity->number() : 0;
  const double cranking = inside.cranking ? inside.cranking->number() : hours * standard::cranking_per_ampere_hour;
  const double ohm_volts = a.options.battery_ohm_volts > 0 ? a.options.battery_ohm_volts : standard::cold_cranking_ohm_volts;
  const double share = electrics.nominal.number() / 12 * part_of_whole;  // half the cells, half the resistance
  // A stated resistance is that of a charged battery at 25 degC: it rises with cold as one reckoned from cranking amperes does.
  if (inside.resistance) branch.ohms = *inside.resistance * (ohm_volts / standard::cold_cranking_ohm_volts);
  else if (cranking > 0) branch.ohms = Ohms(ohm_volts * share / cranking);
  else branch.ohms = Ohms(0.020 * share);
  if (!inside.resistance && !inside.cranking) a.circuit.assumptions.push_back({AssumptionType::battery, {}, a.part});
  branch.charge_ohms = branch.ohms;
  const double over = (electrics.running.number() - electrics.resting.number()) * part_of_whole;
  if (hours > 0 && over > 0) branch.charge_ohms = std::max(branch.ohms, Ohms(over / (standard::charge_acceptance * hours)));
  add_branch(a, a.node(0), a.node(1), branch);
}

void add_load(Adding& a) {
  if (!is_its_engine_state(a)) return;
  const Inside& inside = a.inside();
  const auto amperes = rated_amperes(a);
  if (!amperes || amperes->number() <= 0) return;
  Branch branch;
  branch.volts = rated_volts(a);
  branch.amperes = *amperes;
  branch.ohms = branch.volts / branch.amperes;
  if (inside.law == "constant-power") branch.law = Law::constant_power;
  if (inside.law == "constant-current") branch.law = Law::constant_current;
  add_branch(a, a.node(0), a.node(1), branch);
}

void add_lamp(Adding& a) {
  const auto amperes = rated_amperes(a);
  if (!amperes || amperes->number() <= 0) return;
  Branch branch;
  branch.law = Law::lamp;
  branch.volts = rated_volts(a);
  branch.amperes = *amperes;
  branch.ohms = branch.volts / branch.amperes * standard::lamp_cold_share;
  add_branch(a, a.node(0), a.node(1), branch);
}

// A motor turning is taken as a resistor of its rated point; one that cannot turn, as its stalled resistance (a third of that
// where not given: locked rotor draws 2 to 3 times, from memory).
void add_motor(Adding& a) {
  const Inside& inside = a.inside();
  const auto amperes = rated_amperes(a);
  const Ohms turning = amperes ? rated_volts(a) / *amperes : inside.resistance.value_or(Ohms(0));
  const Ohms stalled = inside.resistance.value_or(turning / 3);
  if (turning.number() <= 0) return;
  Branch branch = conductor(is_its_engine_state(a) ? turning : stalled);
  branch.volts = rated_volts(a);
  add_branch(a, a.node(0), a.node(1), branch);
}

void add_coil(Adding& a) {
  const Inside& inside = a.inside();
  const Volts nominal = a.build.electrics.nominal;
  const double scale = nominal.number() / 12;
  CoilDevice coil;
  coil.branch = add_branch(a, a.node(0), a.node(1), conductor(inside.resistance.value_or(standard::coil_12_volt * scale * scale)));
  coil.pull_in = inside.pull_in.value_or(nominal * standard::pull_in_share);
  coil.drop_out = inside.drop_out.value_or(nominal * standard::drop_out_share);
  coil.inside = {a.part, a.index};
  a.circuit.coils.push_back(coil);
}

int coil_device(const Adding& a, const std::string& id) {
  const auto& insides = a.build.part(a.part).insides;
  for (std::size_t d = 0; d < a.circuit.coils.size(); ++d) {
    const InsideRef ref = a.circuit.coils[d].inside;
    if (ref.part == a.part && insides[static_cast<std::size_t>(ref.inside)].id == id) return static_cast<int>(d);
  }
  return -1;
}

void add_contact(Adding& a) {
  const Inside& inside = a.inside();
  const bool is_heavy = inside.rating && inside.rating->number() >= 60;
  Branch branch = conductor(inside.resistance.value_or(is_heavy ? standard::starter_contact : standard::closed_contact));
  branch.gate.flashes = inside.flashes;
  branch.gate.device = inside.coil.empty() ? -1 : coil_device(a, inside.coil);
  if (branch.gate.device >= 0) {
    branch.gate.type = GateType::coil;
    branch.gate.when_in = !inside.closed_at_rest;
  } else if (inside.flashes) {
    branch.gate.type = GateType::lit;
  } else if (!inside.closed_at_rest) {
    return;
  }
  add_branch(a, a.node(0), a.node(1), branch);
}

// A group of joined terminals is a star on its first one.
void add_switch(Adding& a) {
  const Inside& inside = a.inside();
  const auto position = static_cast<std::size_t>(position_in(a.build, a.situation, {a.part, a.index}));
  if (position >= inside.positions.size()) return;
  for (const auto& group : inside.positions[position].joined)
    for (std::size_t i = 1; i < group.size(); ++i)
      add_branch(a, a.node(static_cast<std::size_t>(group[0])), a.node(static_cast<std::size_t>(group[i])),
                 conductor(inside.resistance.value_or(standard::closed_switch)));
}

void add_fuse(Adding& a) {
  const Inside& inside = a.inside();
  const auto& choice = a.build.part(a.part).fuse_choice;
  Amperes rating{10};
  if (inside.rating) rating = *inside.rating;
  else if (!choice.empty()) rating = choice.front().most;
  const Ohms ohms = a.options.fuses == FuseHeat::hot ? hot_fuse_resistance(rating) : cold_fuse_resistance(rating);
  add_branch(a, a.node(0), a.node(1), conductor(inside.resistance.value_or(ohms)));
}

void add_diode(Adding& a) {
  Branch branch;
  branch.law = Law::diode;
  branch.volts = a.inside().forward.value_or(standard::diode_forward);
  add_branch(a, a.node(0), a.node(1), branch);
}

void add_link(Adding& a) {
  const bool is_connector = a.build.kind_of(a.build.part(a.part)).is_connector;
  const Ohms ohms = a.inside().resistance.value_or(is_connector ? standard::connector_pair : standard::link);
  add_branch(a, a.node(0), a.node(1), conductor(std::max(ohms, Ohms(1e-5))));
}

void add_resistor(Adding& a) {
  const Inside& inside = a.inside();
  if (inside.is_secondary) return;
  const Ohms standard_ohms = inside.is_winding ? standard::winding : Ohms(1);
  add_branch(a, a.node(0), a.node(1), conductor(std::max(inside.resistance.value_or(standard_ohms), Ohms(1e-5))));
}

/// The kind itself says where the input lies when nothing is wired to it: a resistor of the part ends at its node.
bool has_own_pull(const Adding& a, int node) {
  for (const Inside& inside : a.build.part(a.part).insides)
    if (inside.type == InsideType::resistor)
      for (const Inside::Node& end : inside.nodes)
        if (node_of(a.build, a.circuit, a.part, end) == node) return true;
  return false;
}

// Each input is pulled to supply when the unit waits for earth, to earth when it waits for supply: once a unit and input.
void add_input_pull(Adding& a, int node, int supply, int earth, bool when_live) {
  if (has_own_pull(a, node)) return;
  const int other = when_live ? earth : supply;
  for (const Branch& b : a.circuit.branches)
    if (b.origin == BranchOrigin::input && b.inside.part == a.part && b.a == node) return;
  Branch branch = conductor(standard::input_pull);
  branch.origin = BranchOrigin::input;
  add_branch(a, node, other, branch);
}

void add_output(Adding& a) {
  const Inside& inside = a.inside();
  OutputDevice device;
  device.supply = a.node(0);
  device.earth = a.node(2) >= 0 ? a.node(2) : a.circuit.reference;
  device.inside = {a.part, a.index};
  for (const OutputCondition& condition : inside.conditions) {
    const int node = condition.input < 0 ? -1 : a.node(static_cast<std::size_t>(condition.input));
    device.conditions.push_back({node, condition.when_live});
    if (node >= 0 && device.supply >= 0) add_input_pull(a, node, device.supply, device.earth, condition.when_live);
  }
  Branch branch = conductor(inside.resistance.value_or(standard::output_on));
  branch.law = Law::limited;
  branch.amperes = inside.rating.value_or(Amperes(0));
  branch.gate.type = GateType::output;
  branch.gate.device = static_cast<int>(a.circuit.outputs.size());
  device.branch = inside.is_low_side ? add_branch(a, a.node(1), device.earth, branch) : add_branch(a, device.supply, a.node(1), branch);
  a.circuit.outputs.push_back(device);
}

void add_charger(Adding& a) {
  if (!is_its_engine_state(a)) return;
  const Inside& inside = a.inside();
  const double share = charger_feed_share({a.build, a.circuit, a.situation, {}, {}}, a.part, inside);
  if (share <= 0) return;
  Branch branch;
  branch.law = Law::charger;
  branch.volts = inside.at_voltage.value_or(a.build.electrics.running);
  branch.ohms = inside.resistance.value_or(standard::charger);
  if (inside.power) branch.amperes = *inside.power * share / branch.volts;
  add_branch(a, a.node(0), a.node(1), branch);
}

void add_inside(Adding& a) {
  switch (a.inside().type) {
    case InsideType::source: return add_source(a);
    case InsideType::load: return add_load(a);
    case InsideType::lamp: return add_lamp(a);
    case InsideType::motor: return add_motor(a);
    case InsideType::coil: return add_coil(a);
    case InsideType::contact: return add_contact(a);
    case InsideType::switch_: return add_switch(a);
    case InsideType::fuse: return add_fuse(a);
    case InsideType::diode: return add_diode(a);
    case InsideType::resistor: return add_resistor(a);
    case InsideType::link: return add_link(a);
    case InsideType::output: return add_output(a);
    case InsideType::charger: return add_charger(a);
  }
}

}  // namespace

bool is_metal_path(InsideType type) {
  return type == InsideType::link || type == InsideType::fuse || type == InsideType::resistor ||
         type == InsideType::switch_ || type == InsideType::contact;
}

void join_inside(const Build& build, const Circuit& circuit, PartId part, const Inside& inside, Islands& islands) {
  int first = -1;
  for (const Inside::Node& point : inside.nodes) {
    const int node = node_of(build, circuit, part, point);
    if (node < 0) continue;
    if (first < 0) first = node;
    islands.join(first, node);
  }
}

void add_insides(const Build& build, const Situation& situation, const CircuitOptions& options, Circuit& circuit) {
  circuit.inside_branch.resize(build.parts.size());
  for (std::size_t p = 0; p < build.parts.size(); ++p)
    circuit.inside_branch[p].assign(build.parts[p].insides.size(), -1);
  // Coils first: contacts refer to them.
  for (const bool wants_coils : {true, false})
    for (std::size_t p = 0; p < build.parts.size(); ++p)
      for (std::size_t i = 0; i < build.parts[p].insides.size(); ++i) {
        if ((build.parts[p].insides[i].type == InsideType::coil) != wants_coils) continue;
        Adding adding{build, situation, options, circuit, PartId{static_cast<std::int32_t>(p)}, static_cast<int>(i)};
        add_inside(adding);
      }
}

}  // namespace loomfolio
