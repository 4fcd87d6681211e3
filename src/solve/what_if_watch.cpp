// SPDX-License-Identifier: MIT
// Which of a few branches can have moved, without asking each; and lines that shorts bring batteries and chargers to.
#include <algorithm>
#include <cassert>
#include <cmath>

#include "solve/at.h"
#include "solve/what_if.h"
#include "solve/what_if_limits.h"

namespace loomfolio {

// What 1 A over the branch moves at a node is what 1 A put in at the node makes over the branch: the network is the same
// both ways. spread.h stops where all below is less.
void WhatIf::watch(const std::vector<int>& branches) {
  watched_near_.assign(at(circuit_.node_count), {});
  is_listed_.assign(branches.size(), 0);
  std::vector<double> ohms(moved_.size(), 0.0), sum(moved_.size(), 0.0);
  std::vector<int> rows;
  for (std::size_t which = 0; which < branches.size(); ++which) {
    if (branches[which] < 0 || !was_there(branches[which])) continue;
    const SparseVector& pattern = *pattern_of(branches[which]);
    for (std::size_t i = 0; i < pattern.rows.size(); ++i) sum[at(pattern.rows[i])] = pattern.values[i];
    spreading_.backward(pattern.rows, sum, what_if_limits::least_near, rows, ohms);
    for (const int row : pattern.rows) sum[at(row)] = 0;
    for (const int row : rows) {
      if (row_node_[at(row)] >= 0 && std::abs(ohms[at(row)]) >= what_if_limits::least_near)
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
  for (const MildBend& bend : mild_) all += std::abs(bend.current);
  if (2 * all * what_if_limits::least_near > least_volts) return std::nullopt;
  std::vector<int> moved;
  const auto list = [&](int node) {
    for (const int which : watched_near_[at(node)])
      if (!is_listed_[at(which)]) is_listed_[at(which)] = 1, moved.push_back(which);
  };
  for (const Port& port : ports_)
    if (port.current != 0) list(port.a), list(port.b);
  for (const MildBend& bend : mild_) list(circuit_.branches[at(bend.branch)].a), list(circuit_.branches[at(bend.branch)].b);
  for (const int which : moved) is_listed_[at(which)] = 0;
  std::sort(moved.begin(), moved.end());
  return moved;
}

void WhatIf::forget_patterns() {
  has_pattern_.assign(has_pattern_.size(), 0);
  has_node_pattern_.assign(has_node_pattern_.size(), 0);
  watched_near_.clear();
}

// A short brings the battery from charging to giving, and every charger to its limit. With those lines the network has other base
// volts, which no machine shows; answers are compared with the laws themselves, whatever the base.
void WhatIf::learn_lines() {
  assert(accuracy_.reach == WhatIfReach::probe);  // the other asks only what moved from the base
  std::vector<std::pair<int, Line>> learned;
  const auto learn = [&](int branch, double over) {
    const Law law = circuit_.branches[at(branch)].law;
    if (law != Law::source && law != Law::charger) return;
    const Working now = work(circuit_.branches[at(branch)], over);
    learned.push_back({branch, {over, now.amperes, std::max(now.siemens, what_if_limits::least_line)}});
  };
  for (const Port& port : ports_)
    if (port.is_bend && !port.is_held) learn(port.branch, port.volts);
  for (const MildBend& bend : mild_) learn(bend.branch, probe_over(*pattern_of(bend.branch), base_over(bend.branch)));
  begin();
  for (const auto& [branch, line] : learned) {
    Port& port = port_for(branch);
    port.law.law = Law::source;
    port.law.volts = Volts(line.volts - line.amperes / line.siemens);
    port.law.ohms = port.law.charge_ohms = Ohms(1 / line.siemens);
  }
  if (learned.empty() || !solve_ports()) return begin();
  gather();
  spread(0);
  for (int node = 0; node < circuit_.node_count; ++node)
    if (node_row_[at(node)] >= 0) nodes_.volts[at(node)] += moved_[at(node_row_[at(node)])];
  begin();
  for (const auto& [branch, line] : learned) {
    const Branch& b = circuit_.branches[at(branch)];
    spreading_.update(node_row_[at(b.a)], node_row_[at(b.b)], line.siemens - lines_[at(branch)].siemens);
    lines_[at(branch)] = line;
  }
  forget_patterns();
}

}  // namespace loomfolio
