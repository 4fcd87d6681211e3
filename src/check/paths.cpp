// SPDX-License-Identifier: MIT
#include "check/paths.h"

#include "solve/plain_metal.h"

namespace loomfolio {

namespace {

std::size_t index_of(PathPoint p) { return static_cast<std::size_t>(p); }

void add_bridge(Paths& paths, Bridge bridge) {
  const int index = static_cast<int>(paths.bridges.size());
  paths.at[index_of(bridge.a)].push_back(index);
  if (bridge.b != bridge.a) paths.at[index_of(bridge.b)].push_back(index);
  paths.bridges.push_back(bridge);
}

/// Pairs of nodes that an element can join. A charger also gives from its generator's leads, an output needs its
/// supply.
std::vector<std::pair<std::size_t, std::size_t>> pairs_joined(const Inside& inside) {
  if (inside.type == InsideType::output) {
    if (inside.nodes.size() < 3) return {};
    return {{inside.is_low_side ? 2 : 0, 1}};
  }
  if (inside.type != InsideType::switch_) {
    if (inside.nodes.size() < 2) return {};
    return {{0, 1}};
  }
  std::vector<std::pair<std::size_t, std::size_t>> pairs;
  for (const SwitchPosition& position : inside.positions)
    for (const std::vector<int>& group : position.joined)
      for (std::size_t i = 1; i < group.size(); ++i)
        pairs.emplace_back(static_cast<std::size_t>(group[0]), static_cast<std::size_t>(group[i]));
  return pairs;
}

void add_insides(const Build& build, Paths& paths) {
  for (std::size_t p = 0; p < build.parts.size(); ++p) {
    const PartId part{static_cast<std::int32_t>(p)};
    for (std::size_t i = 0; i < build.parts[p].insides.size(); ++i) {
      const Inside& inside = build.parts[p].insides[i];
      for (const auto& [a, b] : pairs_joined(inside))
        add_bridge(
            paths,
            {paths.point(part, inside.nodes[a]), paths.point(part, inside.nodes[b]), {}, {part, static_cast<int>(i)}});
    }
  }
}

void add_bolts(const Build& build, Paths& paths) {
  for (const Earth& earth : build.earths) add_bridge(paths, {earth.terminal.index, paths.frame, {}, {}});
  for (const Part& part : build.parts)
    for (const TerminalId terminal : part.terminals) {
      const int k = build.terminal(terminal).kind_terminal;
      if (build.kind_of(part).terminals[static_cast<std::size_t>(k)].form == TerminalForm::body)
        add_bridge(paths, {terminal.index, paths.frame, {}, {}});
    }
}

/// Nets are numbered by their lowest points.
void number_nets(PlainMetal& metal, Paths& paths) {
  for (PathPoint p = 0; p < static_cast<PathPoint>(paths.at.size()); ++p) {
    const int root = metal.islands.root(p);
    paths.net.push_back(root == p ? paths.net_count++ : paths.net[index_of(root)]);
  }
}

void mark_poles(const Build& build, Paths& paths) {
  paths.earthed_net.assign(static_cast<std::size_t>(paths.net_count), false);
  paths.live_net.assign(static_cast<std::size_t>(paths.net_count), false);
  paths.earthed_net[index_of(paths.net[index_of(paths.frame)])] = true;
  for (const Bridge& bridge : paths.bridges) {
    if (!bridge.inside.part.is_set() || inside_of(build, bridge.inside).type != InsideType::source) continue;
    const bool plus_is_earthed = build.electrics.is_positive_earth;
    paths.earthed_net[index_of(paths.net[index_of(plus_is_earthed ? bridge.a : bridge.b)])] = true;
    paths.live_net[index_of(paths.net[index_of(plus_is_earthed ? bridge.b : bridge.a)])] = true;
  }
}

}  // namespace

PathPoint Paths::point(PartId part, const Inside::Node& node) const {
  if (node.terminal >= 0) return terminals_[part.at()][static_cast<std::size_t>(node.terminal)].index;
  return first_inner[part.at()] + node.inner;
}

std::vector<PathPoint> Paths::points(const Build& build, InsideRef ref) const {
  std::vector<PathPoint> found;
  for (const Inside::Node& node : inside_of(build, ref).nodes) found.push_back(point(ref.part, node));
  return found;
}

Paths trace_paths(const Build& build) {
  Paths paths;
  PlainMetal metal = join_plain_metal(build);
  for (const Part& part : build.parts) paths.terminals_.push_back(part.terminals);
  paths.first_inner = metal.first_inner;
  paths.frame = metal.frame;
  paths.at.resize(index_of(paths.frame) + 1);
  for (std::size_t w = 0; w < build.wires.size(); ++w)
    add_bridge(paths, {build.wires[w].from.index, build.wires[w].to.index, {static_cast<std::int32_t>(w)}, {}});
  add_insides(build, paths);
  add_bolts(build, paths);
  number_nets(metal, paths);
  mark_poles(build, paths);
  return paths;
}

std::vector<bool> reach(const Paths& paths, const std::vector<PathPoint>& start,
                        const std::function<bool(const Bridge&)>& passes) {
  std::vector<bool> reached(paths.at.size(), false);
  std::vector<PathPoint> open;
  for (const PathPoint p : start)
    if (!reached[index_of(p)]) {
      reached[index_of(p)] = true;
      open.push_back(p);
    }
  while (!open.empty()) {
    const PathPoint here = open.back();
    open.pop_back();
    for (const int b : paths.at[index_of(here)]) {
      const Bridge& bridge = paths.bridges[static_cast<std::size_t>(b)];
      const PathPoint next = bridge.other(here);
      if (reached[index_of(next)] || !passes(bridge)) continue;
      reached[index_of(next)] = true;
      open.push_back(next);
    }
  }
  return reached;
}

const Inside& inside_of(const Build& build, InsideRef ref) {
  return build.part(ref.part).insides[static_cast<std::size_t>(ref.inside)];
}

bool is_plain_metal(const Build& build, const Bridge& bridge) {
  if (!bridge.inside.part.is_set()) return true;
  return inside_of(build, bridge.inside).type == InsideType::link;
}

}  // namespace loomfolio
