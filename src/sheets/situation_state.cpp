// SPDX-License-Identifier: MIT
#include "sheets/situation_state.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "base/text.h"
#include "model/spec_words.h"
#include "sheets/print_text.h"
#include "sheets/raw_node.h"

namespace loomfolio {
namespace {

void mark(std::vector<bool>& nodes, int node) {
  if (node >= 0 && static_cast<std::size_t>(node) < nodes.size()) nodes[static_cast<std::size_t>(node)] = true;
}

/// Nodes of the element that its own current passes.
void mark_live_nodes(const Kind& kind, const Inside& inside, const InsideState& state,
                     const std::vector<NodeJoint>& joints, std::vector<bool>& nodes) {
  // Alternating current has no figure at the winding: it flows where it flows in the wire at its terminal.
  const bool alternates = inside.is_winding && !inside.nodes.empty() && inside.nodes.front().terminal >= 0 &&
                          nodes[static_cast<std::size_t>(inside.nodes.front().terminal)];
  if (!alternates && std::abs(state.amperes.number()) < least_flow.number()) return;
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

bool holds_volts(const Build& build, Volts volts) {
  return std::abs(volts.number()) >= waiting_share * build.electrics.nominal.number();  // false for what floats
}

/// Inner points that hold volts: behind what is closed, and behind what would take current and finds no way on.
void mark_held_nodes(const Build& build, const Kind& kind, const Part& part, const std::vector<InsideState>& solved,
                     PartState& state, const Solution& solution) {
  const auto terminals = kind.terminals.size();
  state.held_nodes.assign(state.live_nodes.size(), false);
  for (std::size_t t = 0; t < terminals; ++t)
    state.held_nodes[t] = holds_volts(build, solution.terminal_volts[part.terminals[t].at()]);
  std::vector<NodeJoint> ways;
  for (std::size_t i = 0; i < part.insides.size(); ++i) {
    ways.insert(ways.end(), state.joints[i].begin(), state.joints[i].end());
    const Inside& inside = part.insides[i];
    const bool is_switching = inside.type == InsideType::switch_ || inside.type == InsideType::contact ||
                              inside.type == InsideType::output || inside.type == InsideType::source;
    if (is_switching || inside.nodes.size() != 2 || std::abs(solved[i].amperes.number()) >= least_flow.number())
      continue;
    if (inside.type != InsideType::diode)
      ways.push_back({raw_node(kind, inside.nodes[0]), raw_node(kind, inside.nodes[1])});
  }
  for (std::size_t round = 0; round < ways.size(); ++round)
    for (const NodeJoint& way : ways)
      for (const auto& [from, to] : {std::pair(way.a, way.b), std::pair(way.b, way.a)}) {
        const auto target = static_cast<std::size_t>(to);
        if (target >= terminals && state.held_nodes[static_cast<std::size_t>(from)]) state.held_nodes[target] = true;
      }
}

void spread_over_links(const PartState& part, std::vector<bool>& nodes) {
  for (std::size_t round = 0; round < part.links.size(); ++round)
    for (const NodeJoint& link : part.links)
      if (nodes[static_cast<std::size_t>(link.a)] || nodes[static_cast<std::size_t>(link.b)]) {
        mark(nodes, link.a);
        mark(nodes, link.b);
      }
}

/// Follows a small current from one end of a wire, against or with its way, to a consumer that may send it.
class StraySearch {
 public:
  StraySearch(const Build& build, const Solution& solution, double amperes)
      : build_(build), solution_(solution), amperes_(amperes) {}

  /// `sign` 1: to where the current comes from; -1: to where it goes.
  bool finds_consumer(TerminalId start, double sign) {
    std::vector<TerminalId> open{start};
    for (std::size_t next = 0; next < open.size(); ++next) {
      const TerminalId at = open[next];
      if (build_.terminal(at).owner == OwnerType::earth) continue;
      if (build_.terminal(at).owner == OwnerType::part && meets_consumer(at, open)) return true;
      for (std::size_t w = 0; w < build_.wires.size(); ++w) {
        const double own = solution_.wire_amperes[w].number() * sign;
        if (std::abs(own) < least_flow.number()) continue;
        const Wire& wire = build_.wires[w];
        if (own > 0 && wire.to == at) note(open, wire.from);
        if (own < 0 && wire.from == at) note(open, wire.to);
      }
    }
    return false;
  }

 private:
  static void note(std::vector<TerminalId>& open, TerminalId terminal) {
    if (std::find(open.begin(), open.end(), terminal) == open.end()) open.push_back(terminal);
  }

  bool meets_consumer(TerminalId at, std::vector<TerminalId>& open) const {
    const Terminal& terminal = build_.terminal(at);
    const auto p = static_cast<std::size_t>(terminal.owner_index);
    const Part& part = build_.parts[p];
    for (std::size_t i = 0; i < part.insides.size(); ++i) {
      const Inside& inside = part.insides[i];
      const bool is_met = std::any_of(inside.nodes.begin(), inside.nodes.end(), [&](const Inside::Node& node) {
        return node.terminal == terminal.kind_terminal;
      });
      if (!is_met) continue;
      if (inside.type == InsideType::link) {
        for (const Inside::Node& node : inside.nodes)
          if (node.terminal >= 0) note(open, part.terminals[static_cast<std::size_t>(node.terminal)]);
        continue;
      }
      const InsideState& state = solution_.insides[p][i];
      const double own = std::abs(state.amperes.number());
      if (holds_volts(build_, state.volts) && own >= least_flow.number() && amperes_ >= own * sent_share) return true;
    }
    return false;
  }

  static constexpr double sent_share = 0.1;
  const Build& build_;
  const Solution& solution_;
  double amperes_;
};

}  // namespace

bool is_stray_flow(const Build& build, const Solution& solution, WireId id) {
  const Wire& wire = build.wire(id);
  if (flow_in_wire(solution, id) >= least_return) return false;
  for (const TerminalId end : {wire.from, wire.to})
    if (holds_volts(build, solution.terminal_volts[end.at()])) return false;
  const double amperes = solution.wire_amperes[id.at()].number();
  const TerminalId source = amperes > 0 ? wire.from : wire.to, drain = amperes > 0 ? wire.to : wire.from;
  StraySearch search(build, solution, std::abs(amperes));
  return !search.finds_consumer(source, 1) && !search.finds_consumer(drain, -1);
}

Amperes flow_in_wire(const Solution& solution, WireId wire) {
  const double direct = std::abs(solution.wire_amperes[wire.at()].number());
  const double alternating =
      wire.at() < solution.wire_alternating.size() ? solution.wire_alternating[wire.at()].number() : 0;
  return Amperes(std::max(direct, alternating));
}

Liveness liveness_of(const Build& build, const Solution& solution, WireId wire) {
  if (flow_in_wire(solution, wire) >= least_flow && !is_stray_flow(build, solution, wire)) return Liveness::flowing;
  const double least = waiting_share * build.electrics.nominal.number();
  for (const TerminalId end : {build.wire(wire).from, build.wire(wire).to}) {
    const double volts = std::abs(solution.terminal_volts[end.at()].number());
    if (volts >= least) return Liveness::waiting;  // not a number where nothing holds it
  }
  return Liveness::dead;
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
  state.fed.assign(kind.terminals.size(), false);
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
    state.passed.push_back(std::abs(solved.amperes.number()) >= least_flow.number() || part.insides[i].is_winding);
    state.insides.push_back(symbol);
    state.position_names.emplace_back();
    for (const SwitchPosition& position : part.insides[i].positions)
      state.position_names.back().push_back(position_words(position.name));
    state.positions.push_back(part.insides[i].type == InsideType::switch_ ? position_in(build, situation, ref) : -1);
  }
  for (const Wire& wire : build.wires)
    for (std::size_t t = 0; t < part.terminals.size(); ++t) {
      const WireId wire_id{static_cast<std::int32_t>(&wire - build.wires.data())};
      if ((wire.from == part.terminals[t] || wire.to == part.terminals[t]) &&
          liveness_of(build, solution, wire_id) == Liveness::flowing)
        state.live_nodes[t] = state.fed[t] = true;
    }
  // Switches last: which of their joints carry current shows at nodes that others have marked.
  for (const bool is_switch : {false, true, true})
    for (std::size_t i = 0; i < part.insides.size(); ++i)
      if ((part.insides[i].type == InsideType::switch_) == is_switch)
        mark_live_nodes(kind, part.insides[i], solution.insides[id.at()][i], state.joints[i], state.live_nodes);
  spread_over_links(state, state.live_nodes);
  mark_held_nodes(build, kind, part, solution.insides[id.at()], state, solution);
  for (const TerminalId terminal : part.terminals) {
    const Volts volts = solution.terminal_volts[terminal.at()];
    state.figures.push_back(std::isnan(volts.number()) ? std::string()
                                                       : print_plain_volts(volts, build.electrics.nominal));
  }
  return state;
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
  if (size < least_flow.number()) return "0 A";
  if (size < 0.0995) return fixed(size * 1000, 0) + " mA";
  return print_amperes(Amperes(size)) + " A";
}

std::string print_plain_volts(Volts volts, Volts nominal) {
  return std::abs(volts.number()) < nominal.number() * least_volts_share ? "0 V" : print_terminal_volts(volts);
}

std::string print_terminal_volts(Volts volts) {
  const std::string number = fixed(volts.number(), 1);
  return (number == "-0.0" ? std::string("0.0") : number) + " V";
}

}  // namespace loomfolio
