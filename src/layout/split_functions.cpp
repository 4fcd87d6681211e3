// SPDX-License-Identifier: MIT
// Each consumer has a function, by its kind's group. All wires on a way from it to the first fuse, and to earth, serve
// that function; what lies beyond the fuse serves the supply. A relay's coil serves what its contacts feed, an input of
// a control unit what its outputs feed; so these come in later rounds. A wire that serves several functions is drawn
// with the one most consumers on it belong to.
#include <algorithm>
#include <array>
#include <optional>

#include "layout/split.h"
#include "layout/split_paths.h"

namespace loomfolio {
namespace {

using namespace splitting;
using Tally = std::array<int, function_count>;

constexpr int most_rounds = 5, full_weight = 2, tell_tale_weight = 1;

/// On equal counts the earlier one draws the wire: what runs a machine before what tells of it.
constexpr std::array<Function, function_count> preference{
    Function::ignition,    Function::starting, Function::charging,    Function::lighting, Function::signalling,
    Function::accessories, Function::control,  Function::instruments, Function::supply};

std::optional<Function> function_of_group(const std::string& group) {
  for (int f = 0; f < function_count; ++f)
    if (name_of(static_cast<Function>(f)) == group) return static_cast<Function>(f);
  return std::nullopt;
}

/// Stop lamps and turn signals are signals even in a part of lighting; DIN 72552 marks tell them.
std::optional<Function> function_of_element(const Kind& kind, const Inside& inside) {
  if (kind.group == "lighting" || kind.group == "signalling")
    for (const Inside::Node& node : inside.nodes) {
      if (node.terminal < 0) continue;
      const std::string& mark = kind.terminals[static_cast<std::size_t>(node.terminal)].id;
      if (mark == "54" || mark == "L" || mark == "R" || mark.starts_with("49")) return Function::signalling;
      if (mark == "58" || mark.starts_with("56")) return Function::lighting;
    }
  const auto by_group = function_of_group(kind.group);
  if (by_group && *by_group != Function::supply && *by_group != Function::control) return by_group;
  return std::nullopt;
}

/// A consumer: two points between which current does its work, or an input's way to what earths or feeds it.
struct Consumer {
  int part = -1, inside = -1;
  int a = -1, b = -1;  ///< nodes; b may be -1
  bool is_coil = false;
  bool is_input = false;
};

struct Tracer {
  const Build& build;
  Circuit circuit;
  std::vector<Consumer> consumers;
  std::vector<Tally> near, far;                ///< by conductor: consumers it serves before and beyond a fuse
  std::vector<std::optional<Function>> known;  ///< by consumer
};

bool is_consumer(const Inside& inside) {
  switch (inside.type) {
    case InsideType::load:
    case InsideType::lamp:
    case InsideType::motor:
    case InsideType::coil:
    case InsideType::charger:
      return true;
    case InsideType::resistor:
      return !inside.is_winding && !inside.is_secondary;
    default:
      return false;
  }
}

void add_inputs(Tracer& tracer, int part, int index) {
  const Inside& inside = tracer.build.parts[static_cast<std::size_t>(part)].insides[static_cast<std::size_t>(index)];
  for (const OutputCondition& condition : inside.conditions) {
    const Inside::Node& node = inside.nodes[static_cast<std::size_t>(condition.input)];
    tracer.consumers.push_back({part, index, node_of(tracer.circuit, tracer.build, part, node), -1, false, true});
  }
}

void collect_consumers(Tracer& tracer) {
  for (std::size_t p = 0; p < tracer.build.parts.size(); ++p) {
    const Part& part = tracer.build.parts[p];
    for (std::size_t i = 0; i < part.insides.size(); ++i) {
      const Inside& inside = part.insides[i];
      const auto place = [&](int n) {
        return node_of(tracer.circuit, tracer.build, static_cast<int>(p), inside.nodes[static_cast<std::size_t>(n)]);
      };
      if (inside.type == InsideType::output) add_inputs(tracer, static_cast<int>(p), static_cast<int>(i));
      if (!is_consumer(inside) || inside.nodes.size() < 2) continue;
      const bool is_coil = inside.type == InsideType::coil;
      tracer.consumers.push_back({static_cast<int>(p), static_cast<int>(i), place(0), place(1), is_coil, false});
      // What feeds a charger runs from phase to phase.
      for (std::size_t f = 0; f < inside.fed_by.size(); ++f)
        tracer.consumers.push_back({static_cast<int>(p), static_cast<int>(i), place(inside.fed_by[f]),
                                    place(inside.fed_by[(f + 1) % inside.fed_by.size()]), false, false});
    }
  }
}

int most_served(const Tally& tally) {
  int best = -1;
  for (Function f : preference) {
    const int index = static_cast<int>(f);
    const int count = tally[static_cast<std::size_t>(index)];
    if (count > 0 && (best < 0 || count > tally[static_cast<std::size_t>(best)])) best = index;
  }
  return best;
}

struct Served {
  std::vector<int> near, far;

  void add(const Circuit& circuit, int from, const std::vector<int>& ways) {
    const std::vector<int> first = before_fuses(circuit, ways, from);
    near.insert(near.end(), first.begin(), first.end());
    far.insert(far.end(), ways.begin(), ways.end());
  }
};

/// There is a way, be it of no length.
bool is_way(int from, int to, const std::vector<int>& ways) { return from == to || !ways.empty(); }

void trace(Tracer& tracer, const Consumer& consumer, Function function) {
  const Circuit& circuit = tracer.circuit;
  const auto f = static_cast<std::size_t>(function);
  const int weight = function == Function::instruments ? tell_tale_weight : full_weight;
  Served served;
  const auto ways = [&](int from, int to, int barred) {
    return from < 0 ? std::vector<int>{} : find_ways(circuit, from, to, {barred});
  };
  const auto add = [&](int from, const std::vector<int>& found) {
    if (from >= 0) served.add(circuit, from, found);
  };
  // Current takes one way round: from the supply into one end and out of the other to earth. Only when neither way
  // round is whole does every piece count.
  const std::vector<int> in_a = ways(consumer.a, circuit.supply, circuit.earth),
                         out_b = ways(consumer.b, circuit.earth, circuit.supply);
  const std::vector<int> in_b = ways(consumer.b, circuit.supply, circuit.earth),
                         out_a = ways(consumer.a, circuit.earth, circuit.supply);
  const bool a_to_b = is_way(consumer.a, circuit.supply, in_a) && is_way(consumer.b, circuit.earth, out_b);
  const bool b_to_a = is_way(consumer.b, circuit.supply, in_b) && is_way(consumer.a, circuit.earth, out_a);
  if (a_to_b || !b_to_a) {
    add(consumer.a, in_a);
    add(consumer.b, out_b);
  }
  if (b_to_a || !a_to_b) {
    add(consumer.b, in_b);
    add(consumer.a, out_a);
  }
  if (consumer.b >= 0) add(consumer.a, find_ways(circuit, consumer.a, consumer.b, {circuit.supply, circuit.earth}));
  for (auto* list : {&served.near, &served.far}) {
    std::sort(list->begin(), list->end());
    list->erase(std::unique(list->begin(), list->end()), list->end());
  }
  for (int c : served.near) tracer.near[static_cast<std::size_t>(c)][f] += weight;
  for (int c : served.far) tracer.far[static_cast<std::size_t>(c)][f] += weight;
}

/// What a coil or an input works for, once what it switches is known.
std::optional<Function> function_of_switching(const Tracer& tracer, const Consumer& consumer) {
  Tally near{}, far{};
  const Part& part = tracer.build.parts[static_cast<std::size_t>(consumer.part)];
  const Inside& own = part.insides[static_cast<std::size_t>(consumer.inside)];
  for (std::size_t c = 0; c < tracer.circuit.conductors.size(); ++c) {
    const Conductor& conductor = tracer.circuit.conductors[c];
    if (conductor.part != consumer.part) continue;
    const Inside& inside = part.insides[static_cast<std::size_t>(conductor.inside)];
    const bool is_moved = consumer.is_coil ? inside.type == InsideType::contact && inside.coil == own.id
                                           : conductor.inside == consumer.inside;
    if (!is_moved) continue;
    for (std::size_t f = 0; f < near.size(); ++f) {
      near[f] += tracer.near[c][f];
      far[f] += tracer.far[c][f];
    }
  }
  if (const int best = most_served(near); best >= 0) return static_cast<Function>(best);
  if (most_served(far) >= 0) return Function::supply;
  return std::nullopt;
}

void trace_all(Tracer& tracer) {
  for (int round = 0; round < most_rounds; ++round) {
    bool found = false;
    for (std::size_t n = 0; n < tracer.consumers.size(); ++n) {
      if (tracer.known[n]) continue;
      const Consumer& consumer = tracer.consumers[n];
      const Part& part = tracer.build.parts[static_cast<std::size_t>(consumer.part)];
      std::optional<Function> function;
      if (consumer.is_coil || consumer.is_input) {
        if (round > 0) function = function_of_switching(tracer, consumer);
      } else {
        function =
            function_of_element(tracer.build.kind_of(part), part.insides[static_cast<std::size_t>(consumer.inside)]);
        if (!function) function = function_of_group(tracer.build.kind_of(part).group);
      }
      if (!function) continue;
      tracer.known[n] = function;
      trace(tracer, consumer, *function);
      found = true;
    }
    if (!found && round > 0) break;
  }
}

/// The earth straps of the battery belong to what draws most through them.
bool is_strap(const Build& build, const Wire& wire) {
  const auto is_earth = [&](TerminalId t) { return build.terminal(t).owner == OwnerType::earth; };
  const auto is_battery = [&](TerminalId t) {
    const Terminal& terminal = build.terminal(t);
    return terminal.owner == OwnerType::part &&
           build.kind_of(build.parts[static_cast<std::size_t>(terminal.owner_index)]).group == "supply";
  };
  return (is_earth(wire.from) && is_battery(wire.to)) || (is_battery(wire.from) && is_earth(wire.to));
}

Function function_of_strap(const Build& build, const std::vector<std::optional<Function>>& found, const Wire& strap) {
  for (std::size_t w = 0; w < build.wires.size(); ++w)
    if (found[w] == Function::starting && build.wires[w].area.number() > 0 &&
        build.wires[w].area.number() <= strap.area.number() * 1.05 &&
        build.wires[w].area.number() >= strap.area.number() * 0.6)
      return Function::starting;
  return Function::supply;
}

/// A wire that no current takes goes with its neighbours at a splice or a part, else with the group of a part at its
/// end.
void fill_from_neighbours(const Build& build, std::vector<std::optional<Function>>& found) {
  const auto at = wires_at_terminals(build);
  for (int round = 0; round < 3; ++round)
    for (std::size_t w = 0; w < build.wires.size(); ++w) {
      if (found[w]) continue;
      for (TerminalId end : {build.wires[w].from, build.wires[w].to})
        for (WireId other : at[end.at()])
          if (!found[w] && other.at() != w && found[other.at()] && build.terminal(end).owner != OwnerType::earth)
            found[w] = found[other.at()];
    }
  for (std::size_t w = 0; w < build.wires.size(); ++w) {
    if (found[w]) continue;
    for (TerminalId end : {build.wires[w].from, build.wires[w].to}) {
      const Terminal& terminal = build.terminal(end);
      if (terminal.owner != OwnerType::part || found[w]) continue;
      found[w] = function_of_group(build.kind_of(build.parts[static_cast<std::size_t>(terminal.owner_index)]).group);
    }
  }
}

}  // namespace

std::string_view name_of(Function function) {
  return diagram_functions[static_cast<std::size_t>(function)];
}

std::vector<Function> find_functions(const Build& build) {
  Tracer tracer{build, make_circuit(build), {}, {}, {}, {}};
  collect_consumers(tracer);
  tracer.near.resize(tracer.circuit.conductors.size(), Tally{});
  tracer.far.resize(tracer.circuit.conductors.size(), Tally{});
  tracer.known.resize(tracer.consumers.size());
  trace_all(tracer);
  std::vector<std::optional<Function>> found(build.wires.size());
  for (std::size_t c = 0; c < tracer.circuit.conductors.size(); ++c) {
    const int wire = tracer.circuit.conductors[c].wire;
    if (wire < 0) continue;
    if (const int best = most_served(tracer.near[c]); best >= 0)
      found[static_cast<std::size_t>(wire)] = static_cast<Function>(best);
    else if (most_served(tracer.far[c]) >= 0)
      found[static_cast<std::size_t>(wire)] = Function::supply;
  }
  for (std::size_t w = 0; w < build.wires.size(); ++w)
    if (is_strap(build, build.wires[w])) found[w] = function_of_strap(build, found, build.wires[w]);
  fill_from_neighbours(build, found);
  std::vector<Function> functions;
  for (const auto& function : found) functions.push_back(function.value_or(Function::supply));
  for (std::size_t w = 0; w < build.layout.sheet_of_wire.size(); ++w)
    if (const auto wished = function_of_group(std::string(build.layout.sheet_of_wire[w]))) functions[w] = *wished;
  return functions;
}

}  // namespace loomfolio
