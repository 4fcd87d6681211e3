// SPDX-License-Identifier: MIT
#include "solve/own_supply.h"

#include <cmath>

#include "solve/settled_view.h"

namespace loomfolio {
namespace {

constexpr double hung_on = 1;        // A, about what a small lamp takes
constexpr double follows_from = 0.3;  // A more through what feeds it
constexpr double is_live_from = 1;   // V

class OwnWays {
 public:
  OwnWays(const Build& build, const Solution& solution, OwnSupply& found)
      : build_(build), solution_(solution), found_(found), sound_(make_circuit(build, solution.situation, usual_options(build))), before_(amperes_in(sound_)) {}

  /// What hangs on that terminal of the switch.
  void hang_on(PartId part, TerminalId terminal) {
    const double volts = solution_.terminal_volts[terminal.at()].number();
    if (std::isnan(volts) || std::abs(volts) < is_live_from) return;
    Circuit hung = sound_;
    Branch lamp;
    lamp.a = terminal.index;
    lamp.b = hung.frame;
    lamp.ohms = Ohms(std::abs(volts) / hung_on);
    hung.branches.push_back(lamp);
    const std::vector<double> after = amperes_in(hung);
    const auto follows = [&](int branch) {
      const auto b = static_cast<std::size_t>(branch);
      return branch >= 0 && std::abs(after[b] - before_[b]) >= follows_from;
    };
    for (std::size_t w = 0; w < build_.wires.size(); ++w)
      if (follows(sound_.wire_branch[w])) found_.wires.insert({static_cast<std::int32_t>(w)});
    for (std::size_t p = 0; p < build_.parts.size(); ++p)
      for (std::size_t i = 0; i < build_.parts[p].insides.size(); ++i)
        if (build_.parts[p].insides[i].type == InsideType::fuse && follows(sound_.inside_branch[p][i]))
          found_.fuses.insert({PartId{static_cast<std::int32_t>(p)}, static_cast<int>(i)});
    found_.switches.insert(part);
  }

 private:
  std::vector<double> amperes_in(const Circuit& circuit) const {
    NodeSolver solver(circuit);
    const NodeVolts nodes = solver.solve(solution_.relays, Flash::lit, {});
    const SettledView view{circuit, solution_.relays, nodes, Flash::lit};
    std::vector<double> amperes;
    for (const Branch& branch : circuit.branches) amperes.push_back(view.amperes(branch));
    return amperes;
  }

  const Build& build_;
  const Solution& solution_;
  OwnSupply& found_;
  Circuit sound_;
  std::vector<double> before_;  ///< in it, by branch
};

}  // namespace

OwnSupply find_own_supply(const Build& build, const std::vector<Solution>& solutions) {
  OwnSupply found;
  if (build.document.scope != Scope::kit) return found;
  for (const Solution& solution : solutions) {
    if (build.situations[solution.situation.at()].engine != EngineState::stopped) continue;
    OwnWays ways(build, solution, found);
    for (std::size_t p = 0; p < build.parts.size(); ++p) {
      const Part& part = build.parts[p];
      if (part.provided != Provider::machine) continue;
      for (const Inside& inside : part.insides)
        if (inside.type == InsideType::switch_ && inside.worked_by == "key")
          for (const Inside::Node& node : inside.nodes)
            if (node.terminal >= 0)
              ways.hang_on(PartId{static_cast<std::int32_t>(p)}, part.terminals[static_cast<std::size_t>(node.terminal)]);
    }
  }
  return found;
}

}  // namespace loomfolio
