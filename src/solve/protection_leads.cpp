// SPDX-License-Identifier: MIT
// From each battery's live pole outward along metal, shortest way first, until fuses and loads: the wires on the way are protected
// by nothing.
#include <algorithm>
#include <limits>
#include <map>
#include <queue>

#include "solve/protection_parts.h"

namespace loomfolio {
namespace {

constexpr double far = std::numeric_limits<double>::infinity();

struct Step {
  int to = -1;
  double metres = 0;
  WireId wire;  // unset: through a part
};

struct Reach {
  double metres = far;
  int from = -1;
  WireId wire;
};

struct FuseEnd {
  int node = -1;
  InsideRef fuse;
};

struct Metal {
  std::vector<std::vector<Step>> steps;  // by node
  std::vector<FuseEnd> fuse_ends;
  std::vector<int> live_poles;
  int reference = -1;
};

void join_all(const std::vector<int>& nodes, Metal& metal) {
  for (const int a : nodes)
    for (const int b : nodes)
      if (a != b && a >= 0 && b >= 0) metal.steps[static_cast<std::size_t>(a)].push_back({b, 0, {}});
}

void add_inside(const Study& study, const Circuit& circuit, InsideRef ref, Metal& metal) {
  const Inside& inside = study.build.part(ref.part).insides[static_cast<std::size_t>(ref.inside)];
  std::vector<int> nodes;
  for (const Inside::Node& node : inside.nodes) nodes.push_back(node_of(study.build, circuit, ref.part, node));
  switch (inside.type) {
    case InsideType::link:
    case InsideType::switch_:
    case InsideType::contact: join_all(nodes, metal); break;
    case InsideType::fuse:
      for (const int node : nodes) metal.fuse_ends.push_back({node, ref});
      break;
    case InsideType::source:
      if (nodes.size() >= 2) metal.live_poles.push_back(nodes[study.build.electrics.is_positive_earth ? 1 : 0]);
      break;
    default: break;
  }
}

Metal find_metal(const Study& study, const Circuit& circuit) {
  Metal metal;
  metal.reference = circuit.reference;
  metal.steps.resize(static_cast<std::size_t>(circuit.node_count));
  for (std::size_t w = 0; w < study.build.wires.size(); ++w) {
    const Wire& wire = study.build.wires[w];
    const double metres = length_of(wire).number();
    const WireId id{static_cast<std::int32_t>(w)};
    metal.steps[wire.from.at()].push_back({wire.to.index, metres, id});
    metal.steps[wire.to.at()].push_back({wire.from.index, metres, id});
  }
  for (std::size_t p = 0; p < study.build.parts.size(); ++p)
    for (std::size_t i = 0; i < study.build.parts[p].insides.size(); ++i)
      add_inside(study, circuit, {PartId{static_cast<std::int32_t>(p)}, static_cast<int>(i)}, metal);
  return metal;
}

std::vector<Reach> walk(const Metal& metal, int pole) {
  std::vector<Reach> reach(metal.steps.size());
  using Place = std::pair<double, int>;
  std::priority_queue<Place, std::vector<Place>, std::greater<>> next;
  reach[static_cast<std::size_t>(pole)].metres = 0;
  next.push({0, pole});
  while (!next.empty()) {
    const auto [metres, node] = next.top();
    next.pop();
    if (metres > reach[static_cast<std::size_t>(node)].metres || node == metal.reference) continue;
    for (const Step& step : metal.steps[static_cast<std::size_t>(node)]) {
      Reach& there = reach[static_cast<std::size_t>(step.to)];
      if (metres + step.metres >= there.metres) continue;
      there = {metres + step.metres, node, step.wire};
      next.push({there.metres, step.to});
    }
  }
  return reach;
}

UnfusedLead lead_to(const std::vector<Reach>& reach, int node) {
  UnfusedLead lead;
  lead.length = Metres(reach[static_cast<std::size_t>(node)].metres);
  for (; reach[static_cast<std::size_t>(node)].from >= 0; node = reach[static_cast<std::size_t>(node)].from)
    if (reach[static_cast<std::size_t>(node)].wire.is_set()) lead.wires.push_back(reach[static_cast<std::size_t>(node)].wire);
  std::reverse(lead.wires.begin(), lead.wires.end());
  return lead;
}

}  // namespace

void study_leads(Study& study) {
  if (study.build.situations.empty()) return;
  const Circuit circuit = make_circuit(study.build, SituationId{0}, usual_options(study.build));
  const Metal metal = find_metal(study, circuit);
  std::vector<char> is_listed(study.build.wires.size(), 0);
  const auto list = [&](UnfusedLead lead) {
    for (const WireId wire : lead.wires) {
      is_listed[wire.at()] = 1;
      lead.is_starter = lead.is_starter || study.result.wires[wire.at()].verdict == WireVerdict::starter_cable;
    }
    study.result.leads.push_back(std::move(lead));
  };
  for (const int pole : metal.live_poles) {
    if (pole < 0) continue;
    const auto reach = walk(metal, pole);
    for (const FuseEnd& end : metal.fuse_ends) {
      if (end.node < 0 || reach[static_cast<std::size_t>(end.node)].metres == far) continue;
      UnfusedLead lead = lead_to(reach, end.node);
      lead.fuse = end.fuse;
      list(std::move(lead));
    }
    // Ways that end without a fuse: from the last wire of each.
    for (std::size_t w = 0; w < study.build.wires.size(); ++w)
      for (const TerminalId end : {study.build.wires[w].from, study.build.wires[w].to})
        if (!is_listed[w] && reach[end.at()].wire == WireId{static_cast<std::int32_t>(w)}) list(lead_to(reach, end.index));
  }
}

}  // namespace loomfolio
