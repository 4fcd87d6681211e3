// SPDX-License-Identifier: MIT
#include "solve/solution.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "solve/alternating.h"
#include "solve/observe.h"
#include "solve/settle.h"
#include "solve/settled_view.h"

namespace loomfolio {
namespace {

struct Filling {
  const Build& build;
  const Circuit& circuit;
  const Settled& settled;
  Flash flash;
};

SettledView view_of(const Filling& f) { return {f.circuit, f.settled.relays, f.settled.nodes, f.flash}; }

std::vector<std::vector<InsideState>> all_insides(const Filling& f) {
  std::vector<std::vector<InsideState>> states(f.build.parts.size());
  for (std::size_t p = 0; p < f.build.parts.size(); ++p)
    for (std::size_t i = 0; i < f.build.parts[p].insides.size(); ++i)
      states[p].push_back(observe(f.build, f.circuit, {PartId{static_cast<std::int32_t>(p)}, static_cast<int>(i)}, view_of(f)));
  return states;
}

/// A flasher's contact closes only while its load takes current.
bool feeds_flasher(const Filling& lit) {
  const SettledView view = view_of(lit);
  return std::any_of(lit.circuit.branches.begin(), lit.circuit.branches.end(), [&](const Branch& branch) {
    return branch.gate.flashes && std::abs(view.amperes(branch)) > 0.01;
  });
}

bool has_flasher_open_at_rest(const Build& build) {
  return std::any_of(build.parts.begin(), build.parts.end(), [](const Part& part) {
    return std::any_of(part.insides.begin(), part.insides.end(),
                       [](const Inside& inside) { return inside.flashes && !inside.closed_at_rest; });
  });
}

// With a flasher's contact under current, what is on only while it is closed flashes.
void mark_flashing(const Filling& lit, NodeSolver& solver, std::vector<std::vector<InsideState>>& states) {
  if (!feeds_flasher(lit)) return;
  const Settled dark = settle(lit.circuit, solver, lit.settled.relays, Flash::dark);
  const Filling off{lit.build, lit.circuit, dark, Flash::dark};
  const auto dark_states = all_insides(off);
  for (std::size_t p = 0; p < states.size(); ++p)
    for (std::size_t i = 0; i < states[p].size(); ++i)
      states[p][i].is_flashing = states[p][i].is_on && (!dark_states[p][i].is_on || dark_states[p][i].is_dim) && !states[p][i].is_dim;
}

std::vector<std::string> name_unsettled(const Build& build, const Circuit& circuit, const Settled& settled) {
  std::vector<std::string> names;
  const auto add = [&](InsideRef ref) {
    if (!ref.part.is_set()) return;
    const Part& part = build.part(ref.part);
    names.push_back(part.id + "." + part.insides[static_cast<std::size_t>(ref.inside)].id);
  };
  for (const int coil : settled.unsettled_coils) add(circuit.coils[static_cast<std::size_t>(coil)].inside);
  for (const int output : settled.unsettled_outputs) add(circuit.outputs[static_cast<std::size_t>(output)].inside);
  return names;
}

Solution solve_from(const Build& build, SituationId situation, const RelayState& start) {
  const Circuit circuit = make_circuit(build, situation, usual_options(build));
  NodeSolver solver(circuit);
  const bool fits = start.coil_in.size() == circuit.coils.size() && start.output_on.size() == circuit.outputs.size();
  Settled settled = settle(circuit, solver, fits ? start : rest_state(circuit), Flash::lit);
  Flash flash = Flash::lit;
  if (has_flasher_open_at_rest(build) && !feeds_flasher({build, circuit, settled, Flash::lit})) {
    flash = Flash::dark;
    settled = settle(circuit, solver, settled.relays, flash);
  }
  const Filling filling{build, circuit, settled, flash};
  Solution solution;
  solution.situation = situation;
  solution.settling = settled.settling;
  solution.unsettled_by = name_unsettled(build, circuit, settled);
  for (int node = 0; node < circuit.terminal_count; ++node) {
    const auto n = static_cast<std::size_t>(node);
    solution.terminal_volts.emplace_back(settled.nodes.floating[n] ? std::numeric_limits<double>::quiet_NaN() : settled.nodes.volts[n]);
  }
  for (const int number : circuit.wire_branch)
    solution.wire_amperes.emplace_back(view_of(filling).amperes(number));
  solution.insides = all_insides(filling);
  solution.wire_alternating = find_alternating(build, circuit, build.situations[situation.at()], solution.insides);
  mark_flashing(filling, solver, solution.insides);
  solution.relays = settled.relays;
  return solution;
}

int find_situation(const Build& build, const std::string& name) {
  for (std::size_t i = 0; i < build.situations.size(); ++i)
    if (build.situations[i].name == name) return static_cast<int>(i);
  return -1;
}

// Solves what the situation starts from first. A circle of `after` is cut where it closes: that one starts from rest.
void solve_in_order(const Build& build, int index, std::vector<int>& under_way, std::vector<Solution>& solved, std::vector<char>& done) {
  const auto at = static_cast<std::size_t>(index);
  if (done[at] || std::find(under_way.begin(), under_way.end(), index) != under_way.end()) return;
  RelayState start;
  const std::string& after = build.situations[at].after;
  const int before = after.empty() ? -1 : find_situation(build, after);
  if (before >= 0) {
    under_way.push_back(index);
    solve_in_order(build, before, under_way, solved, done);
    under_way.pop_back();
    start = solved[static_cast<std::size_t>(before)].relays;
  }
  solved[at] = solve_from(build, SituationId{index}, start);
  done[at] = 1;
}

}  // namespace

Solution solve_situation(const Build& build, SituationId situation) {
  std::vector<Solution> solved(build.situations.size());
  std::vector<char> done(build.situations.size(), 0);
  std::vector<int> under_way;
  solve_in_order(build, situation.index, under_way, solved, done);
  return solved[situation.at()];
}

std::vector<Solution> solve_all(const Build& build) {
  std::vector<Solution> solved(build.situations.size());
  std::vector<char> done(build.situations.size(), 0);
  std::vector<int> under_way;
  for (std::size_t i = 0; i < build.situations.size(); ++i) solve_in_order(build, static_cast<int>(i), under_way, solved, done);
  return solved;
}

Expected observed(const Inside& inside, const InsideState& state) {
  if (!state.is_on) return Expected::off;
  if (state.is_flashing) return Expected::flashing;
  if (state.is_dim) return Expected::dim;
  if (inside.type == InsideType::charger) return Expected::charging;
  if (inside.type == InsideType::source && state.amperes.number() > 0) return Expected::charging;
  return Expected::on;
}

}  // namespace loomfolio
