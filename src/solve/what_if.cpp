// SPDX-License-Identifier: MIT
// Around a solved circuit every branch is a straight line, factored once. A change is a branch whose law differs from
// its line: it sends a compensating current through the network, and the network answers at every changed place through
// the couplings Z (Woodbury's identity, kept nonlinear):
//
//     v = v0 - Z r(v),   r_k(v) = law_k(v_k) - line_k(v_k)
//
// a system as small as the number of changed places, solved by Newton steps with the same cut along the bowl as
// newton.cpp. Then the compensating currents are spread (spread.h) and every bent branch that was touched is compared
// with its own line: where the filament, regulator or diode bends away by more than is allowed it joins the changed
// places, and the small system is solved again. Relays that move are changed places too.
#include "solve/what_if.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace loomfolio {
namespace {

constexpr double open_leak = 1e-9;  // S: what is left of an opened branch
constexpr double bridge_amperes = 1e-6;
constexpr double least_bridge = 1e-4;  // S: opening less than this strands nothing that was not stranded
constexpr double least_line = 1e-6;    // S: no line in the matrix is flatter
constexpr double shut = 1e-5;          // S: a path with less slope than this is a leak: shut diodes, limits reached
constexpr int most_rounds = 60, most_steps = 80;
constexpr double least_near = 5e-6;     // ohm: less is a machine's battery seen from another's fuse box
constexpr std::size_t most_ports = 48;  // changed places from which solving the whole circuit anew takes no longer

std::size_t at(int index) { return static_cast<std::size_t>(index); }

// The line that stands in the matrix for a branch.
Working line_of(const Branch& branch, double volts) {
  Working line = work(branch, volts);
  line.siemens = std::max(line.siemens, least_line);
  return line;
}

bool is_same_device(const Gate& gate, GateType type, int device) { return gate.type == type && gate.device == device; }

}  // namespace

WhatIf::WhatIf(const Circuit& circuit, const Settled& base, Flash flash, WhatIfAccuracy accuracy)
    : circuit_(circuit),
      base_(base),
      flash_(flash),
      accuracy_(accuracy),
      solver_(circuit),
      nodes_(solver_.solve(base.relays, flash, base.nodes.volts)),
      spreading_(solver_.factor_at(nodes_, least_line).lower()) {
  const auto nodes = at(circuit.node_count);
  node_row_.resize(nodes);
  row_node_.assign(at(spreading_.size()), -1);
  for (int node = 0; node < circuit.node_count; ++node) {
    node_row_[at(node)] = spreading_.factor_row(solver_.row_of_node()[at(node)]);
    if (node_row_[at(node)] >= 0) row_node_[at(node_row_[at(node)])] = node;
  }
  bent_at_.resize(nodes), near_.resize(nodes), coil_at_.resize(nodes), output_at_.resize(nodes);
  gated_by_coil_.resize(circuit.coils.size()), gated_by_output_.resize(circuit.outputs.size());
  for (int i = 0; i < static_cast<int>(circuit.branches.size()); ++i) {
    const Branch& branch = circuit.branches[at(i)];
    for (const int node : {branch.a, branch.b}) {
      near_[at(node)].push_back(i);
      if (is_bent(branch.law)) bent_at_[at(node)].push_back(i);
    }
    if (branch.gate.type == GateType::coil) gated_by_coil_[at(branch.gate.device)].push_back(i);
    if (branch.gate.type == GateType::output) gated_by_output_[at(branch.gate.device)].push_back(i);
  }
  for (int c = 0; c < static_cast<int>(circuit.coils.size()); ++c) {
    if (circuit.coils[at(c)].branch < 0) continue;
    const Branch& coil = circuit.branches[at(circuit.coils[at(c)].branch)];
    for (const int node : {coil.a, coil.b}) coil_at_[at(node)].push_back(c);
  }
  for (int o = 0; o < static_cast<int>(circuit.outputs.size()); ++o) {
    const OutputDevice& output = circuit.outputs[at(o)];
    for (const int node : {output.supply, output.earth})
      if (node >= 0) output_at_[at(node)].push_back(o);
    for (const auto& condition : output.conditions)
      if (condition.node >= 0) output_at_[at(condition.node)].push_back(o);
  }
  for (int i = 0; i < static_cast<int>(circuit.branches.size()); ++i) {
    const Law law = circuit.branches[at(i)].law;
    const bool may_jump = law == Law::source || law == Law::charger || law == Law::limited || law == Law::diode;
    if (may_jump && is_active(circuit.branches[at(i)], base.relays, flash)) jumpy_.push_back(i);
  }
  jumpy_place_.assign(circuit.branches.size(), -1);
  for (std::size_t j = 0; j < jumpy_.size(); ++j) jumpy_place_[at(jumpy_[j])] = static_cast<int>(j);
  jumpy_couplings_.assign(jumpy_.size() * jumpy_.size(), std::numeric_limits<double>::quiet_NaN());
  node_patterns_.resize(nodes);
  has_node_pattern_.assign(nodes, 0);
  patterns_.resize(circuit.branches.size());
  has_pattern_.assign(circuit.branches.size(), 0);
  port_of_.assign(circuit.branches.size(), -1);
  moved_.assign(at(spreading_.size()), 0.0);
  floats_.assign(nodes, 0);
  begin();
}

void WhatIf::begin() {
  for (const Port& port : ports_)
    if (port.branch >= 0) port_of_[at(port.branch)] = -1;
  ports_.clear();
  added_.clear();
  added_patterns_.clear();
  z_.clear();
  for (const int row : touched_rows_) moved_[at(row)] = 0;
  touched_rows_.clear();
  touched_.clear();
  for (const int node : floated_) floats_[at(node)] = 0;
  floated_.clear();
  relays_ = base_.relays;
  dead_coils_.clear();
  is_anew_ = false;
}

const SparseVector* WhatIf::pattern_of(int branch) {
  if (!has_pattern_[at(branch)]) {
    const Branch& b = circuit_.branches[at(branch)];
    patterns_[at(branch)] = spreading_.forward(node_row_[at(b.a)], node_row_[at(b.b)]);
    has_pattern_[at(branch)] = 1;
  }
  return &patterns_[at(branch)];
}

// Those of batteries, chargers and diodes among each other are asked again with every short.
double WhatIf::coupling_of(const Port& a, const Port& b) {
  const int i = a.branch < 0 ? -1 : jumpy_place_[at(a.branch)], j = b.branch < 0 ? -1 : jumpy_place_[at(b.branch)];
  if (i < 0 || j < 0) return spreading_.coupling(*a.pattern, *b.pattern);
  double& known = jumpy_couplings_[at(std::max(i, j)) * jumpy_.size() + at(std::min(i, j))];
  if (std::isnan(known)) known = spreading_.coupling(*a.pattern, *b.pattern);
  return known;
}

// Grows Z by a row and a column.
void WhatIf::append(Port port) {
  const std::size_t n = ports_.size();
  std::vector<double> grown((n + 1) * (n + 1));
  for (std::size_t i = 0; i < n; ++i) {
    for (std::size_t j = 0; j < n; ++j) grown[i * (n + 1) + j] = z_[i * n + j];
    grown[i * (n + 1) + n] = grown[n * (n + 1) + i] = coupling_of(ports_[i], port);
  }
  grown[n * (n + 1) + n] = coupling_of(port, port);
  z_ = std::move(grown);
  port.volts = nodes_.volts[at(port.a)] - nodes_.volts[at(port.b)];
  for (std::size_t i = 0; i < n; ++i) port.volts -= z_[n * (n + 1) + i] * ports_[i].current;
  if (port.branch >= 0) port_of_[at(port.branch)] = static_cast<int>(n);
  ports_.push_back(std::move(port));
}

WhatIf::Port& WhatIf::port_for(int branch) {
  if (port_of_[at(branch)] >= 0) return ports_[at(port_of_[at(branch)])];
  const Branch& b = circuit_.branches[at(branch)];
  Port port;
  port.branch = branch;
  port.a = b.a, port.b = b.b;
  port.law = b;
  port.is_open = !is_active(b, relays_, flash_);
  port.line_volts = nodes_.volts[at(b.a)] - nodes_.volts[at(b.b)];
  if (is_active(b, base_.relays, flash_)) port.line = line_of(b, port.line_volts);
  port.pattern = pattern_of(branch);
  append(std::move(port));
  return ports_.back();
}

void WhatIf::change(int branch, const Branch& law) {
  Port& port = port_for(branch);
  const Gate gate = port.law.gate;
  port.law = law;
  port.law.a = port.a, port.law.b = port.b;
  port.law.gate = gate;
  port.is_open = false;
  port.is_held = true;
}

void WhatIf::open(int branch) {
  const Branch& b = circuit_.branches[at(branch)];
  for (const int coil : coil_at_[at(b.a)])
    if (circuit_.coils[at(coil)].branch == branch) dead_coils_.push_back(coil);
  if (ports_.empty() && b.a != b.b && is_active(b, base_.relays, flash_)) {
    const SparseVector* pattern = pattern_of(branch);
    const Working now = line_of(b, nodes_.volts[at(b.a)] - nodes_.volts[at(b.b)]);
    const double siemens = now.siemens;
    const double coupling = spreading_.coupling(*pattern, *pattern);
    if (siemens > least_bridge && (1 - coupling * siemens) * siemens < shut && std::abs(now.amperes) < bridge_amperes) {
      // The only way across: nothing flowed through it. The side that loses the reference floats; the other one's volts
      // do not depend on this branch, so its end couples with nothing.
      const SparseVector end = spreading_.forward(node_row_[at(b.a)], -1);
      find_floating_side(branch, std::abs(spreading_.coupling(end, *pattern)) * siemens > 0.5);
      return;
    }
  }
  Port& port = port_for(branch);
  port.is_open = true;
  port.is_held = true;
}

void WhatIf::find_floating_side(int branch, bool a_floats) {
  const Branch& b = circuit_.branches[at(branch)];
  std::vector<int> to_visit = {a_floats ? b.a : b.b};
  while (!to_visit.empty()) {
    const int node = to_visit.back();
    to_visit.pop_back();
    if (floats_[at(node)] || node == circuit_.reference) continue;
    floats_[at(node)] = 1;
    floated_.push_back(node);
    for (const int i : near_[at(node)]) {
      const Branch& next = circuit_.branches[at(i)];
      if (i == branch || !is_active(next, base_.relays, flash_)) continue;
      // A shut diode holds nothing.
      if (work(next, nodes_.volts[at(next.a)] - nodes_.volts[at(next.b)]).siemens < shut) continue;
      to_visit.push_back(next.a == node ? next.b : next.a);
    }
  }
}

void WhatIf::add(const Branch& branch) {
  Port port;
  port.a = branch.a, port.b = branch.b;
  port.law = branch;
  added_patterns_.push_back(spreading_.forward(node_row_[at(branch.a)], node_row_[at(branch.b)]));
  port.pattern = &added_patterns_.back();
  added_.push_back(ports_.size());
  append(std::move(port));
}

Working WhatIf::law_of(const Port& port, double volts) const {
  if (port.is_open) return {open_leak * volts, open_leak};
  return work(port.law, volts);
}

// Current beyond the line in the matrix.
double WhatIf::excess(const Port& port, double volts) const {
  return law_of(port, volts).amperes - port.line.amperes - port.line.siemens * (volts - port.line_volts);
}

// Newton direction d of v - v0 + Z r(v) = 0, and the change of s that goes with it, where v - v0 = -Z s throughout.
bool WhatIf::step_ports(std::vector<double>& direction, std::vector<double>& current_step) {
  const std::size_t n = ports_.size();
  std::vector<double> matrix(n * n), slopes(n), residual(n);
  for (std::size_t k = 0; k < n; ++k) {
    slopes[k] = law_of(ports_[k], ports_[k].volts).siemens - ports_[k].line.siemens;
    residual[k] = excess(ports_[k], ports_[k].volts);
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

bool WhatIf::solve_ports() {
  std::vector<double> direction, step;
  const double enough = std::max(1e-8, 1e-4 * accuracy_.least_volts);
  for (int count = 0; count < most_steps; ++count) {
    if (!step_ports(direction, step)) return false;
    double greatest = 0;
    for (const double d : direction) greatest = std::max(greatest, std::abs(d));
    double share = 1;
    const double start = slope_along(direction, step, 0);
    if (greatest > 1e-6 && start < 0 && slope_along(direction, step, 1) > 0.5 * std::abs(start)) {
      double low = 0, high = 1;
      for (int i = 0; i < 40; ++i) {
        share = (low + high) / 2;
        const double s = slope_along(direction, step, share);
        if (std::abs(s) <= 0.1 * std::abs(start)) break;
        (s > 0 ? high : low) = share;
      }
    }
    for (std::size_t k = 0; k < ports_.size(); ++k) {
      ports_[k].volts += share * direction[k];
      ports_[k].current += share * step[k];
    }
    if (share == 1 && greatest < enough) return true;
  }
  return false;
}

void WhatIf::spread(double least) {
  for (const int row : touched_rows_) moved_[at(row)] = 0;
  touched_rows_.clear();
  touched_.clear();
  std::vector<const SparseVector*> patterns;
  std::vector<double> weights;
  for (const Port& port : ports_) {
    patterns.push_back(port.pattern);
    weights.push_back(-port.current);
  }
  spreading_.backward(patterns, weights, least, touched_rows_, moved_);
  for (const int row : touched_rows_)
    if (row_node_[at(row)] >= 0) touched_.push_back(row_node_[at(row)]);
}

bool WhatIf::leaves_line(int branch, double volts) const {
  const Branch& b = circuit_.branches[at(branch)];
  const double start = nodes_.volts[at(b.a)] - nodes_.volts[at(b.b)];
  const Working line = line_of(b, start);
  return std::abs(work(b, volts).amperes - line.amperes - line.siemens * (volts - start)) > accuracy_.least_amperes;
}

bool WhatIf::follow_sharp() {
  const std::size_t before = ports_.size();
  for (const int i : jumpy_) {
    if (port_of_[at(i)] >= 0) continue;
    const Branch& b = circuit_.branches[at(i)];
    if (leaves_line(i, probe_over(*pattern_of(i), nodes_.volts[at(b.a)] - nodes_.volts[at(b.b)])))
      port_for(i).is_bend = true;
  }
  return ports_.size() > before;
}

// Adds bent branches that left their line. True when any did.
bool WhatIf::follow_bends(Bends bends) {
  if (bends == Bends::sharp || accuracy_.reach == WhatIfReach::probe) return follow_sharp();
  const std::size_t before = ports_.size();
  for (const int node : touched_)
    for (const int i : bent_at_[at(node)]) {
      const Branch& b = circuit_.branches[at(i)];
      if (port_of_[at(i)] >= 0 || !is_active(b, base_.relays, flash_)) continue;
      if (leaves_line(i, volts(b.a) - volts(b.b))) port_for(i).is_bend = true;
    }
  return ports_.size() > before;
}

// What 1 A over the branch moves at a node is what 1 A put in at the node makes over the branch: the network is the same
// both ways. spread.h stops where all below is less.
void WhatIf::watch(const std::vector<int>& branches) {
  watched_near_.assign(at(circuit_.node_count), {});
  is_listed_.assign(branches.size(), 0);
  std::vector<double> ohms(moved_.size(), 0.0);
  std::vector<int> rows;
  for (std::size_t which = 0; which < branches.size(); ++which) {
    if (branches[which] < 0 || !is_active(circuit_.branches[at(branches[which])], base_.relays, flash_)) continue;
    spreading_.backward({pattern_of(branches[which])}, {1.0}, least_near, rows, ohms);
    for (const int row : rows) {
      if (row_node_[at(row)] >= 0 && std::abs(ohms[at(row)]) >= least_near)
        watched_near_[at(row_node_[at(row)])].push_back(static_cast<int>(which));
      ohms[at(row)] = 0;
    }
    rows.clear();
  }
}

std::optional<std::vector<int>> WhatIf::find_moved(double least_volts) {
  if (is_anew_ || watched_near_.empty()) return std::nullopt;
  double all = 0;
  for (const Port& port : ports_) all += std::abs(port.current);
  if (2 * all * least_near > least_volts) return std::nullopt;
  std::vector<int> moved;
  for (const Port& port : ports_) {
    if (port.current == 0) continue;
    for (const int node : {port.a, port.b})
      for (const int which : watched_near_[at(node)])
        if (!is_listed_[at(which)]) is_listed_[at(which)] = 1, moved.push_back(which);
  }
  for (const int which : moved) is_listed_[at(which)] = 0;
  std::sort(moved.begin(), moved.end());
  return moved;
}

// The whole circuit with its changes, from the volts known so far: where nearly everything moves, low rank is none.
bool WhatIf::solve_anew() {
  Circuit altered = circuit_;
  for (const Port& port : ports_) {
    Branch branch = port.law;
    branch.gate = {};
    if (port.is_open) branch.law = Law::conductor, branch.ohms = Ohms(1 / open_leak);
    branch.a = port.a, branch.b = port.b;
    if (port.branch >= 0)
      altered.branches[at(port.branch)] = branch;
    else
      altered.branches.push_back(branch);
  }
  std::vector<double> guess(at(circuit_.node_count));
  for (int node = 0; node < circuit_.node_count; ++node) {
    const int row = node_row_[at(node)];
    guess[at(node)] = nodes_.volts[at(node)] + (row < 0 ? 0 : moved_[at(row)]);
  }
  NodeSolver solver(altered);
  const NodeVolts now = solver.solve(relays_, flash_, guess);
  if (!now.has_settled) return false;
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

bool WhatIf::solve(Bends bends) {
  if (ports_.empty()) return true;
  if (is_anew_) return solve_anew();
  for (int round = 0; round < most_rounds; ++round) {
    if (!solve_ports()) return false;
    if (bends == Bends::all && accuracy_.reach == WhatIfReach::spread) spread(accuracy_.least_volts);
    if (follow_bends(bends)) {
      if (bends == Bends::all && accuracy_.reach == WhatIfReach::spread && ports_.size() > most_ports)
        return solve_anew();
      continue;
    }
    return true;
  }
  return false;
}

// The ports that stay keep their currents; their volts are what these make without the others.
void WhatIf::forget_bends() {
  is_anew_ = false;
  const std::size_t n = ports_.size();
  std::vector<std::size_t> kept, place(n, n);
  for (std::size_t k = 0; k < n; ++k) {
    const Port& port = ports_[k];
    if (port.is_bend && !port.is_held &&
        port.is_open == !is_active(circuit_.branches[at(port.branch)], base_.relays, flash_)) {
      port_of_[at(port.branch)] = -1;
      continue;
    }
    place[k] = kept.size();
    kept.push_back(k);
  }
  std::vector<Port> ports;
  std::vector<double> couplings;
  for (const std::size_t k : kept) {
    Port port = ports_[k];
    port.volts = nodes_.volts[at(port.a)] - nodes_.volts[at(port.b)];
    for (const std::size_t j : kept) {
      couplings.push_back(z_[k * n + j]);
      port.volts -= z_[k * n + j] * ports_[j].current;
    }
    if (port.branch >= 0) port_of_[at(port.branch)] = static_cast<int>(ports.size());
    ports.push_back(std::move(port));
  }
  for (std::size_t& added : added_) added = place[added];
  ports_ = std::move(ports);
  z_ = std::move(couplings);
}

void WhatIf::gate(int device, GateType type) {
  for (const int i : (type == GateType::coil ? gated_by_coil_ : gated_by_output_)[at(device)]) {
    const Branch& b = circuit_.branches[at(i)];
    if (!is_same_device(b.gate, type, device)) continue;
    Port& port = port_for(i);
    if (!port.is_held) port.is_open = !is_active(b, relays_, flash_);
  }
}

bool WhatIf::move_relays() {
  RelayState next = relays_;
  NodeVolts seen;  // wanted() looks only at nodes that devices watch
  seen.volts.resize(at(circuit_.node_count));
  seen.floating.resize(at(circuit_.node_count));
  std::vector<int> coils, outputs;
  for (const auto* nodes : {&touched_, &floated_})
    for (const int node : *nodes) {
      coils.insert(coils.end(), coil_at_[at(node)].begin(), coil_at_[at(node)].end());
      outputs.insert(outputs.end(), output_at_[at(node)].begin(), output_at_[at(node)].end());
    }
  coils.insert(coils.end(), dead_coils_.begin(), dead_coils_.end());
  if (coils.empty() && outputs.empty()) return false;
  bool moved = false;
  const auto look = [&](int node) {
    seen.volts[at(node)] = volts(node), seen.floating[at(node)] = is_floating(node) ? 1 : 0;
  };
  for (const int c : coils) {
    const Branch& coil = circuit_.branches[at(circuit_.coils[at(c)].branch)];
    look(coil.a), look(coil.b);
    const bool is_dead = std::find(dead_coils_.begin(), dead_coils_.end(), c) != dead_coils_.end();
    const bool is_in = !is_dead && wanted_coil(circuit_, c, relays_, seen);
    if (is_in == (next.coil_in[at(c)] != 0)) continue;
    next.coil_in[at(c)] = is_in ? 1 : 0;
    moved = true;
  }
  for (const int o : outputs) {
    const OutputDevice& output = circuit_.outputs[at(o)];
    for (const int node : {output.supply, output.earth})
      if (node >= 0) look(node);
    for (const auto& condition : output.conditions)
      if (condition.node >= 0) look(condition.node);
    const bool is_on = wanted_output(circuit_, o, seen);
    if (is_on == (next.output_on[at(o)] != 0)) continue;
    next.output_on[at(o)] = is_on ? 1 : 0;
    moved = true;
  }
  const RelayState before = relays_;
  relays_ = std::move(next);
  for (std::size_t c = 0; c < before.coil_in.size(); ++c)
    if (before.coil_in[c] != relays_.coil_in[c]) gate(static_cast<int>(c), GateType::coil);
  for (std::size_t o = 0; o < before.output_on.size(); ++o)
    if (before.output_on[o] != relays_.output_on[o]) gate(static_cast<int>(o), GateType::output);
  return moved;
}

void WhatIf::move_device(GateType type, int device, bool is_on) {
  (type == GateType::coil ? relays_.coil_in : relays_.output_on)[at(device)] = is_on ? 1 : 0;
  gate(device, type);
}

double WhatIf::volts(int node) const {
  if (floats_[at(node)]) return 0;
  const int row = node_row_[at(node)];
  return nodes_.volts[at(node)] + (row < 0 ? 0 : moved_[at(row)]);
}

bool WhatIf::is_floating(int node) const { return floats_[at(node)] != 0 || nodes_.floating[at(node)] != 0; }

double WhatIf::amperes(int branch) const {
  const int port = port_of_[at(branch)];
  const Branch& b = circuit_.branches[at(branch)];
  if (port >= 0) return law_of(ports_[at(port)], ports_[at(port)].volts).amperes;
  if (!is_active(b, base_.relays, flash_) || floats_[at(b.a)] || floats_[at(b.b)]) return 0;
  return work(b, volts(b.a) - volts(b.b)).amperes;
}

double WhatIf::probe_over(const SparseVector& pattern, double base) const {
  double volts = base;
  for (const Port& port : ports_)
    if (port.current != 0) volts -= port.current * spreading_.coupling(pattern, *port.pattern);
  return volts;
}

double WhatIf::probe_volts(int node) {
  if (floats_[at(node)]) return 0;
  if (!has_node_pattern_[at(node)]) {
    node_patterns_[at(node)] = spreading_.forward(node_row_[at(node)], -1);
    has_node_pattern_[at(node)] = 1;
  }
  return probe_over(node_patterns_[at(node)], nodes_.volts[at(node)]);
}

double WhatIf::probe_amperes(int branch) {
  const Branch& b = circuit_.branches[at(branch)];
  if (port_of_[at(branch)] >= 0 || !is_active(b, base_.relays, flash_)) return amperes(branch);
  if (floats_[at(b.a)] || floats_[at(b.b)]) return 0;
  return work(b, probe_over(*pattern_of(branch), nodes_.volts[at(b.a)] - nodes_.volts[at(b.b)])).amperes;
}

bool WhatIf::is_there(int branch) const {
  const int port = port_of_[at(branch)];
  return port >= 0 ? !ports_[at(port)].is_open : is_active(circuit_.branches[at(branch)], base_.relays, flash_);
}

double WhatIf::added_amperes(std::size_t which) const {
  const Port& port = ports_[added_[which]];
  return law_of(port, port.volts).amperes;
}

}  // namespace loomfolio
