// SPDX-License-Identifier: MIT
#include "sheets/situation_state.h"

#include <algorithm>
#include <cmath>

#include "base/text.h"
#include "sheets/print_text.h"

namespace loomfolio {
namespace {

int raw_node(const Kind& kind, const Inside::Node& node) {
  return node.terminal >= 0 ? node.terminal : static_cast<int>(kind.terminals.size()) + node.inner;
}

WireState make_wire_state(const Build& build, const Solution& solution, WireId wire) {
  WireState state;
  state.liveness = liveness_of(build, solution, wire);
  if (state.liveness != Liveness::flowing) return state;
  const double direct = solution.wire_amperes[wire.at()].number();
  if (std::abs(direct) >= least_flow.number()) state.direction = direct;
  state.figure = print_flow(flow_in_wire(solution, wire));
  return state;
}

void mark(std::vector<bool>& nodes, int node) {
  if (node >= 0 && static_cast<std::size_t>(node) < nodes.size()) nodes[static_cast<std::size_t>(node)] = true;
}

/// Nodes of the element that its own current passes.
void mark_live_nodes(const Kind& kind, const Inside& inside, const InsideState& state,
                     const std::vector<NodeJoint>& joints, std::vector<bool>& nodes) {
  if (std::abs(state.amperes.number()) < least_flow.number()) return;
  if (inside.type == InsideType::switch_) {
    for (const NodeJoint& joint : joints) {
      const bool is_between_live = nodes[static_cast<std::size_t>(joint.a)] || nodes[static_cast<std::size_t>(joint.b)];
      if (!is_between_live) continue;
      mark(nodes, joint.a);
      mark(nodes, joint.b);
    }
    return;
  }
  // An output passes current between its supply, or its earth, and its out.
  const bool is_output = inside.type == InsideType::output;
  const std::size_t first = is_output && inside.is_low_side ? 1 : 0, second = is_output && inside.is_low_side ? 2 : 1;
  for (const std::size_t n : {first, second})
    if (n < inside.nodes.size()) mark(nodes, raw_node(kind, inside.nodes[n]));
}

void spread_over_links(const PartState& part, std::vector<bool>& nodes) {
  for (std::size_t round = 0; round < part.links.size(); ++round)
    for (const NodeJoint& link : part.links)
      if (nodes[static_cast<std::size_t>(link.a)] || nodes[static_cast<std::size_t>(link.b)]) {
        mark(nodes, link.a);
        mark(nodes, link.b);
      }
}

}  // namespace

Amperes flow_in_wire(const Solution& solution, WireId wire) {
  const double direct = std::abs(solution.wire_amperes[wire.at()].number());
  const double alternating =
      wire.at() < solution.wire_alternating.size() ? solution.wire_alternating[wire.at()].number() : 0;
  return Amperes(std::max(direct, alternating));
}

Liveness liveness_of(const Build& build, const Solution& solution, WireId wire) {
  if (flow_in_wire(solution, wire) >= least_flow) return Liveness::flowing;
  const double least = waiting_share * build.electrics.nominal.number();
  for (const TerminalId end : {build.wire(wire).from, build.wire(wire).to}) {
    const double volts = std::abs(solution.terminal_volts[end.at()].number());
    if (volts >= least) return Liveness::waiting;  // not a number where nothing holds it
  }
  return Liveness::dead;
}

int position_in(const Build& build, const Situation& situation, InsideRef element) {
  for (const Setting& setting : situation.settings)
    if (setting.actuator == element) return setting.position;
  return build.part(element.part).insides[static_cast<std::size_t>(element.inside)].rest_position;
}

std::vector<NodeJoint> joints_of(const Build& build, const Situation& situation, const Solution& solution,
                                 InsideRef element) {
  const Part& part = build.part(element.part);
  const Kind& kind = build.kind_of(part);
  const auto index = static_cast<std::size_t>(element.inside);
  const Inside& inside = part.insides[index];
  std::vector<NodeJoint> joints;
  const auto node = [&](int n) { return raw_node(kind, inside.nodes[static_cast<std::size_t>(n)]); };
  switch (inside.type) {
    case InsideType::switch_: {
      const auto position = static_cast<std::size_t>(position_in(build, situation, element));
      if (position >= inside.positions.size()) break;
      for (const auto& group : inside.positions[position].joined)
        for (std::size_t i = 1; i < group.size(); ++i) joints.push_back({node(group[0]), node(group[i])});
      break;
    }
    case InsideType::contact:
    case InsideType::output:
      if (!solution.insides[element.part.at()][index].is_on) break;
      joints.push_back(inside.is_low_side ? NodeJoint{node(2), node(1)} : NodeJoint{node(0), node(1)});
      break;
    case InsideType::fuse:
    case InsideType::link:
    case InsideType::diode:
      joints.push_back({node(0), node(1)});
      break;
    default:
      break;
  }
  return joints;
}

PartState make_part_state(const Build& build, const Situation& situation, const Solution& solution, PartId id) {
  const Part& part = build.part(id);
  const Kind& kind = build.kind_of(part);
  PartState state;
  state.is_known = true;
  state.live_nodes.assign(kind.terminals.size() + static_cast<std::size_t>(kind.inner_points), false);
  for (const KindTerminal& terminal : kind.terminals) state.marks.push_back(terminal.id);
  for (std::size_t i = 0; i < part.insides.size(); ++i) {
    const InsideRef ref{id, static_cast<int>(i)};
    const InsideState& solved = solution.insides[id.at()][i];
    state.joints.push_back(joints_of(build, situation, solution, ref));
    if (part.insides[i].type == InsideType::link)
      state.links.insert(state.links.end(), state.joints.back().begin(), state.joints.back().end());
    SymbolState symbol;
    symbol.is_known = true;
    symbol.is_on = solved.is_on;
    state.insides.push_back(symbol);
    state.positions.push_back(part.insides[i].type == InsideType::switch_ ? position_in(build, situation, ref) : -1);
  }
  for (const Wire& wire : build.wires)
    for (std::size_t t = 0; t < part.terminals.size(); ++t) {
      const WireId wire_id{static_cast<std::int32_t>(&wire - build.wires.data())};
      if ((wire.from == part.terminals[t] || wire.to == part.terminals[t]) &&
          liveness_of(build, solution, wire_id) == Liveness::flowing)
        state.live_nodes[t] = true;
    }
  // Switches last: which of their joints carry current shows at nodes that others have marked.
  for (const bool is_switch : {false, true, true})
    for (std::size_t i = 0; i < part.insides.size(); ++i)
      if ((part.insides[i].type == InsideType::switch_) == is_switch)
        mark_live_nodes(kind, part.insides[i], solution.insides[id.at()][i], state.joints[i], state.live_nodes);
  spread_over_links(state, state.live_nodes);
  for (const TerminalId terminal : part.terminals) {
    const Volts volts = solution.terminal_volts[terminal.at()];
    state.figures.push_back(std::isnan(volts.number()) ? std::string() : print_terminal_volts(volts));
  }
  return state;
}

DiagramState make_diagram_state(const Build& build, const Situation& situation, const Solution& solution) {
  DiagramState state;
  state.is_known = true;
  for (std::size_t p = 0; p < build.parts.size(); ++p)
    state.parts.push_back(make_part_state(build, situation, solution, PartId{static_cast<std::int32_t>(p)}));
  for (std::size_t w = 0; w < build.wires.size(); ++w)
    state.wires.push_back(make_wire_state(build, solution, WireId{static_cast<std::int32_t>(w)}));
  return state;
}

std::string print_flow(Amperes amperes) {
  const double size = std::abs(amperes.number());
  if (size < 0.00005) return "0 A";
  if (size < 0.0995) return fixed(size * 1000, size < 0.00995 ? 1 : 0) + " mA";
  return print_amperes(Amperes(size)) + " A";
}

std::string print_terminal_volts(Volts volts) {
  const std::string number = fixed(volts.number(), 1);
  return (number == "-0.0" ? std::string("0.0") : number) + " V";
}

}  // namespace loomfolio
