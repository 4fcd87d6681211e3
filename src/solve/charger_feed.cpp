// SPDX-License-Identifier: MIT
// A generator reaches a charger through wires, links, fuses and switches as they stand. Two of its terminals are fed
// together when they hang on the same winding; the whole network of windings counts as one generator.
#include "solve/charger_feed.h"

#include <algorithm>
#include <map>

#include "solve/circuit_insides.h"
#include "solve/defaults.h"
#include "solve/islands.h"

namespace loomfolio {
namespace {

void join_switch(const FeedQuestion& q, PartId part, int index, Islands& islands) {
  const auto& [build, circuit, situation, open_wire, dead] = q;
  const Inside& inside = build.part(part).insides[static_cast<std::size_t>(index)];
  const auto position = static_cast<std::size_t>(position_in(build, situation, {part, index}));
  if (position >= inside.positions.size()) return;
  for (const auto& group : inside.positions[position].joined)
    for (std::size_t i = 1; i < group.size(); ++i) {
      const int a = node_of(build, circuit, part, inside.nodes[static_cast<std::size_t>(group[0])]);
      const int b = node_of(build, circuit, part, inside.nodes[static_cast<std::size_t>(group[i])]);
      if (a >= 0 && b >= 0) islands.join(a, b);
    }
}

enum class Windings : std::uint8_t { joined, left_out };

Islands metal_as_it_stands(const FeedQuestion& q, Windings treatment, std::vector<int>& windings) {
  Islands islands(q.circuit.node_count);
  for (std::size_t w = 0; w < q.build.wires.size(); ++w)
    if (static_cast<std::int32_t>(w) != q.open_wire.index)
      islands.join(q.build.wires[w].from.index, q.build.wires[w].to.index);
  for (std::size_t p = 0; p < q.build.parts.size(); ++p) {
    const PartId part{static_cast<std::int32_t>(p)};
    for (std::size_t i = 0; i < q.build.parts[p].insides.size(); ++i) {
      const Inside& inside = q.build.parts[p].insides[i];
      if (q.dead == InsideRef{part, static_cast<int>(i)}) continue;
      const bool is_winding = inside.type == InsideType::resistor && inside.is_winding;
      if (inside.type == InsideType::switch_) join_switch(q, part, static_cast<int>(i), islands);
      const bool is_closed = inside.type == InsideType::contact && inside.closed_at_rest;
      if ((is_winding && treatment == Windings::joined) || is_closed || inside.type == InsideType::link ||
          inside.type == InsideType::fuse)
        join_inside(q.build, q.circuit, part, inside, islands);
      if (is_winding) windings.push_back(node_of(q.build, q.circuit, part, inside.nodes.front()));
    }
  }
  return islands;
}

}  // namespace

double charger_feed_share(const FeedQuestion& q, PartId part, const Inside& charger) {
  if (charger.fed_by.empty()) return 1;
  std::vector<int> windings;
  Islands islands = metal_as_it_stands(q, Windings::joined, windings);
  std::map<int, std::size_t> fed;  // terminals a generator's island reaches
  for (const int index : charger.fed_by) {
    const int node = node_of(q.build, q.circuit, part, charger.nodes[static_cast<std::size_t>(index)]);
    if (node < 0) continue;
    for (const int winding : windings)
      if (winding >= 0 && islands.are_joined(node, winding)) {
        ++fed[islands.root(node)];
        break;
      }
  }
  std::size_t most = 0;
  for (const auto& [root, count] : fed) most = std::max(most, count);
  if (most == charger.fed_by.size()) return 1;
  return charger.fed_by.size() >= 3 && most == 2 ? standard::one_phase_share : 0;
}

Islands metal_without_windings(const FeedQuestion& question) {
  std::vector<int> windings;
  return metal_as_it_stands(question, Windings::left_out, windings);
}

std::vector<int> generators_at_nodes(const Build& build, const Circuit& circuit) {
  Islands islands(circuit.node_count);
  for (const Wire& wire : build.wires) islands.join(wire.from.index, wire.to.index);
  std::vector<int> windings;
  for (std::size_t p = 0; p < build.parts.size(); ++p)
    for (const Inside& inside : build.parts[p].insides) {
      const PartId part{static_cast<std::int32_t>(p)};
      if (is_metal_path(inside.type)) join_inside(build, circuit, part, inside, islands);
      if (inside.type != InsideType::resistor || !inside.is_winding) continue;
      for (const Inside::Node& node : inside.nodes) windings.push_back(node_of(build, circuit, part, node));
    }
  std::vector<char> has_winding(static_cast<std::size_t>(circuit.node_count), 0);
  for (const int winding : windings)
    if (winding >= 0) has_winding[static_cast<std::size_t>(islands.root(winding))] = 1;
  std::vector<int> generators;
  for (int node = 0; node < circuit.node_count; ++node) {
    const int root = islands.root(node);
    generators.push_back(has_winding[static_cast<std::size_t>(root)] ? root : -1);
  }
  return generators;
}

}  // namespace loomfolio
