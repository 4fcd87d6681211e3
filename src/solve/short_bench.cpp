// SPDX-License-Identifier: MIT
#include <algorithm>
#include <cmath>
#include <numeric>

#include "solve/branch_law.h"
#include "solve/protection_parts.h"

namespace loomfolio {
namespace {

constexpr double dead_short_ohms = 0.001;
constexpr double shift_share = 0.1;     // of what is asked for: fuses whose base lies further off are always asked
constexpr std::size_t many_places = 4;  // a short that changes as many is worth learning from

// Shorts are hundreds of amperes; what a filament bends by does not matter.
constexpr WhatIfAccuracy coarse{1, 0.2, WhatIfReach::probe};

}  // namespace

ShortBench::ShortBench(const Build& build, const Solution& solution, const CircuitOptions& options,
                       const std::vector<FuseRef>& fuses)
    : circuit_(make_circuit(build, solution.situation, options)) {
  settled_.relays = solution.relays;
  what_if_ = std::make_unique<WhatIf>(circuit_, settled_, Flash::lit, coarse);
  settled_.nodes = what_if_->base();
  for (const FuseRef& fuse : fuses)
    fuse_branch_.push_back(circuit_.inside_branch[fuse.inside.part.at()][static_cast<std::size_t>(fuse.inside.inside)]);
  for (const int number : fuse_branch_) base_fuse_amperes_.push_back(base_amperes(number));
  for (std::size_t f = 0; f < fuses.size(); ++f) {
    const int number = fuse_branch_[f];
    fuse_ohms_.push_back(number < 0 ? 0 : circuit_.branches[static_cast<std::size_t>(number)].ohms.number());
    const Amperes least = surely_opens_from(*fuses[f].family, fuses[f].rating);
    if (number >= 0 && (least - base_fuse_amperes_[f]).number() * fuse_ohms_[f] < fuse_slack) tight_fuses_.push_back(f);
  }
  what_if_->watch(fuse_branch_);
  base_shift_.assign(fuses.size(), 0);
  fuse_amperes_.resize(fuses.size());
  earth_ = settled_.nodes.floating[static_cast<std::size_t>(circuit_.frame)] ? circuit_.reference : circuit_.frame;
}

void ShortBench::short_to_earth(TerminalId terminal) {
  Branch branch;
  branch.a = terminal.index;
  branch.b = earth_;
  branch.ohms = Ohms(dead_short_ohms);
  fuse_amperes_.assign(fuse_amperes_.size(), std::nullopt);
  what_if_->begin();
  what_if_->add(branch);
  what_if_->solve();
  if (has_learned_ || what_if_->changed_places() < many_places) return;
  learn_lines();
  what_if_->add(branch);
  what_if_->solve();
}

// What one dead short does to battery and chargers the others will do too.
void ShortBench::learn_lines() {
  has_learned_ = true;
  what_if_->learn_lines();
  what_if_->watch(fuse_branch_);
  for (std::size_t f = 0; f < fuse_branch_.size(); ++f)
    if (fuse_branch_[f] >= 0)
      base_shift_[f] = std::abs(std::abs(what_if_->amperes(fuse_branch_[f])) - base_fuse_amperes_[f].number()) * fuse_ohms_[f];
}

void ShortBench::open_fuse(std::size_t fuse) {
  if (fuse_branch_[fuse] < 0) return;
  fuse_amperes_.assign(fuse_amperes_.size(), std::nullopt);
  what_if_->open(fuse_branch_[fuse]);
  what_if_->solve();
}

void ShortBench::stop_charging() {
  what_if_->begin();
  for (std::size_t b = 0; b < circuit_.branches.size(); ++b)
    if (circuit_.branches[b].law == Law::charger) what_if_->open(static_cast<int>(b));
  what_if_->solve();
}

Amperes ShortBench::wire_amperes(WireId wire) {
  return Amperes(std::abs(what_if_->probe_amperes(circuit_.wire_branch[wire.at()])));
}

Amperes ShortBench::fuse_amperes(std::size_t fuse) {
  if (fuse_branch_[fuse] < 0) return Amperes(0);
  if (!fuse_amperes_[fuse]) fuse_amperes_[fuse] = Amperes(std::abs(what_if_->probe_amperes(fuse_branch_[fuse])));
  return *fuse_amperes_[fuse];
}

std::vector<std::size_t> ShortBench::busy_fuses(Amperes more) {
  double least = fuse_slack;
  for (std::size_t f = 0; f < fuse_ohms_.size(); ++f)
    if (fuse_branch_[f] >= 0) least = std::min(least, more.number() * fuse_ohms_[f]);
  std::vector<std::size_t> busy;
  // What is found has moved from the base of the factor, which may lie a little off the sound machine.
  if (const auto moved = what_if_->find_moved(least * (1 - shift_share))) {
    busy.assign(moved->begin(), moved->end());
    for (std::size_t f = 0; f < base_shift_.size(); ++f)
      if (base_shift_[f] > least * shift_share) busy.push_back(f);
    busy.insert(busy.end(), tight_fuses_.begin(), tight_fuses_.end());
    std::sort(busy.begin(), busy.end());
    busy.erase(std::unique(busy.begin(), busy.end()), busy.end());
  } else {
    busy.resize(fuse_branch_.size());
    std::iota(busy.begin(), busy.end(), std::size_t{0});
  }
  return busy;
}

double ShortBench::base_volts(int node) const { return settled_.nodes.volts[static_cast<std::size_t>(node)]; }

Amperes ShortBench::base_amperes(int number) const {
  if (number < 0) return Amperes(0);
  const Branch& branch = circuit_.branches[static_cast<std::size_t>(number)];
  if (!is_active(branch, settled_.relays, Flash::lit)) return Amperes(0);
  return Amperes(std::abs(work(branch, base_volts(branch.a) - base_volts(branch.b)).amperes));
}

Amperes ShortBench::base_wire_amperes(WireId wire) const { return base_amperes(circuit_.wire_branch[wire.at()]); }
Amperes ShortBench::base_fuse_amperes(std::size_t fuse) const { return base_fuse_amperes_[fuse]; }

Volts ShortBench::base_wire_volts(WireId wire) const {
  const Branch& branch = circuit_.branches[static_cast<std::size_t>(circuit_.wire_branch[wire.at()])];
  if (settled_.nodes.floating[static_cast<std::size_t>(branch.a)]) return Volts(0);
  const double earth = base_volts(earth_);
  return Volts(std::max(std::abs(base_volts(branch.a) - earth), std::abs(base_volts(branch.b) - earth)));
}

Volts ShortBench::fuse_volts(std::size_t fuse) {
  const Branch& branch = circuit_.branches[static_cast<std::size_t>(fuse_branch_[fuse])];
  return Volts(std::min(std::abs(what_if_->probe_volts(branch.a)), std::abs(what_if_->probe_volts(branch.b))));
}

}  // namespace loomfolio
