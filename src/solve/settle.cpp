// SPDX-License-Identifier: MIT
// Relays move together, a round at a time, as if all took equally long. A state met before, without rest, is a circle:
// the relays chatter - unless moving one at a time, in either order, comes to rest; then the circle was only a race. If
// the two orders, or the rounds and the orders, end in different states, the machine's state depends on which relay is
// quicker: several states.
#include "solve/settle.h"

#include <algorithm>
#include <cmath>
#include <memory>

#include "solve/quick_moves.h"

namespace loomfolio {
namespace {

constexpr int most_settling_rounds = 200;
constexpr int many_moves = 6;  // from which moving one at a time is answered from the circuit before

double over(const NodeVolts& nodes, int a, int b) {
  return nodes.volts[static_cast<std::size_t>(a)] - nodes.volts[static_cast<std::size_t>(b)];
}

// Live: half the unit's supply or more. Earthed: a quarter or less. From memory of usual input thresholds; between them
// neither.
bool holds(const OutputDevice& device, const OutputDevice::Condition& condition, const NodeVolts& nodes) {
  if (condition.node < 0) return false;
  const double supply = std::abs(over(nodes, device.supply, device.earth));
  const double input = std::abs(over(nodes, condition.node, device.earth));
  return condition.when_live ? input >= 0.5 * supply : input <= 0.25 * supply;
}

bool wants_on(const Circuit& circuit, const OutputDevice& device, const NodeVolts& nodes) {
  if (device.supply < 0 || device.branch < 0) return false;
  // A unit works from 0.4 of nominal, from memory: it must live through cranking.
  const double supply = over(nodes, device.supply, device.earth);
  if (nodes.floating[static_cast<std::size_t>(device.supply)] || std::abs(supply) < 0.4 * circuit.nominal.number())
    return false;
  return std::all_of(device.conditions.begin(), device.conditions.end(),
                     [&](const auto& condition) { return holds(device, condition, nodes); });
}

int count_moves(const RelayState& a, const RelayState& b) {
  int moves = 0;
  for (std::size_t i = 0; i < a.coil_in.size(); ++i) moves += a.coil_in[i] != b.coil_in[i];
  for (std::size_t i = 0; i < a.output_on.size(); ++i) moves += a.output_on[i] != b.output_on[i];
  return moves;
}

DeviceMove pick_move(const RelayState& now, const RelayState& next, MoveOrder order) {
  DeviceMove picked;
  const auto look = [&](GateType type, const auto& before, const auto& after) {
    for (std::size_t i = 0; i < before.size(); ++i)
      if (before[i] != after[i] && (picked.device < 0 || order == MoveOrder::last_first))
        picked = {type, static_cast<int>(i), after[i] != 0};
  };
  look(GateType::coil, now.coil_in, next.coil_in);
  look(GateType::output, now.output_on, next.output_on);
  return picked;
}

RelayState moved(RelayState state, const DeviceMove& move) {
  (move.type == GateType::coil ? state.coil_in : state.output_on)[static_cast<std::size_t>(move.device)] =
      move.is_on ? 1 : 0;
  return state;
}

struct Run {
  RelayState state;
  NodeVolts nodes;
  bool rests = false, solved = true, moved_several = false;
  std::vector<RelayState> seen;
};

/// Where a run sets out: the volts are found from nothing, and are the same whatever order it moves in.
struct Start {
  const RelayState& state;
  NodeVolts nodes;
};

Run run_until_rest(const Circuit& circuit, NodeSolver& solver, const Start& start, Flash flash, MoveOrder order) {
  Run run;
  run.state = start.state;
  run.nodes = start.nodes;
  std::unique_ptr<QuickMoves> quick;
  bool is_known = false;  // run.nodes are already those of run.state, where devices watch
  std::vector<double> guess = start.nodes.volts;
  for (int round = 0; round < most_settling_rounds; ++round) {
    if (round > 0 && !is_known) run.nodes = solver.solve(run.state, flash, guess), guess = run.nodes.volts;
    if (!run.nodes.has_settled) {
      run.solved = false;
      return run;
    }
    const RelayState next = wanted(circuit, run.state, run.nodes);
    const int moves = count_moves(run.state, next);
    if (moves == 0) {
      run.rests = true;
      return run;
    }
    run.moved_several = run.moved_several || moves > 1;
    run.seen.push_back(run.state);
    if (order == MoveOrder::together) {
      run.state = next;
    } else {
      if (!is_known) quick = moves < many_moves ? nullptr : std::make_unique<QuickMoves>(circuit, run.state, run.nodes, flash);
      const DeviceMove move = pick_move(run.state, next, order);
      const auto seen = quick ? quick->move(move) : std::nullopt;
      is_known = seen.has_value();
      if (is_known) run.nodes = *seen;
      run.state = moved(run.state, move);
    }
    if (std::find(run.seen.begin(), run.seen.end(), run.state) != run.seen.end()) return run;
  }
  return run;
}

// Devices that differ between any two states of the circle.
void name_unsettled(const Run& run, Settled& settled) {
  const auto first = std::find(run.seen.begin(), run.seen.end(), run.state);
  for (std::size_t i = 0; i < run.state.coil_in.size(); ++i)
    if (std::any_of(first, run.seen.end(), [&](const RelayState& s) { return s.coil_in[i] != run.state.coil_in[i]; }))
      settled.unsettled_coils.push_back(static_cast<int>(i));
  for (std::size_t i = 0; i < run.state.output_on.size(); ++i)
    if (std::any_of(first, run.seen.end(),
                    [&](const RelayState& s) { return s.output_on[i] != run.state.output_on[i]; }))
      settled.unsettled_outputs.push_back(static_cast<int>(i));
}

// Adds the devices that differ; those that another pair of states named already stay once.
void name_difference(const RelayState& a, const RelayState& b, Settled& settled) {
  const auto add = [](std::vector<int>& named, const std::vector<char>& one, const std::vector<char>& other) {
    for (std::size_t i = 0; i < one.size(); ++i)
      if (one[i] != other[i]) named.push_back(static_cast<int>(i));
    std::sort(named.begin(), named.end());
    named.erase(std::unique(named.begin(), named.end()), named.end());
  };
  add(settled.unsettled_coils, a.coil_in, b.coil_in);
  add(settled.unsettled_outputs, a.output_on, b.output_on);
}

}  // namespace

bool wanted_coil(const Circuit& circuit, int index, const RelayState& now, const NodeVolts& nodes) {
  const CoilDevice& coil = circuit.coils[static_cast<std::size_t>(index)];
  if (coil.branch < 0) return false;
  const Branch& branch = circuit.branches[static_cast<std::size_t>(coil.branch)];
  const double volts = std::abs(over(nodes, branch.a, branch.b));
  if (volts >= coil.pull_in.number()) return true;
  if (volts <= coil.drop_out.number()) return false;
  return now.coil_in[static_cast<std::size_t>(index)] != 0;
}

bool wanted_output(const Circuit& circuit, int index, const NodeVolts& nodes) {
  return wants_on(circuit, circuit.outputs[static_cast<std::size_t>(index)], nodes);
}

RelayState wanted(const Circuit& circuit, const RelayState& now, const NodeVolts& nodes) {
  RelayState next = now;
  for (std::size_t i = 0; i < circuit.coils.size(); ++i)
    next.coil_in[i] = wanted_coil(circuit, static_cast<int>(i), now, nodes) ? 1 : 0;
  for (std::size_t i = 0; i < circuit.outputs.size(); ++i)
    next.output_on[i] = wanted_output(circuit, static_cast<int>(i), nodes) ? 1 : 0;
  return next;
}

Settled settle(const Circuit& circuit, NodeSolver& solver, const RelayState& start, Flash flash) {
  const Start from{start, solver.solve(start, flash, {})};
  Run together = run_until_rest(circuit, solver, from, flash, MoveOrder::together);
  Settled settled;
  if (together.solved && (!together.rests || together.moved_several)) {
    const Run first = run_until_rest(circuit, solver, from, flash, MoveOrder::first_first);
    const Run last = run_until_rest(circuit, solver, from, flash, MoveOrder::last_first);
    if (!together.rests && !(first.rests && last.rests)) {
      settled.settling = Settling::chatters;
      name_unsettled(together, settled);
    } else {
      const RelayState& expected = together.rests ? together.state : first.state;
      for (const Run* other : {&first, &last})
        if (other->rests && other->state != expected) {
          settled.settling = Settling::several_states;
          name_difference(expected, other->state, settled);
        }
      if (!together.rests) together = first;
    }
  }
  if (!together.solved) settled.settling = Settling::diverged;
  // From nothing, as if it had never been on the way: which way it came leaves no trace in the last digits.
  if (together.rests && together.state != start) together.nodes = solver.solve(together.state, flash, {});
  settled.relays = std::move(together.state);
  settled.nodes = std::move(together.nodes);
  return settled;
}

}  // namespace loomfolio
