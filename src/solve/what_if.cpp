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

#include "solve/at.h"
#include "solve/what_if_limits.h"

namespace loomfolio {
namespace {

constexpr double bridge_amperes = 1e-6;
constexpr double least_bridge = 1e-4;  // S: opening less than this strands nothing that was not stranded
constexpr double shut = 1e-5;          // S: a path with less slope than this is a leak: shut diodes, limits reached

}  // namespace

WhatIf::WhatIf(const Circuit& circuit, const Settled& base, Flash flash, WhatIfAccuracy accuracy)
    : circuit_(circuit),
      flash_(flash),
      accuracy_(accuracy),
      base_relays_(base.relays),
      solver_(circuit),
      nodes_(solver_.solve(base.relays, flash, base.nodes.volts)),
      spreading_(solver_.factor_at(nodes_, what_if_limits::least_line).lower()) {
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
    if (may_jump) jumpy_.push_back(i);
  }
  lines_.resize(circuit.branches.size());
  for (int i = 0; i < static_cast<int>(circuit.branches.size()); ++i)
    if (was_there(i)) {
      const Working now = work(circuit.branches[at(i)], base_over(i));
      lines_[at(i)] = {base_over(i), now.amperes, std::max(now.siemens, what_if_limits::least_line)};
    }
  node_patterns_.resize(nodes);
  has_node_pattern_.assign(nodes, 0);
  patterns_.resize(circuit.branches.size());
  has_pattern_.assign(circuit.branches.size(), 0);
  port_of_.assign(circuit.branches.size(), -1);
  mild_of_.assign(circuit.branches.size(), -1);
  is_asked_.assign(circuit.branches.size(), 0);
  for (auto* by_row : {&moved_, &mild_sum_, &sum_}) by_row->assign(at(spreading_.size()), 0.0);
  is_in_sum_.assign(at(spreading_.size()), 0);
  floats_.assign(nodes, 0);
  find_base_islands();
  seen_.volts.resize(nodes);
  seen_.floating.resize(nodes);
  begin();
}

void WhatIf::begin() {
  for (const Port& port : ports_)
    if (port.branch >= 0) port_of_[at(port.branch)] = -1;
  ports_.clear();
  forget_mild();
  gather();
  added_.clear();
  added_patterns_.clear();
  z_.clear();
  for (const int row : touched_rows_) moved_[at(row)] = 0;
  touched_rows_.clear();
  touched_.clear();
  for (const int node : floated_) floats_[at(node)] = 0;
  floated_.clear();
  revived_.clear();
  relays_ = base_relays_;
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

WhatIf::Port& WhatIf::port_for(int branch) {
  if (port_of_[at(branch)] >= 0) return ports_[at(port_of_[at(branch)])];
  const Branch& b = circuit_.branches[at(branch)];
  Port port;
  port.branch = branch;
  port.a = b.a, port.b = b.b;
  port.law = b;
  port.is_open = !is_active(b, relays_, flash_);
  port.line = lines_[at(branch)];
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
  if (ports_.empty() && b.a != b.b && was_there(branch)) {
    const SparseVector* pattern = pattern_of(branch);
    const Line now = lines_[at(branch)];
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
      if (i == branch || !was_there(i)) continue;
      // A shut diode holds nothing.
      if (work(next, base_over(i)).siemens < shut) continue;
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

double WhatIf::volts(int node) const {
  if (floats_[at(node)]) return 0;
  const int row = node_row_[at(node)];
  return nodes_.volts[at(node)] + (row < 0 ? 0 : moved_[at(row)]);
}

bool WhatIf::is_floating(int node) const {
  if (floats_[at(node)] != 0) return true;
  const int island = base_island_[at(node)];
  return island >= 0 && std::find(revived_.begin(), revived_.end(), island) == revived_.end();
}

double WhatIf::amperes(int branch) const {
  const int port = port_of_[at(branch)];
  const Branch& b = circuit_.branches[at(branch)];
  if (port >= 0) return law_of(ports_[at(port)], ports_[at(port)].volts).amperes;
  if (!was_there(branch) || floats_[at(b.a)] || floats_[at(b.b)]) return 0;
  return work(b, volts(b.a) - volts(b.b)).amperes;
}

double WhatIf::probe_over(const SparseVector& pattern, double base) const {
  return base + spreading_.coupling_of_sum(sum_, pattern);
}

double WhatIf::base_over(int branch) const {
  const Branch& b = circuit_.branches[at(branch)];
  return nodes_.volts[at(b.a)] - nodes_.volts[at(b.b)];
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
  if (port_of_[at(branch)] >= 0 || !was_there(branch)) return amperes(branch);
  if (floats_[at(b.a)] || floats_[at(b.b)]) return 0;
  return work(b, probe_over(*pattern_of(branch), base_over(branch))).amperes;
}

bool WhatIf::is_there(int branch) const {
  const int port = port_of_[at(branch)];
  return port >= 0 ? !ports_[at(port)].is_open : was_there(branch);
}

std::vector<int> WhatIf::moved_branches() const {
  std::vector<int> moved;
  for (const Port& port : ports_)
    if (port.branch >= 0 && port.is_open == was_there(port.branch)) moved.push_back(port.branch);
  return moved;
}

double WhatIf::added_amperes(std::size_t which) const {
  const Port& port = ports_[added_[which]];
  return law_of(port, port.volts).amperes;
}

}  // namespace loomfolio
