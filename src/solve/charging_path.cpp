// SPDX-License-Identifier: MIT
#include "solve/charging_path.h"

#include <algorithm>
#include <limits>
#include <queue>

#include "solve/branch_law.h"
#include "solve/circuit.h"

namespace loomfolio {
namespace {

bool passes(const Branch& branch, const RelayState& relays) {
  const bool is_plain = branch.law == Law::conductor || branch.law == Law::diode;
  return is_plain && branch.a != branch.b && is_active(branch, relays, Flash::lit);
}

void add_way(const Circuit& circuit, const RelayState& relays, int from, int to, ChargingPath& path) {
  const auto nodes = static_cast<std::size_t>(circuit.node_count);
  std::vector<std::vector<int>> at(nodes);
  for (std::size_t i = 0; i < circuit.branches.size(); ++i) {
    const Branch& branch = circuit.branches[i];
    if (!passes(branch, relays)) continue;
    at[static_cast<std::size_t>(branch.a)].push_back(static_cast<int>(i));
    at[static_cast<std::size_t>(branch.b)].push_back(static_cast<int>(i));
  }
  std::vector<double> ohms(nodes, std::numeric_limits<double>::infinity());
  std::vector<int> came(nodes, -1);
  using Entry = std::pair<double, int>;
  std::priority_queue<Entry, std::vector<Entry>, std::greater<>> open;
  ohms[static_cast<std::size_t>(from)] = 0;
  open.push({0, from});
  const auto other = [&](int number, int node) {
    const Branch& branch = circuit.branches[static_cast<std::size_t>(number)];
    return branch.a == node ? branch.b : branch.a;
  };
  while (!open.empty()) {
    const auto [so_far, node] = open.top();
    open.pop();
    if (so_far > ohms[static_cast<std::size_t>(node)]) continue;
    for (const int number : at[static_cast<std::size_t>(node)]) {
      const int next = other(number, node);
      const double sum = so_far + std::max(circuit.branches[static_cast<std::size_t>(number)].ohms.number(), least_branch_ohms);
      if (sum >= ohms[static_cast<std::size_t>(next)]) continue;
      ohms[static_cast<std::size_t>(next)] = sum;
      came[static_cast<std::size_t>(next)] = number;
      open.push({sum, next});
    }
  }
  for (int node = to; came[static_cast<std::size_t>(node)] >= 0;) {
    const Branch& branch = circuit.branches[static_cast<std::size_t>(came[static_cast<std::size_t>(node)])];
    if (branch.wire.is_set()) path.wires.insert(branch.wire);
    if (branch.inside.part.is_set()) path.insides.insert(branch.inside);
    if (branch.earth.is_set()) path.earths.insert(branch.earth);
    if (branch.terminal.is_set()) path.bodies.insert(branch.terminal);
    node = other(came[static_cast<std::size_t>(node)], node);
  }
}

}  // namespace

ChargingPath find_charging_path(const Build& build, const Solution& solution, InsideRef charger) {
  ChargingPath path;
  path.insides.insert(charger);
  const Circuit circuit = make_circuit(build, solution.situation, usual_options(build));
  const int number = circuit.inside_branch[charger.part.at()][static_cast<std::size_t>(charger.inside)];
  const auto source = std::find_if(circuit.branches.begin(), circuit.branches.end(),
                                   [](const Branch& branch) { return branch.law == Law::source; });
  if (number < 0 || source == circuit.branches.end()) return path;
  const Branch& from = circuit.branches[static_cast<std::size_t>(number)];
  add_way(circuit, solution.relays, from.a, source->a, path);
  add_way(circuit, solution.relays, from.b, source->b, path);
  return path;
}

bool opens_path(const ChargingPath& path, const Fault& fault, const FaultEffect& effect) {
  switch (fault.type) {
    case FaultType::wire_open:
    case FaultType::bad_joint:
      return path.wires.contains(fault.wire);
    case FaultType::earth_loose:
      return path.earths.contains(fault.earth) || path.bodies.contains(fault.end);
    case FaultType::wire_to_earth:
      return std::any_of(effect.blown.begin(), effect.blown.end(),
                         [&](InsideRef fuse) { return path.insides.contains(fuse); });
    case FaultType::fuse_blown:
    case FaultType::contact_open:
    case FaultType::switch_open:
    case FaultType::element_dead:
    case FaultType::diode_reversed:
    case FaultType::charger_dead:
      return path.insides.contains(fault.inside);
    case FaultType::contact_stuck:
    case FaultType::switch_stuck:
    case FaultType::output_dead:
    case FaultType::battery_flat:
    case FaultType::wire_to_live:
      return false;
  }
  return false;
}

}  // namespace loomfolio
