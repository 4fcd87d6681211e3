// SPDX-License-Identifier: MIT
// A conductor lies on a simple path from s to t exactly when it is in the same biconnected piece as an edge laid from s
// to t. So the edge is laid, and one depth-first search from s finds the pieces (Hopcroft and Tarjan, 1973); the one
// that holds the laid edge is the answer. The search keeps its own stack: circuits can be long chains.
#include "layout/split_paths.h"

#include <algorithm>
#include <numeric>

namespace loomfolio::splitting {
namespace {

bool is_conductor(const Inside& inside) {
  switch (inside.type) {
    case InsideType::contact:
    case InsideType::switch_:
    case InsideType::fuse:
    case InsideType::diode:
    case InsideType::link:
    case InsideType::output:
      return true;
    case InsideType::resistor:
      return inside.is_winding || inside.is_secondary;
    default:
      return false;
  }
}

void add_conductor(Circuit& circuit, const Conductor& conductor) {
  if (conductor.a == conductor.b) return;
  const auto index = static_cast<int>(circuit.conductors.size());
  circuit.conductors.push_back(conductor);
  circuit.at[static_cast<std::size_t>(conductor.a)].push_back(index);
  circuit.at[static_cast<std::size_t>(conductor.b)].push_back(index);
}

using Pairs = std::vector<std::pair<int, int>>;

Pairs pairs_in(const SwitchPosition& position) {
  Pairs pairs;
  for (const auto& joined : position.joined)
    for (std::size_t i = 1; i < joined.size(); ++i) pairs.emplace_back(joined[i - 1], joined[i]);
  return pairs;
}

/// For each point of the element, the lowest point it hangs together with.
std::vector<int> groups_of(const Pairs& pairs, std::size_t points) {
  std::vector<int> group(points);
  std::iota(group.begin(), group.end(), 0);
  for (const auto& [a, b] : pairs) {
    const int ga = group[static_cast<std::size_t>(a)], gb = group[static_cast<std::size_t>(b)];
    std::replace(group.begin(), group.end(), std::max(ga, gb), std::min(ga, gb));
  }
  return group;
}

/// Whether two terminals hang together by the pairs and not by those of any single position.
bool joins_falsely(const Inside& inside, const Pairs& pairs) {
  const std::size_t points = inside.nodes.size();
  const std::vector<int> group = groups_of(pairs, points);
  for (std::size_t a = 0; a < points; ++a)
    for (std::size_t b = 0; b < a; ++b) {
      if (inside.nodes[a].terminal < 0 || inside.nodes[b].terminal < 0 || group[a] != group[b]) continue;
      const bool is_true =
          std::any_of(inside.positions.begin(), inside.positions.end(), [&](const SwitchPosition& position) {
            const std::vector<int> own = groups_of(pairs_in(position), points);
            return own[a] == own[b];
          });
      if (!is_true) return true;
    }
  return false;
}

/// What a switch may join, over all its positions. Where it joins terminals to points inside the part, two positions
/// together would short what none of them does (heaters in series, then in parallel): such a position is left out.
Pairs pairs_of_switch(const Inside& inside) {
  const bool has_inner =
      std::any_of(inside.nodes.begin(), inside.nodes.end(), [](auto& node) { return node.terminal < 0; });
  Pairs pairs;
  for (const SwitchPosition& position : inside.positions) {
    Pairs more = pairs;
    for (const auto& pair : pairs_in(position)) more.push_back(pair);
    if (!has_inner || !joins_falsely(inside, more)) pairs = std::move(more);
  }
  return pairs;
}

/// Pairs of an element's points that it may join.
Pairs joined_pairs(const Inside& inside) {
  Pairs pairs;
  if (inside.type == InsideType::output) {
    if (inside.nodes.size() >= 3) pairs.emplace_back(1, inside.is_low_side ? 2 : 0);
  } else if (inside.type == InsideType::switch_) {
    pairs = pairs_of_switch(inside);
  } else if (inside.nodes.size() >= 2) {
    pairs.emplace_back(0, 1);
  }
  std::sort(pairs.begin(), pairs.end());
  pairs.erase(std::unique(pairs.begin(), pairs.end()), pairs.end());
  return pairs;
}

void merge(Circuit& circuit, int node, int into) { circuit.stands_for[static_cast<std::size_t>(node)] = into; }

/// The supply is the pole that is not earthed; where there is no source, what charges stands for it.
void merge_poles(Circuit& circuit, const Build& build, InsideType source) {
  const int poles[2] = {build.electrics.is_positive_earth ? circuit.earth : circuit.supply,
                        build.electrics.is_positive_earth ? circuit.supply : circuit.earth};
  for (std::size_t p = 0; p < build.parts.size(); ++p)
    for (const Inside& inside : build.parts[p].insides) {
      if (inside.type != source || inside.nodes.size() < 2) continue;
      for (std::size_t pole = 0; pole < 2; ++pole)
        merge(circuit, node_of(circuit, build, static_cast<int>(p), inside.nodes[pole]), poles[pole]);
    }
}

/// All earths are one node, and so are bodies bolted down.
void merge_earths(Circuit& circuit, const Build& build) {
  for (const Earth& earth : build.earths) merge(circuit, earth.terminal.index, circuit.earth);
  const auto wired = wires_at_terminals(build);
  for (const Part& part : build.parts)
    for (std::size_t t = 0; t < part.terminals.size(); ++t)
      if (build.kind_of(part).terminals[t].form == TerminalForm::body && wired[part.terminals[t].at()].empty())
        merge(circuit, part.terminals[t].index, circuit.earth);
}

struct Step {
  int node = -1;
  int arrived_by = -1;   ///< conductor, -2: the laid edge
  std::size_t next = 0;  ///< into the node's conductors
};

/// One search for the piece that holds the laid edge.
struct PieceSearch {
  const Circuit& circuit;
  int from = -1, to = -1;
  std::vector<char> is_barred;
  std::vector<int> depth, low;
  std::vector<int> pending;  ///< conductors met and not yet given to a piece
  std::vector<Step> steps;
  int clock = 0;

  void enter(int node, int by) {
    depth[static_cast<std::size_t>(node)] = low[static_cast<std::size_t>(node)] = ++clock;
    steps.push_back({node, by, 0});
  }
};

/// The laid edge goes first: from `from` straight to `to`. When the search comes back over it, all that is pending is
/// its piece.
std::vector<int> run(PieceSearch& search) {
  constexpr int laid = -2;
  search.depth[static_cast<std::size_t>(search.from)] = search.low[static_cast<std::size_t>(search.from)] =
      ++search.clock;
  search.enter(search.to, laid);
  while (!search.steps.empty()) {
    Step& step = search.steps.back();
    const auto node = static_cast<std::size_t>(step.node);
    if (step.next < search.circuit.at[node].size()) {
      const int by = search.circuit.at[node][step.next++];
      const Conductor& conductor = search.circuit.conductors[static_cast<std::size_t>(by)];
      const int other = conductor.a == step.node ? conductor.b : conductor.a;
      const auto o = static_cast<std::size_t>(other);
      if (by == step.arrived_by || search.is_barred[o]) continue;
      if (search.depth[o] == 0) {
        search.pending.push_back(by);
        search.enter(other, by);
      } else if (search.depth[o] < search.depth[node]) {
        search.pending.push_back(by);
        search.low[node] = std::min(search.low[node], search.depth[o]);
      }
      continue;
    }
    const Step done = step;
    search.steps.pop_back();
    if (done.arrived_by == laid) break;
    const auto parent = static_cast<std::size_t>(search.steps.back().node);
    search.low[parent] = std::min(search.low[parent], search.low[node]);
    if (search.low[node] < search.depth[parent]) continue;
    // What hangs below this conductor leads nowhere else: it is a piece of its own and dropped.
    while (search.pending.back() != done.arrived_by) search.pending.pop_back();
    search.pending.pop_back();
  }
  std::sort(search.pending.begin(), search.pending.end());
  return search.pending;
}

}  // namespace

int node_of(const Circuit& circuit, const Build& build, int part, const Inside::Node& node) {
  const Part& owner = build.parts[static_cast<std::size_t>(part)];
  const int raw = node.terminal >= 0 ? owner.terminals[static_cast<std::size_t>(node.terminal)].index
                                     : circuit.first_inner[static_cast<std::size_t>(part)] + node.inner;
  return circuit.stands_for[static_cast<std::size_t>(raw)];
}

Circuit make_circuit(const Build& build) {
  Circuit circuit;
  circuit.nodes = static_cast<int>(build.terminals.size());
  bool has_source = false;
  for (const Part& part : build.parts) {
    circuit.first_inner.push_back(circuit.nodes);
    circuit.nodes += build.kind_of(part).inner_points;
    for (const Inside& inside : part.insides) has_source = has_source || inside.type == InsideType::source;
  }
  circuit.supply = circuit.nodes++;
  circuit.earth = circuit.nodes++;
  circuit.at.resize(static_cast<std::size_t>(circuit.nodes));
  circuit.stands_for.resize(static_cast<std::size_t>(circuit.nodes));
  std::iota(circuit.stands_for.begin(), circuit.stands_for.end(), 0);
  merge_poles(circuit, build, has_source ? InsideType::source : InsideType::charger);
  merge_earths(circuit, build);
  const auto place = [&](TerminalId id) { return circuit.stands_for[id.at()]; };
  for (std::size_t w = 0; w < build.wires.size(); ++w)
    add_conductor(circuit, {place(build.wires[w].from), place(build.wires[w].to), static_cast<int>(w), -1, -1, false});
  for (std::size_t p = 0; p < build.parts.size(); ++p)
    for (std::size_t i = 0; i < build.parts[p].insides.size(); ++i) {
      const Inside& inside = build.parts[p].insides[i];
      if (!is_conductor(inside)) continue;
      const auto inner = [&](int n) {
        return node_of(circuit, build, static_cast<int>(p), inside.nodes[static_cast<std::size_t>(n)]);
      };
      for (const auto& [a, b] : joined_pairs(inside))
        add_conductor(circuit, {inner(a), inner(b), -1, static_cast<int>(p), static_cast<int>(i),
                                inside.type == InsideType::fuse});
    }
  return circuit;
}

std::vector<int> find_ways(const Circuit& circuit, int from, int to, const std::vector<int>& barred) {
  if (from == to) return {};
  PieceSearch search{circuit, from, to, {}, {}, {}, {}, {}, 0};
  const auto count = static_cast<std::size_t>(circuit.nodes);
  search.is_barred.assign(count, 0);
  search.depth.assign(count, 0);
  search.low.assign(count, 0);
  for (int node : barred) search.is_barred[static_cast<std::size_t>(node)] = 1;
  if (search.is_barred[static_cast<std::size_t>(from)] || search.is_barred[static_cast<std::size_t>(to)]) return {};
  return run(search);
}

std::vector<int> before_fuses(const Circuit& circuit, const std::vector<int>& ways, int from) {
  std::vector<int> found, nodes{from};
  for (std::size_t n = 0; n < nodes.size(); ++n)
    for (int c : circuit.at[static_cast<std::size_t>(nodes[n])]) {
      const bool is_way = std::binary_search(ways.begin(), ways.end(), c);
      if (!is_way || std::find(found.begin(), found.end(), c) != found.end()) continue;
      found.push_back(c);
      const Conductor& conductor = circuit.conductors[static_cast<std::size_t>(c)];
      const int other = conductor.a == nodes[n] ? conductor.b : conductor.a;
      const bool goes_on = !conductor.is_fuse && std::find(nodes.begin(), nodes.end(), other) == nodes.end();
      if (goes_on) nodes.push_back(other);
    }
  std::sort(found.begin(), found.end());
  return found;
}

}  // namespace loomfolio::splitting
