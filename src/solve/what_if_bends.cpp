// SPDX-License-Identifier: MIT
// What follows bends. A law that left its line joins the ports, where Newton steps follow it - or, where it bends but a little,
// stays a mild bend: its compensating current is put in as found, the answer asked again, and so on. With slopes g that differ from
// the lines G by at most a share q of 1/Z, Z being what the network offers at the place, each turn leaves q of the error: the
// network with its lines is stiffer than any line alone (G <= 1/Z). So a short that pulls down every lamp of the machine a little
// still is a matter of one or two ports.
#include <algorithm>
#include <cmath>

#include "solve/at.h"
#include "solve/what_if.h"
#include "solve/what_if_limits.h"

namespace loomfolio {
namespace {

constexpr int most_bending_rounds = 60;
constexpr int patience = 8;         // rounds after which a mild bend that does not come to rest becomes a port
constexpr double mild_share = 0.25;  // q
constexpr double mild_rest = 0.1;    // of the amperes that a law may be off: mild bends are followed closer

}  // namespace

// Sums up all compensating currents, by row of the factor.
void WhatIf::gather() {
  for (const int row : sum_rows_) sum_[at(row)] = 0, is_in_sum_[at(row)] = 0;
  sum_rows_.clear();
  const auto list = [&](const SparseVector& pattern) {
    for (const int row : pattern.rows)
      if (!is_in_sum_[at(row)]) is_in_sum_[at(row)] = 1, sum_rows_.push_back(row);
  };
  for (const MildBend& bend : mild_) list(*pattern_of(bend.branch));
  for (const int row : sum_rows_) sum_[at(row)] = mild_sum_[at(row)];
  for (const Port& port : ports_) {
    list(*port.pattern);
    for (std::size_t i = 0; i < port.pattern->rows.size(); ++i)
      sum_[at(port.pattern->rows[i])] -= port.current * port.pattern->values[i];
  }
}

void WhatIf::spread(double least) {
  for (const int row : touched_rows_) moved_[at(row)] = 0;
  touched_rows_.clear();
  touched_.clear();
  spreading_.backward(sum_rows_, sum_, least, touched_rows_, moved_);
  for (const int row : touched_rows_)
    if (row_node_[at(row)] >= 0) touched_.push_back(row_node_[at(row)]);
}

void WhatIf::set_mild(int branch, double current) {
  if (mild_of_[at(branch)] < 0) {
    mild_of_[at(branch)] = static_cast<int>(mild_.size());
    mild_.push_back({branch, 0});
  }
  MildBend& bend = mild_[at(mild_of_[at(branch)])];
  const SparseVector& pattern = *pattern_of(branch);
  for (std::size_t i = 0; i < pattern.rows.size(); ++i)
    mild_sum_[at(pattern.rows[i])] -= (current - bend.current) * pattern.values[i];
  bend.current = current;
}

void WhatIf::forget_mild() {
  for (const MildBend& bend : mild_) {
    for (const int row : pattern_of(bend.branch)->rows) mild_sum_[at(row)] = 0;
    mild_of_[at(bend.branch)] = -1;
  }
  mild_.clear();
}

// How far its slope may differ from its line's: a share of what the network offers there. What was opened or weakened offers less
// than the factored network; then only the law's own line, which is still there, is sure.
double WhatIf::mild_slope_limit(int branch) {
  const bool is_weakened = std::any_of(ports_.begin(), ports_.end(), [&](const Port& port) {
    return law_of(port, port.volts).siemens < port.line.siemens;
  });
  if (is_weakened) return mild_share * lines_[at(branch)].siemens;
  const SparseVector& pattern = *pattern_of(branch);
  return mild_share / spreading_.coupling(pattern, pattern);
}

// Compares bent branches that were touched (or all that may jump) with the lines they stand for.
WhatIf::Followed WhatIf::follow_bends(Bends bends, int round) {
  const bool is_spread = bends == Bends::all && accuracy_.reach == WhatIfReach::spread;
  std::vector<int> to_ports;
  std::vector<MildBend> to_mild;
  const auto ask = [&](int branch, double volts) {
    const Line& line = lines_[at(branch)];
    const Working now = work(circuit_.branches[at(branch)], volts);
    const bool is_mild = mild_of_[at(branch)] >= 0;
    const double current = now.amperes - line.at(volts), known = is_mild ? mild_[at(mild_of_[at(branch)])].current : 0;
    if (std::abs(current - known) <= accuracy_.least_amperes * (is_mild ? mild_rest : 1)) return;
    // Its slope here, and all the way here, against the line's.
    const double way = std::abs(volts - line.volts);
    const double bend = std::max(std::abs(now.siemens - line.siemens), way > 0 ? std::abs(current) / way : 0);
    if (round < patience && (bend <= mild_share * line.siemens || bend <= mild_slope_limit(branch)))
      to_mild.push_back({branch, current});
    else
      to_ports.push_back(branch);
  };
  if (is_spread) {
    std::vector<int> asked;
    const auto ask_once = [&](int i) {
      if (is_asked_[at(i)] || port_of_[at(i)] >= 0 || !was_there(i)) return;
      is_asked_[at(i)] = 1;
      asked.push_back(i);
      ask(i, volts(circuit_.branches[at(i)].a) - volts(circuit_.branches[at(i)].b));
    };
    for (const int node : touched_)
      for (const int i : bent_at_[at(node)]) ask_once(i);
    for (const MildBend& bend : mild_) ask_once(bend.branch);  // also where nothing is touched any more
    for (const int i : asked) is_asked_[at(i)] = 0;
  } else {
    for (const int i : jumpy_)
      if (port_of_[at(i)] < 0 && was_there(i)) ask(i, probe_over(*pattern_of(i), base_over(i)));
  }
  if (to_mild.empty() && to_ports.empty()) return Followed::nothing;
  if (is_spread && ports_.size() + to_ports.size() > what_if_limits::most_ports) return Followed::too_many;
  for (const MildBend& bend : to_mild) set_mild(bend.branch, bend.current);
  for (const int i : to_ports)
    if (mild_of_[at(i)] >= 0) set_mild(i, 0);
  if (!mild_.empty())
    for (std::size_t k = 0; k < ports_.size(); ++k) ports_[k].volts = ports_over(k);
  for (const int i : to_ports) port_for(i).is_bend = true;
  return Followed::some;
}

bool WhatIf::solve(Bends bends) {
  if (ports_.empty()) return true;
  bool has_answer = false;
  if (is_anew_) {
    has_answer = solve_anew();
  } else {
    for (int round = 0; round < most_bending_rounds && !has_answer; ++round) {
      if (!solve_ports()) return false;
      gather();
      if (bends == Bends::all && accuracy_.reach == WhatIfReach::spread) spread(accuracy_.least_volts);
      const Followed followed = follow_bends(bends, round);
      if (followed == Followed::too_many) {
        has_answer = solve_anew();
        break;
      }
      has_answer = followed == Followed::nothing;
    }
  }
  find_revived();
  return has_answer;
}

// The ports that stay keep their currents; their volts are what these make without the others.
void WhatIf::forget_bends() {
  is_anew_ = false;
  forget_mild();
  const std::size_t n = ports_.size();
  std::vector<std::size_t> kept, place(n, n);
  for (std::size_t k = 0; k < n; ++k) {
    const Port& port = ports_[k];
    if (port.is_bend && !port.is_held && port.is_open == !was_there(port.branch)) {
      port_of_[at(port.branch)] = -1;
      continue;
    }
    place[k] = kept.size();
    kept.push_back(k);
  }
  std::vector<Port> ports;
  std::vector<double> couplings;
  for (const std::size_t k : kept) {
    for (const std::size_t j : kept) couplings.push_back(z_[k * n + j]);
    if (ports_[k].branch >= 0) port_of_[at(ports_[k].branch)] = static_cast<int>(ports.size());
    ports.push_back(std::move(ports_[k]));
  }
  for (std::size_t& added : added_) added = place[added];
  ports_ = std::move(ports);
  z_ = std::move(couplings);
  for (std::size_t k = 0; k < ports_.size(); ++k) ports_[k].volts = ports_over(k);
}

}  // namespace loomfolio
