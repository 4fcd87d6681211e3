// SPDX-License-Identifier: MIT
#include "solve/earth_lift.h"

#include <cmath>

#include "solve/islands.h"

namespace loomfolio {
namespace {

/// Terminals, then the inner points part by part, then the frame; joined where metal joins them that nothing opens.
class EarthedMetal {
 public:
  explicit EarthedMetal(const Build& build) : build_(build), points_(count_points()), frame_(points_.root(last_)) {
    for (const Wire& wire : build.wires) points_.join(wire.from.index, wire.to.index);
    for (const Earth& earth : build.earths) points_.join(earth.terminal.index, frame_);
    for (std::size_t p = 0; p < build.parts.size(); ++p) join_part(p);
  }

  bool is_earthed(TerminalId terminal) { return points_.are_joined(terminal.index, frame_); }

 private:
  int count_points() {
    int count = static_cast<int>(build_.terminals.size());
    for (const Part& part : build_.parts) {
      first_inner_.push_back(count);
      count += build_.kind_of(part).inner_points;
    }
    last_ = count;
    return count + 1;
  }

  int point(std::size_t part, const Inside::Node& node) const {
    if (node.terminal < 0) return first_inner_[part] + node.inner;
    return build_.parts[part].terminals[static_cast<std::size_t>(node.terminal)].index;
  }

  void join_part(std::size_t p) {
    const Part& part = build_.parts[p];
    for (const Inside& inside : part.insides) {
      if (inside.nodes.size() < 2) continue;
      if (inside.type == InsideType::link) points_.join(point(p, inside.nodes[0]), point(p, inside.nodes[1]));
      if (inside.type == InsideType::source)
        points_.join(point(p, inside.nodes[build_.electrics.is_positive_earth ? 0 : 1]), frame_);
    }
    for (const TerminalId terminal : part.terminals) {
      const int k = build_.terminal(terminal).kind_terminal;
      if (build_.kind_of(part).terminals[static_cast<std::size_t>(k)].form == TerminalForm::body)
        points_.join(terminal.index, frame_);
    }
  }

  const Build& build_;
  std::vector<int> first_inner_;
  int last_ = 0;
  Islands points_;
  int frame_;
};

std::vector<bool> wired_terminals(const Build& build) {
  std::vector<bool> is_wired(build.terminals.size(), false);
  for (const Wire& wire : build.wires) is_wired[wire.from.at()] = is_wired[wire.to.at()] = true;
  return is_wired;
}

}  // namespace

std::vector<EarthLift> find_earth_lifts(const Build& build, const std::vector<Solution>& solutions) {
  EarthedMetal metal(build);
  const std::vector<bool> is_wired = wired_terminals(build);
  std::vector<EarthLift> lifts;
  for (std::size_t p = 0; p < build.parts.size(); ++p) {
    const Part& part = build.parts[p];
    if (build.kind_of(part).is_connector) continue;
    EarthLift worst{PartId{static_cast<std::int32_t>(p)}, {}, {}, most_earth_lift};
    for (const TerminalId terminal : part.terminals) {
      if (!is_wired[terminal.at()] || !metal.is_earthed(terminal)) continue;
      for (const Solution& solution : solutions) {
        const bool cranks = build.situations[solution.situation.at()].engine == EngineState::cranking;
        const double volts = std::fabs(solution.terminal_volts[terminal.at()].number());
        if (cranks || solution.settling != Settling::settled || std::isnan(volts) || volts <= worst.volts.number())
          continue;
        worst.terminal = terminal, worst.situation = solution.situation, worst.volts = Volts(volts);
      }
    }
    if (worst.terminal.is_set()) lifts.push_back(worst);
  }
  return lifts;
}

}  // namespace loomfolio
