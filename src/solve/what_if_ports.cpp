// SPDX-License-Identifier: MIT
// The small system of the changed places, or the whole circuit where they are many.
#include <algorithm>
#include <cmath>

#include "solve/at.h"
#include "solve/what_if.h"
#include "solve/what_if_limits.h"

namespace loomfolio {
namespace {

constexpr int most_port_steps = 80;
constexpr double small_steps = 1e-6;  // V: taken whole, as in newton.cpp

}  // namespace

// Grows Z by a row and a column.
void WhatIf::append(Port port) {
  const std::size_t n = ports_.size();
  std::vector<double> grown((n + 1) * (n + 1));
  for (std::size_t i = 0; i < n; ++i) {
    for (std::size_t j = 0; j < n; ++j) grown[i * (n + 1) + j] = z_[i * n + j];
    grown[i * (n + 1) + n] = grown[n * (n + 1) + i] = spreading_.coupling(*ports_[i].pattern, *port.pattern);
  }
  grown[n * (n + 1) + n] = spreading_.coupling(*port.pattern, *port.pattern);
  z_ = std::move(grown);
  if (port.branch >= 0) port_of_[at(port.branch)] = static_cast<int>(n);
  ports_.push_back(std::move(port));
  ports_.back().volts = ports_over(n);
}

// What the base, the mild bends and the currents of all ports make over it.
double WhatIf::ports_over(std::size_t port) const {
  const Port& p = ports_[port];
  double volts = nodes_.volts[at(p.a)] - nodes_.volts[at(p.b)];
  if (!mild_.empty()) volts += spreading_.coupling_of_sum(mild_sum_, *p.pattern);
  for (std::size_t i = 0; i < ports_.size(); ++i) volts -= z_[port * ports_.size() + i] * ports_[i].current;
  return volts;
}

Working WhatIf::law_of(const Port& port, double volts) const {
  if (port.is_open) return {what_if_limits::open_leak * volts, what_if_limits::open_leak};
  return work(port.law, volts);
}

// Current beyond the line in the matrix.
double WhatIf::excess(const Port& port, double volts) const {
  return law_of(port, volts).amperes - port.line.at(volts);
}

// Newton direction d of v - v0 + Z r(v) = 0, and the change of s that goes with it, where v - v0 = -Z s throughout.
bool WhatIf::step_ports(std::vector<double>& direction, std::vector<double>& current_step) {
  const std::size_t n = ports_.size();
  std::vector<double> matrix(n * n), slopes(n), residual(n);
  for (std::size_t k = 0; k < n; ++k) {
    const Working now = law_of(ports_[k], ports_[k].volts);
    slopes[k] = now.siemens - ports_[k].line.siemens;
    residual[k] = now.amperes - ports_[k].line.at(ports_[k].volts);
  }
  direction.assign(n, 0.0);
  for (std::size_t i = 0; i < n; ++i)
    for (std::size_t k = 0; k < n; ++k) {
      matrix[i * n + k] = z_[i * n + k] * slopes[k] + (i == k ? 1 : 0);
      direction[i] += z_[i * n + k] * (ports_[k].current - residual[k]);
    }
  if (!solve_full(matrix, direction)) return false;
  current_step.resize(n);
  for (std::size_t k = 0; k < n; ++k) current_step[k] = residual[k] + slopes[k] * direction[k] - ports_[k].current;
  return true;
}

// How the bowl slopes along the direction, at a share of it.
double WhatIf::slope_along(const std::vector<double>& direction, const std::vector<double>& step, double share) const {
  double sum = 0;
  for (std::size_t k = 0; k < ports_.size(); ++k)
    sum += direction[k] *
           (excess(ports_[k], ports_[k].volts + share * direction[k]) - ports_[k].current - share * step[k]);
  return sum;
}

// Share of the step to take: the whole, or as far as the bowl's lowest place along it.
double WhatIf::length_along(const std::vector<double>& direction, const std::vector<double>& step) const {
  const double start = slope_along(direction, step, 0);
  if (!(start < 0) || !(slope_along(direction, step, 1) > 0.5 * std::abs(start))) return 1;
  double low = 0, high = 1, share = 1;
  for (int i = 0; i < 40; ++i) {
    share = (low + high) / 2;
    const double s = slope_along(direction, step, share);
    if (std::abs(s) <= 0.1 * std::abs(start)) break;
    (s > 0 ? high : low) = share;
  }
  return share;
}

bool WhatIf::solve_ports() {
  std::vector<double> direction, step;
  const double enough = std::max(1e-8, 1e-4 * accuracy_.least_volts);
  for (int count = 0; count < most_port_steps; ++count) {
    if (!step_ports(direction, step)) return false;
    double greatest = 0;
    for (const double d : direction) greatest = std::max(greatest, std::abs(d));
    const double share = greatest > small_steps ? length_along(direction, step) : 1;
    for (std::size_t k = 0; k < ports_.size(); ++k) {
      ports_[k].volts += share * direction[k];
      ports_[k].current += share * step[k];
    }
    if (share == 1 && greatest < enough) return true;
  }
  return false;
}

// Where branches were added the places of the matrix are others; else one copy of the circuit serves again and again.
NodeVolts WhatIf::solve_altered(const std::vector<double>& guess) {
  const auto alter = [&](const Port& port) {
    Branch branch = port.law;
    branch.gate = {};
    if (port.is_open) branch.law = Law::conductor, branch.ohms = Ohms(1 / what_if_limits::open_leak);
    branch.a = port.a, branch.b = port.b;
    return branch;
  };
  if (!added_.empty()) {
    Circuit altered = circuit_;
    for (const Port& port : ports_)
      if (port.branch >= 0) altered.branches[at(port.branch)] = alter(port);
    for (const std::size_t added : added_) altered.branches.push_back(alter(ports_[added]));
    return NodeSolver(altered).solve(relays_, flash_, guess);
  }
  if (!altered_) {
    altered_ = std::make_unique<Circuit>(circuit_);
    anew_ = std::make_unique<NodeSolver>(*altered_);
  }
  for (const Port& port : ports_) altered_->branches[at(port.branch)] = alter(port);
  NodeVolts now = anew_->solve(relays_, flash_, guess);
  for (const Port& port : ports_) altered_->branches[at(port.branch)] = circuit_.branches[at(port.branch)];
  return now;
}

// The whole circuit with its changes, from the volts known so far: where nearly everything moves, low rank is none.
bool WhatIf::solve_anew() {
  std::vector<double> guess(at(circuit_.node_count));
  for (int node = 0; node < circuit_.node_count; ++node) {
    const int row = node_row_[at(node)];
    guess[at(node)] = nodes_.volts[at(node)] + (row < 0 ? 0 : moved_[at(row)]);
  }
  const NodeVolts now = solve_altered(guess);
  if (!now.has_settled) return false;
  forget_mild();
  touched_rows_.clear();
  touched_.clear();
  for (int node = 0; node < circuit_.node_count; ++node) {
    const int row = node_row_[at(node)];
    if (row < 0) continue;
    touched_rows_.push_back(row);
    moved_[at(row)] = now.volts[at(node)] - nodes_.volts[at(node)];
    if (std::abs(moved_[at(row)]) >= accuracy_.least_volts) touched_.push_back(node);
  }
  for (Port& port : ports_) {
    port.volts = now.volts[at(port.a)] - now.volts[at(port.b)];
    port.current = excess(port, port.volts);
  }
  is_anew_ = true;
  return true;
}

}  // namespace loomfolio
