// SPDX-License-Identifier: MIT
// A weaker battery lowers all volts; worse joints lower those of feeds and raise those of returns. Each of the two has
// two ends; a terminal's limits are its least and its greatest volts over the four corners. Loads are taken as
// described: their spread moves readings less than the joints do.
#include "solve/reading_limits.h"

#include <algorithm>
#include <cmath>

#include "solve/battery.h"
#include "solve/defaults.h"
#include "solve/newton.h"

namespace loomfolio {
namespace {

enum class Supply : std::uint8_t { weak, strong };
enum class Joints : std::uint8_t { worn, best };

void set_supply(Circuit& circuit, const Electrics& electrics, Supply supply) {
  const double scale = electrics.nominal.number() / 12;
  const Volts lost = rest_volts(BatteryType::flooded, 1, electrics.nominal) -
                     rest_volts(BatteryType::flooded, sound::least_charge, electrics.nominal);
  for (Branch& branch : circuit.branches) {
    if (branch.law == Law::charger) branch.volts += (supply == Supply::weak ? -1 : 1) * scale * sound::regulator;
    if (branch.law != Law::source) continue;
    branch.volts += supply == Supply::weak ? Volts(-lost.number()) : scale * sound::freshest;
    if (supply == Supply::weak) branch.ohms = branch.ohms * sound::battery_ohms;
  }
}

void set_joints(Circuit& circuit, const Build& build, Joints joints) {
  const double length = joints == Joints::worn ? sound::longer : sound::shorter;
  const double joint = joints == Joints::worn ? sound::worn_joint : sound::best_joint;
  for (std::size_t w = 0; w < build.wires.size(); ++w) {
    const Wire& wire = build.wires[w];
    Branch& branch = circuit.branches[static_cast<std::size_t>(circuit.wire_branch[w])];
    const Ohms ends = joint_resistance(build, wire, wire.from) + joint_resistance(build, wire, wire.to);
    branch.ohms = (branch.ohms - ends) * length + ends * joint;
  }
}

void widen_by(const std::vector<double>& nodes, ReadingLimits& limits) {
  for (std::size_t t = 0; t < limits.least.size(); ++t) {
    const Volts error = Volts(std::abs(nodes[t]) * sound::meter_share) + sound::meter_digits;
    limits.least[t] = std::min(limits.least[t], Volts(nodes[t]) - error);
    limits.most[t] = std::max(limits.most[t], Volts(nodes[t]) + error);
  }
}

}  // namespace

ReadingLimits find_reading_limits(const Build& build, const Solution& solution) {
  ReadingLimits limits{solution.terminal_volts, solution.terminal_volts};
  const Circuit described = make_circuit(build, solution.situation, usual_options(build));
  Circuit circuit = described;
  NodeSolver solver(circuit);  // one for all corners: they differ in values alone
  std::vector<double> guess;
  for (const Supply supply : {Supply::weak, Supply::strong})
    for (const Joints joints : {Joints::worn, Joints::best}) {
      circuit.branches = described.branches;
      set_supply(circuit, build.electrics, supply);
      set_joints(circuit, build, joints);
      guess = solver.solve(solution.relays, Flash::lit, guess).volts;
      widen_by(guess, limits);
    }
  return limits;
}

}  // namespace loomfolio
