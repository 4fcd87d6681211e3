// SPDX-License-Identifier: MIT
#include "solve/circuit.h"

#include "solve/circuit_insides.h"
#include "solve/defaults.h"
#include "solve/islands.h"
#include "solve/plain_metal.h"
#include "solve/supply.h"

namespace loomfolio {
namespace {

struct Making {
  const Build& build;
  const CircuitOptions& options;
  Circuit circuit;
};

void number_nodes(Making& m) {
  Circuit& c = m.circuit;
  c.terminal_count = static_cast<int>(m.build.terminals.size());
  int next = c.terminal_count;
  for (const Part& part : m.build.parts) {
    c.inner_base.push_back(next);
    next += m.build.kind_of(part).inner_points;
  }
  c.frame = next++;
  c.node_count = next;
  c.nominal = m.build.electrics.nominal;
}

// The battery's earthed pole; the frame where there is none.
void choose_reference(Making& m) {
  Circuit& c = m.circuit;
  c.reference = c.frame;
  if (const InsideRef battery = find_supply_poles(m.build).earthed; battery.part.is_set()) {
    const Inside& inside = m.build.part(battery.part).insides[static_cast<std::size_t>(battery.inside)];
    const int node = node_of(m.build, c, battery.part, inside.nodes[m.build.electrics.is_positive_earth ? 0 : 1]);
    if (node >= 0) c.reference = node;
    return;
  }
  c.assumptions.push_back({AssumptionType::no_source, {}, {}});
}

void add_wires(Making& m) {
  for (std::size_t i = 0; i < m.build.wires.size(); ++i) {
    const Wire& wire = m.build.wires[i];
    const WireId id{static_cast<std::int32_t>(i)};
    if (!wire.length) m.circuit.assumptions.push_back({AssumptionType::wire_length, id, {}});
    if (wire.area.number() <= 0) m.circuit.assumptions.push_back({AssumptionType::wire_size, id, {}});
    Branch branch;
    branch.a = wire.from.index;
    branch.b = wire.to.index;
    branch.ohms = wire_resistance(wire, m.options.wire_temperature) + joint_resistance(m.build, wire, wire.from) +
                  joint_resistance(m.build, wire, wire.to);
    branch.origin = BranchOrigin::wire;
    branch.wire = id;
    m.circuit.wire_branch.push_back(static_cast<int>(m.circuit.branches.size()));
    m.circuit.branches.push_back(branch);
  }
}

void join_to_frame(Circuit& circuit, int node, Ohms ohms, Branch branch) {
  branch.a = node;
  branch.b = circuit.frame;
  branch.ohms = ohms;
  circuit.branches.push_back(branch);
}

void add_earths(Making& m) {
  for (std::size_t i = 0; i < m.build.earths.size(); ++i) {
    Branch branch;
    branch.origin = BranchOrigin::earth;
    branch.earth = EarthId{static_cast<std::int32_t>(i)};
    const Earth& earth = m.build.earths[i];
    join_to_frame(m.circuit, earth.terminal.index, earth.resistance.value_or(standard::earth), branch);
  }
  // A body without a wire of its own earths where it is bolted; one with a wire is taken as standing in rubber.
  for (const Part& part : m.build.parts) {
    const Kind& kind = m.build.kind_of(part);
    for (std::size_t t = 0; t < part.terminals.size() && t < kind.terminals.size(); ++t) {
      const TerminalId terminal = part.terminals[t];
      if (kind.terminals[t].form != TerminalForm::body || has_wire(m.build, terminal)) continue;
      Branch branch;
      branch.origin = BranchOrigin::body;
      branch.terminal = terminal;
      join_to_frame(m.circuit, terminal.index, standard::body, branch);
    }
  }
}

// The other pole stands on the frame: the battery is the wrong way round, or the spec names the wrong pole.
bool is_live_pole_bolted(const Build& build) {
  const InsideRef battery = find_supply_poles(build).live;
  if (!battery.part.is_set()) return false;
  PlainMetal metal = join_plain_metal(build);
  const Part& part = build.part(battery.part);
  const Inside& inside = part.insides[static_cast<std::size_t>(battery.inside)];
  const Inside::Node& pole = inside.nodes[build.electrics.is_positive_earth ? 1 : 0];
  return metal.islands.are_joined(metal.point(part, battery.part.at(), pole), metal.frame);
}

// Joins the battery's earthed pole to the frame where no wire does, and says so.
void close_earth_return(Making& m) {
  Circuit& c = m.circuit;
  if (c.reference == c.frame) return;
  Islands islands(c.node_count);
  bool has_earth = false;
  for (const Branch& branch : c.branches) {
    has_earth = has_earth || branch.b == c.frame;
    islands.join(branch.a, branch.b);
  }
  for (std::size_t p = 0; p < m.build.parts.size(); ++p)
    for (const Inside& inside : m.build.parts[p].insides)
      if (is_metal_path(inside.type)) join_inside(m.build, c, PartId{static_cast<std::int32_t>(p)}, inside, islands);
  if (!has_earth || islands.are_joined(c.reference, c.frame) || is_live_pole_bolted(m.build)) return;
  Branch branch;
  branch.origin = BranchOrigin::frame;
  join_to_frame(c, c.reference, standard::earth, branch);
  c.assumptions.push_back({AssumptionType::earth_return, {}, {}});
}

}  // namespace

CircuitOptions usual_options(const Build& build) {
  CircuitOptions options;
  options.wire_temperature = build.electrics.ambient;
  return options;
}

Circuit make_circuit(const Build& build, SituationId situation, const CircuitOptions& options) {
  return make_circuit(build, build.situations[situation.at()], options);
}

Circuit make_circuit(const Build& build, const Situation& situation, const CircuitOptions& options) {
  Making m{build, options, {}};
  number_nodes(m);
  choose_reference(m);
  add_wires(m);
  add_earths(m);
  close_earth_return(m);
  add_insides(build, situation, options, m.circuit);
  return std::move(m.circuit);
}

RelayState rest_state(const Circuit& circuit) {
  return {std::vector<char>(circuit.coils.size(), 0), std::vector<char>(circuit.outputs.size(), 0)};
}

bool is_active(const Branch& branch, const RelayState& state, Flash flash) {
  if (branch.gate.flashes && flash == Flash::dark) return false;
  const auto device = static_cast<std::size_t>(branch.gate.device);
  switch (branch.gate.type) {
    case GateType::always:
    case GateType::lit: return true;
    case GateType::coil: return (state.coil_in[device] != 0) == branch.gate.when_in;
    case GateType::output: return state.output_on[device] != 0;
  }
  return true;
}

int node_of(const Build& build, const Circuit& circuit, PartId part, const Inside::Node& node) {
  const Part& owner = build.part(part);
  if (node.terminal >= 0 && static_cast<std::size_t>(node.terminal) < owner.terminals.size())
    return owner.terminals[static_cast<std::size_t>(node.terminal)].index;
  if (node.inner >= 0) return circuit.inner_base[part.at()] + node.inner;
  return -1;
}

std::string node_name(const Build& build, const Circuit& circuit, int node) {
  if (node == circuit.frame) return "frame";
  if (node < circuit.terminal_count) return build.terminals[static_cast<std::size_t>(node)].name;
  std::size_t part = 0;
  while (part + 1 < circuit.inner_base.size() && circuit.inner_base[part + 1] <= node) ++part;
  return build.parts[part].id + ".inner" + std::to_string(node - circuit.inner_base[part]);
}

}  // namespace loomfolio
