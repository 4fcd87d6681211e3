// SPDX-License-Identifier: MIT
// What a fault that has come to rest shows: elements that do something else, terminals that read something else.
#include <algorithm>
#include <cmath>
#include <limits>

#include "solve/fault_bench.h"
#include "solve/loose.h"
#include "solve/observe.h"
#include "solve/settle.h"
#include "solve/settled_view.h"

namespace loomfolio {
namespace {

constexpr double motor_slow = 0.85;  // of its sound volts: below, a person hears it turn slowly; from memory

struct WhatIfView {
  const WhatIf& what_if;
  double volts(int node) const { return what_if.volts(node); }
  double amperes(int branch) const { return what_if.amperes(branch); }
  bool is_active(int branch) const { return what_if.is_there(branch); }
  bool is_pulled_in(int coil) const { return what_if.relays().coil_in[static_cast<std::size_t>(coil)] != 0; }
};

}  // namespace

void FaultBench::collect_changes(FaultEffect& effect) {
  std::vector<InsideRef> refs;
  for (const auto* nodes : {&what_if_->touched(), &what_if_->floated()})
    for (const int node : *nodes)
      refs.insert(refs.end(), elements_at_[static_cast<std::size_t>(node)].begin(),
                  elements_at_[static_cast<std::size_t>(node)].end());
  std::sort(refs.begin(), refs.end());
  refs.erase(std::unique(refs.begin(), refs.end()), refs.end());
  const WhatIfView view{*what_if_};
  for (const InsideRef ref : refs) {
    const Inside& inside = build_.part(ref.part).insides[static_cast<std::size_t>(ref.inside)];
    const InsideState& was = solution_.insides[ref.part.at()][static_cast<std::size_t>(ref.inside)];
    InsideState now = observe(build_, circuit_, ref, view);
    if (ref == opened_ || !what_if_->is_there(branch_of(ref))) now.is_on = false;
    now.is_flashing = now.is_on && was.is_flashing;
    now.is_dim = now.is_dim || (inside.type == InsideType::motor && now.is_on && was.is_on &&
                                std::abs(now.volts.number()) < motor_slow * std::abs(was.volts.number()));
    const Expected before = observed(inside, was), after = observed(inside, now);
    if (before != after) effect.changes.push_back({ref, before, after});
  }
}

/// A flasher's contact that stays closed: nothing changes while it should be closed, so the circuit is solved as it is between the
/// flashes.
void FaultBench::collect_steady(InsideRef contact, FaultEffect& effect) const {
  Circuit stuck = circuit_;
  if (branch_of(contact) < 0) return;
  stuck.branches[static_cast<std::size_t>(branch_of(contact))].gate.flashes = false;
  NodeSolver solver(stuck);
  const Settled between = loomfolio::settle(stuck, solver, solution_.relays, Flash::dark);
  const SettledView view{stuck, between.relays, between.nodes, Flash::dark};
  for (std::size_t p = 0; p < build_.parts.size(); ++p)
    for (std::size_t i = 0; i < build_.parts[p].insides.size(); ++i) {
      const InsideRef ref{PartId{static_cast<std::int32_t>(p)}, static_cast<int>(i)};
      const Inside& inside = build_.parts[p].insides[i];
      const InsideState& was = solution_.insides[p][i];
      if (!was.is_flashing || branch_of(ref) < 0) continue;
      const Expected after = observed(inside, observe(build_, stuck, ref, view));
      if (after != Expected::off) effect.changes.push_back({ref, Expected::flashing, after});
    }
}

bool FaultBench::carries(int branch) const {
  if (!what_if_->is_there(branch)) return false;
  const bool is_diode = circuit_.branches[static_cast<std::size_t>(branch)].law == Law::diode;
  return !is_diode || std::abs(what_if_->amperes(branch)) >= diode_conducts_from;
}

std::vector<int> FaultBench::find_loose_changes() {
  if (loose_ == nullptr) return {};
  LooseQuestion question{[this](int branch) { return carries(branch); }, what_if_->moved_branches(), {}};
  for (const auto* nodes : {&what_if_->touched(), &what_if_->floated()})
    for (const int node : *nodes)
      question.changed.insert(question.changed.end(), diodes_at_[static_cast<std::size_t>(node)].begin(),
                              diodes_at_[static_cast<std::size_t>(node)].end());
  if (added_.first >= 0 && !(is_added_diode_ && std::abs(what_if_->added_amperes(0)) < diode_conducts_from))
    question.joined.push_back(added_);
  return loose_->find_changed(question);
}

void FaultBench::collect_readings(FaultEffect& effect) {
  std::vector<int> changes = find_loose_changes();
  std::sort(changes.begin(), changes.end());
  const auto add = [&](int node) {
    const bool was_loose = loose_ != nullptr && loose_->sound()[static_cast<std::size_t>(node)] != 0;
    const bool has_changed = std::binary_search(changes.begin(), changes.end(), node);
    effect.readings.push_back({TerminalId{node}, static_cast<float>(what_if_->volts(node)), was_loose != has_changed});
  };
  std::vector<int> told;
  for (const int node : what_if_->touched()) {
    if (node >= circuit_.terminal_count || what_if_->is_floating(node)) continue;
    const double now = what_if_->volts(node);
    if (std::abs(now - settled_.nodes.volts[static_cast<std::size_t>(node)]) < options_.least_volts.number()) continue;
    told.push_back(node);
    add(node);
  }
  // As many volts as before, but now a meter would show them, or no longer.
  std::sort(told.begin(), told.end());
  for (const int node : changes)
    if (node < circuit_.terminal_count && !std::binary_search(told.begin(), told.end(), node) && !what_if_->is_floating(node))
      add(node);
  for (const int node : what_if_->floated())
    if (node < circuit_.terminal_count)
      effect.readings.push_back({TerminalId{node}, std::numeric_limits<float>::quiet_NaN()});
  std::sort(effect.readings.begin(), effect.readings.end(),
            [](const Reading& a, const Reading& b) { return a.at < b.at; });
}

}  // namespace loomfolio
