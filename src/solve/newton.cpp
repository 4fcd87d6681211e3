// SPDX-License-Identifier: MIT
// Modified nodal analysis with Newton steps.
//
// Every branch is a current that depends on the voltage over it alone, so the unknowns are node voltages and the matrix of slopes is
// symmetric. Nearly all laws rise with voltage: the currents are then the slope of one bowl-shaped function (the circuit's content,
// Millar 1951), its bottom is the answer, and a Newton direction always leads down. Where a whole step would overshoot - a filament
// guessed cold, a diode guessed open, a regulator at its limit - the step is cut to where the bowl is lowest along it.
//
// An island without a path to the reference is pinned by 1 S at one node: no current flows through the pin, so nothing else changes.
#include "solve/newton.h"

#include <algorithm>
#include <cmath>

#include "solve/islands.h"

namespace loomfolio {
namespace {

constexpr int most_steps = 200;
constexpr double usual_pin = 1;  // S
constexpr double enough_volts = 1e-9;
constexpr double small_volts = 1e-6;  // steps this short are taken whole: rounding hides which way is down

double over(const std::vector<double>& volts, const Branch& branch) {
  return volts[static_cast<std::size_t>(branch.a)] - volts[static_cast<std::size_t>(branch.b)];
}

}  // namespace

NodeSolver::NodeSolver(const Circuit& circuit) : circuit_(circuit) {
  int row = 0;
  for (int node = 0; node < circuit.node_count; ++node) row_of_node_.push_back(node == circuit.reference ? -1 : row++);
  right_side_.resize(static_cast<std::size_t>(row));
  find_places();
}

// Places of all branches, there or not, so that the pattern stays; then pins.
void NodeSolver::find_places() {
  for (const Branch& branch : circuit_.branches) {
    if (branch.a == branch.b) continue;
    const int ra = row_of_node_[static_cast<std::size_t>(branch.a)],
              rb = row_of_node_[static_cast<std::size_t>(branch.b)];
    if (ra >= 0) entries_.push_back({ra, ra, 0});
    if (rb >= 0) entries_.push_back({rb, rb, 0});
    if (ra >= 0 && rb >= 0) entries_.push_back({std::max(ra, rb), std::min(ra, rb), 0});
  }
  for (const int row : row_of_node_)
    if (row >= 0) entries_.push_back({row, row, 0});
}

void NodeSolver::find_islands(const RelayState& state, Flash flash) {
  Islands islands(circuit_.node_count);
  active_.clear();
  workings_.assign(circuit_.branches.size(), {});
  for (std::size_t i = 0; i < circuit_.branches.size(); ++i) {
    const Branch& branch = circuit_.branches[i];
    if (!is_active(branch, state, flash) || branch.a == branch.b) continue;
    active_.push_back(static_cast<int>(i));
    islands.join(branch.a, branch.b);
  }
  floating_.assign(static_cast<std::size_t>(circuit_.node_count), 0);
  is_pinned_.assign(static_cast<std::size_t>(circuit_.node_count), 0);
  for (int node = 0; node < circuit_.node_count; ++node) {
    if (islands.are_joined(node, circuit_.reference)) continue;
    floating_[static_cast<std::size_t>(node)] = 1;
    if (islands.root(node) == node) is_pinned_[static_cast<std::size_t>(node)] = 1;
  }
}

void NodeSolver::work_all(const std::vector<double>& volts) {
  for (const int i : active_) {
    const Branch& branch = circuit_.branches[static_cast<std::size_t>(i)];
    workings_[static_cast<std::size_t>(i)] = work(branch, over(volts, branch));
  }
}

void NodeSolver::start_all() {
  for (const int i : active_)
    workings_[static_cast<std::size_t>(i)] = starting_line(circuit_.branches[static_cast<std::size_t>(i)]);
}

// Entries in the order of find_places(). Right side: minus the currents that leave each node.
bool NodeSolver::factor(const NodeVolts& result, double pin) {
  std::fill(right_side_.begin(), right_side_.end(), 0.0);
  std::size_t next = 0;
  for (std::size_t i = 0; i < circuit_.branches.size(); ++i) {
    const Branch& branch = circuit_.branches[i];
    if (branch.a == branch.b) continue;
    const Working& w = workings_[i];
    const int ra = row_of_node_[static_cast<std::size_t>(branch.a)], rb = row_of_node_[static_cast<std::size_t>(branch.b)];
    if (ra >= 0) entries_[next++].value = w.siemens, right_side_[static_cast<std::size_t>(ra)] -= w.amperes;
    if (rb >= 0) entries_[next++].value = w.siemens, right_side_[static_cast<std::size_t>(rb)] += w.amperes;
    if (ra >= 0 && rb >= 0) entries_[next++].value = -w.siemens;
  }
  for (int node = 0; node < circuit_.node_count; ++node) {
    const int row = row_of_node_[static_cast<std::size_t>(node)];
    const bool is_pinned = is_pinned_[static_cast<std::size_t>(node)] != 0;
    if (row >= 0) entries_[next++].value = is_pinned ? pin : 0.0;
    if (is_pinned) right_side_[static_cast<std::size_t>(row)] -= result.volts[static_cast<std::size_t>(node)];
  }
  return matrix_.factor(static_cast<int>(right_side_.size()), entries_);
}

const SymmetricMatrix& NodeSolver::factor_at(const NodeVolts& nodes, double least_siemens) {
  work_all(nodes.volts);
  for (const int i : active_) {
    double& siemens = workings_[static_cast<std::size_t>(i)].siemens;
    siemens = std::max(siemens, least_siemens);
  }
  factor(nodes, least_siemens);
  return matrix_;
}

// How the bowl slopes along a direction, where the branches have been worked.
double NodeSolver::slope_along(const std::vector<double>& at, const std::vector<double>& direction) const {
  double sum = 0;
  for (const int i : active_)
    sum += workings_[static_cast<std::size_t>(i)].amperes *
           over(direction, circuit_.branches[static_cast<std::size_t>(i)]);
  for (std::size_t node = 0; node < is_pinned_.size(); ++node)
    if (is_pinned_[node]) sum += at[node] * direction[node];
  return sum;
}

// Goes the whole step, or as far as the bowl's lowest place along it.
void NodeSolver::step_along(std::vector<double>& volts, const std::vector<double>& direction) {
  const std::vector<double> from = volts;
  const double start = slope_along(from, direction);
  const auto go = [&](double share) {
    for (std::size_t i = 0; i < from.size(); ++i) volts[i] = from[i] + share * direction[i];
    work_all(volts);
    return slope_along(volts, direction);
  };
  const double end = go(1);
  if (!(start < 0) || !(end > 0.5 * std::abs(start))) return;
  double low = 0, high = 1;
  for (int i = 0; i < 40; ++i) {
    const double middle = (low + high) / 2;
    const double s = go(middle);
    if (std::abs(s) <= 0.1 * std::abs(start)) return;
    (s > 0 ? high : low) = middle;
  }
  go(high);
}

NodeVolts NodeSolver::solve(const RelayState& state, Flash flash, const std::vector<double>& guess) {
  find_islands(state, flash);
  NodeVolts result;
  result.floating = floating_;
  const bool has_guess = guess.size() == static_cast<std::size_t>(circuit_.node_count);
  result.volts = has_guess ? guess : std::vector<double>(static_cast<std::size_t>(circuit_.node_count), 0.0);
  std::vector<double> direction(result.volts.size(), 0.0);
  if (has_guess)
    work_all(result.volts);
  else
    start_all();
  for (; result.steps < most_steps && !result.has_settled; ++result.steps) {
    const bool is_first = result.steps == 0 && !has_guess;
    if (!factor(result, usual_pin)) break;
    matrix_.solve(right_side_);
    double greatest = 0;
    for (std::size_t node = 0; node < direction.size(); ++node) {
      const int row = row_of_node_[node];
      direction[node] = row < 0 ? 0 : right_side_[static_cast<std::size_t>(row)];
      greatest = std::max(greatest, std::abs(direction[node]));
    }
    if (!std::isfinite(greatest)) break;
    if (is_first || greatest < small_volts) {
      for (std::size_t node = 0; node < direction.size(); ++node) result.volts[node] += direction[node];
      result.has_settled = !is_first && greatest < enough_volts;
      if (!result.has_settled) work_all(result.volts);
    } else {
      step_along(result.volts, direction);
    }
  }
  return result;
}

}  // namespace loomfolio
