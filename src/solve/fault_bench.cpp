// SPDX-License-Identifier: MIT
// A fault is a few changed branches on the solved circuit (what_if.h). Then what follows from it follows: fuses that
// carry more than 1.35 of their rating open, the quickest first; relays that lose or gain their volts move; until all
// rests.
#include "solve/fault_bench.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numeric>

#include "solve/charger_feed.h"
#include "solve/defaults.h"
#include "solve/loose.h"
#include "solve/meter.h"

namespace loomfolio {
namespace {

constexpr int most_fault_rounds = 24;
constexpr double joint_loss = 3;  // V at the wire's worst load
constexpr double least_joint_ohms = 0.02, most_joint_ohms = 1000, idle_joint_ohms = 10;
constexpr double clear_overload = 3.5;  // times its rating: what filaments carry more or less matters no longer
constexpr double much_later = 4;    // times
constexpr double flat_share = 0.85, flat_resistance = 10;

bool is_seen(InsideType type) {
  return type == InsideType::lamp || type == InsideType::load || type == InsideType::motor ||
         type == InsideType::coil || type == InsideType::charger || type == InsideType::output ||
         type == InsideType::source;
}

WhatIfAccuracy accuracy_for(const FaultOptions& options) {
  return {options.least_volts.number() / 2, options.least_volts.number() / 100, WhatIfReach::spread};
}

}  // namespace

FaultBench::FaultBench(const Build& build, const Solution& solution, const std::vector<Amperes>& worst_loads,
                       const FaultOptions& options)
    : build_(build),
      solution_(solution),
      worst_loads_(worst_loads),
      options_(options),
      circuit_(make_circuit(build, solution.situation, usual_options(build))),
      fuses_(find_fuses(build)) {
  settled_.relays = solution.relays;
  what_if_ = std::make_unique<WhatIf>(circuit_, settled_, Flash::lit, accuracy_for(options));
  settled_.nodes = what_if_->base();
  earth_ = settled_.nodes.floating[static_cast<std::size_t>(circuit_.frame)] ? circuit_.reference : circuit_.frame;
  fuses_at_.resize(static_cast<std::size_t>(circuit_.node_count));
  elements_at_.resize(static_cast<std::size_t>(circuit_.node_count));
  for (std::size_t f = 0; f < fuses_.size(); ++f) {
    const int number = branch_of(fuses_[f].inside);
    if (number < 0) continue;
    const Branch& branch = circuit_.branches[static_cast<std::size_t>(number)];
    for (const int node : {branch.a, branch.b})
      fuses_at_[static_cast<std::size_t>(node)].push_back(static_cast<int>(f));
  }
  std::vector<int> branches;
  for (std::size_t f = 0; f < fuses_.size(); ++f) {
    branches.push_back(branch_of(fuses_[f].inside));
    if (branches.back() < 0) continue;
    const Branch& branch = circuit_.branches[static_cast<std::size_t>(branches.back())];
    const Amperes least = surely_opens_from(*fuses_[f].family, fuses_[f].rating);
    const double slack = (least.number() - std::abs(what_if_->amperes(branches.back()))) * branch.ohms.number();
    if (slack < fuse_slack) tight_fuses_.push_back(static_cast<int>(f));
  }
  what_if_->watch(branches);
  for (std::size_t p = 0; p < build.parts.size(); ++p)
    for (std::size_t i = 0; i < build.parts[p].insides.size(); ++i) {
      const InsideRef ref{PartId{static_cast<std::int32_t>(p)}, static_cast<int>(i)};
      if (!is_seen(build.parts[p].insides[i].type) || branch_of(ref) < 0) continue;
      const Branch& branch = circuit_.branches[static_cast<std::size_t>(branch_of(ref))];
      for (const int node : {branch.a, branch.b}) elements_at_[static_cast<std::size_t>(node)].push_back(ref);
    }
  generator_at_ = generators_at_nodes(build, circuit_);
  diodes_at_.resize(static_cast<std::size_t>(circuit_.node_count));
  bool has_diodes = false;
  for (std::size_t b = 0; b < circuit_.branches.size(); ++b) {
    const Branch& branch = circuit_.branches[b];
    if (branch.law != Law::diode) continue;
    has_diodes = true;
    for (const int node : {branch.a, branch.b}) diodes_at_[static_cast<std::size_t>(node)].push_back(static_cast<int>(b));
  }
  if (has_diodes) loose_ = std::make_unique<LooseFinder>(circuit_, [this](int branch) { return carries(branch); });
}

int FaultBench::branch_of(InsideRef ref) const {
  return circuit_.inside_branch[ref.part.at()][static_cast<std::size_t>(ref.inside)];
}

void FaultBench::change_wire(const Fault& fault) {
  const int number = circuit_.wire_branch[fault.wire.at()];
  if (fault.type == FaultType::wire_open) {
    what_if_->open(number);
    follow_charger(generator_at_[build_.wire(fault.wire).from.at()], fault.wire, {});
    return;
  }
  if (fault.type == FaultType::wire_to_earth || fault.type == FaultType::wire_to_live) {
    Branch chafe;
    chafe.a = build_.wire(fault.wire).to.index;
    chafe.b = fault.type == FaultType::wire_to_earth ? earth_ : live_pole(build_).index;
    chafe.ohms = chafe_to_metal;
    what_if_->add(chafe);
    added_ = {chafe.a, chafe.b};
    return;
  }
  const double load = worst_loads_[fault.wire.at()].number();
  const double bad = load < 1e-3 ? idle_joint_ohms : std::clamp(joint_loss / load, least_joint_ohms, most_joint_ohms);
  Branch branch = circuit_.branches[static_cast<std::size_t>(number)];
  branch.ohms += Ohms(bad);
  what_if_->change(number, branch);
}

void FaultBench::open_inside(InsideRef ref) {
  opened_ = ref;
  if (branch_of(ref) >= 0) what_if_->open(branch_of(ref));
  const Inside& inside = build_.part(ref.part).insides[static_cast<std::size_t>(ref.inside)];
  if (!inside.is_winding) return;
  const int node = node_of(build_, circuit_, ref.part, inside.nodes.front());
  if (node >= 0) follow_charger(generator_at_[static_cast<std::size_t>(node)], {}, ref);
}

void FaultBench::close_contact(InsideRef ref) {
  const int number = branch_of(ref);
  if (number >= 0) what_if_->change(number, circuit_.branches[static_cast<std::size_t>(number)]);
}

void FaultBench::change_switch(const Fault& fault) {
  const Inside& inside = build_.part(fault.inside.part).insides[static_cast<std::size_t>(fault.inside.inside)];
  const int a = node_of(build_, circuit_, fault.inside.part, inside.nodes[static_cast<std::size_t>(fault.first)]);
  const int b = node_of(build_, circuit_, fault.inside.part, inside.nodes[static_cast<std::size_t>(fault.second)]);
  bool is_made = false;
  for (int i = std::max(0, branch_of(fault.inside));
       branch_of(fault.inside) >= 0 && i < static_cast<int>(circuit_.branches.size()); ++i) {
    const Branch& branch = circuit_.branches[static_cast<std::size_t>(i)];
    if (branch.inside != fault.inside) break;
    if (std::minmax(branch.a, branch.b) != std::minmax(a, b)) continue;
    is_made = true;
    if (fault.type == FaultType::switch_open) what_if_->open(i);
  }
  if (is_made || fault.type == FaultType::switch_open) return;
  Branch stuck;
  stuck.a = a, stuck.b = b;
  stuck.ohms = inside.resistance.value_or(standard::closed_switch);
  what_if_->add(stuck);
  added_ = {a, b};
}

void FaultBench::reverse_diode(InsideRef ref) {
  const int number = branch_of(ref);
  if (number < 0) return;
  Branch reversed = circuit_.branches[static_cast<std::size_t>(number)];
  std::swap(reversed.a, reversed.b);
  what_if_->open(number);
  what_if_->add(reversed);
  added_ = {reversed.a, reversed.b};
  is_added_diode_ = true;
}

void FaultBench::loosen_earth(const Fault& fault) {
  for (std::size_t i = 0; i < circuit_.branches.size(); ++i) {
    const Branch& branch = circuit_.branches[i];
    const bool is_it = fault.earth.is_set() ? branch.origin == BranchOrigin::earth && branch.earth == fault.earth
                                            : branch.origin == BranchOrigin::body && branch.terminal == fault.end;
    if (is_it) what_if_->open(static_cast<int>(i));
  }
}

// A generator's wire or winding is gone: its charger gives a phase less, or nothing.
void FaultBench::follow_charger(int generator, WireId open_wire, InsideRef dead) {
  if (generator < 0) return;
  const auto hangs_on_it = [&](PartId part, const Inside& inside) {
    return std::any_of(inside.fed_by.begin(), inside.fed_by.end(), [&](int index) {
      const int node = node_of(build_, circuit_, part, inside.nodes[static_cast<std::size_t>(index)]);
      return node >= 0 && generator_at_[static_cast<std::size_t>(node)] == generator;
    });
  };
  for (std::size_t p = 0; p < build_.parts.size(); ++p)
    for (std::size_t i = 0; i < build_.parts[p].insides.size(); ++i) {
      const Inside& inside = build_.parts[p].insides[i];
      const InsideRef ref{PartId{static_cast<std::int32_t>(p)}, static_cast<int>(i)};
      if (inside.type != InsideType::charger || branch_of(ref) < 0 || !hangs_on_it(ref.part, inside)) continue;
      const Situation& situation = build_.situations[solution_.situation.at()];
      const double before = charger_feed_share({build_, circuit_, situation, {}, {}}, ref.part, inside);
      const double after = charger_feed_share({build_, circuit_, situation, open_wire, dead}, ref.part, inside);
      if (after >= before) continue;
      Branch branch = circuit_.branches[static_cast<std::size_t>(branch_of(ref))];
      if (after <= 0) {
        what_if_->open(branch_of(ref));
      } else {
        branch.amperes = branch.amperes * (after / before);
        what_if_->change(branch_of(ref), branch);
      }
    }
}

void FaultBench::begin(const Fault& fault) {
  opened_ = {};
  added_ = {-1, -1};
  is_added_diode_ = false;
  what_if_->begin();
  switch (fault.type) {
    case FaultType::wire_open:
    case FaultType::bad_joint:
    case FaultType::wire_to_earth:
    case FaultType::wire_to_live:
      return change_wire(fault);
    case FaultType::fuse_blown:
    case FaultType::contact_open:
    case FaultType::element_dead:
    case FaultType::output_dead:
    case FaultType::charger_dead:
      return open_inside(fault.inside);
    case FaultType::contact_stuck:
      return close_contact(fault.inside);
    case FaultType::switch_open:
    case FaultType::switch_stuck:
      return change_switch(fault);
    case FaultType::earth_loose:
      return loosen_earth(fault);
    case FaultType::diode_reversed:
      return reverse_diode(fault.inside);
    case FaultType::battery_flat: {
      if (branch_of(fault.inside) < 0) return;
      Branch branch = circuit_.branches[static_cast<std::size_t>(branch_of(fault.inside))];
      branch.volts = branch.volts * flat_share;
      branch.ohms = branch.ohms * flat_resistance;
      branch.charge_ohms = std::max(branch.charge_ohms, branch.ohms);
      return what_if_->change(branch_of(fault.inside), branch);
    }
  }
}

// Fuses that may carry more than before, each once. Right after a short that is found where the network is the same both
// ways (WhatIf::find_moved): a short is felt at every lamp of the machine, but at few fuses.
std::vector<int> FaultBench::moved_fuses(Bends bends) {
  std::vector<int> moved;
  if (bends == Bends::all || what_if_->is_whole()) {
    for (const int node : what_if_->touched())
      moved.insert(moved.end(), fuses_at_[static_cast<std::size_t>(node)].begin(),
                   fuses_at_[static_cast<std::size_t>(node)].end());
  } else if (const auto near = what_if_->find_moved(fuse_slack)) {
    moved = *near;
    moved.insert(moved.end(), tight_fuses_.begin(), tight_fuses_.end());
  } else {
    moved.resize(fuses_.size());
    std::iota(moved.begin(), moved.end(), 0);
  }
  std::sort(moved.begin(), moved.end());
  moved.erase(std::unique(moved.begin(), moved.end()), moved.end());
  return moved;
}

// Of the fuses that moved, the one that opens first; -1 when none does. A clear case: a dead short through it, and no
// other that opens in the time of several.
FaultBench::NextFuse FaultBench::next_fuse_to_blow(const FaultEffect& effect, Bends bends) {
  int first = -1;
  constexpr double never = std::numeric_limits<double>::infinity();
  Seconds when{never}, later{never};
  double share = 0;
  const bool is_probed = bends == Bends::sharp && !what_if_->is_whole();
  for (const int f : moved_fuses(bends)) {
    const FuseRef& fuse = fuses_[static_cast<std::size_t>(f)];
    const int branch = branch_of(fuse.inside);
    if (branch < 0 || std::find(effect.blown.begin(), effect.blown.end(), fuse.inside) != effect.blown.end()) continue;
    const Amperes amperes(std::abs(is_probed ? what_if_->probe_amperes(branch) : what_if_->amperes(branch)));
    const Seconds opens = slowest_opening(*fuse.family, fuse.rating, amperes);
    if (opens.number() == never) continue;
    later = std::min(later, std::max(opens, when));
    if (opens < when) first = f, when = opens, share = amperes / fuse.rating;
  }
  return {first, first >= 0 && share >= clear_overload && later >= when * much_later};
}

bool FaultBench::settle(FaultEffect& effect, bool is_short) {
  const auto blow = [&](int fuse) {
    effect.blown.push_back(fuses_[static_cast<std::size_t>(fuse)].inside);
    what_if_->open(branch_of(effect.blown.back()));
    what_if_->forget_bends();
  };
  for (int round = 0; round < most_fault_rounds; ++round) {
    // A short pulls down every lamp of the machine, but not for long: no need to follow their filaments to see which
    // fuse cuts it off.
    if (is_short && what_if_->solve(Bends::sharp))
      if (const NextFuse next = next_fuse_to_blow(effect, Bends::sharp); next.is_clear) {
        blow(next.fuse);
        continue;
      }
    if (!what_if_->solve()) {
      effect.settling = Settling::diverged;
      return false;
    }
    if (const NextFuse next = next_fuse_to_blow(effect, Bends::all); next.fuse >= 0) {
      blow(next.fuse);
      continue;
    }
    if (!what_if_->move_relays()) return true;
  }
  effect.settling = Settling::chatters;
  return true;
}

FaultEffect FaultBench::apply(const Fault& fault, const std::vector<InsideRef>& open_fuses) {
  FaultEffect effect;
  begin(fault);
  for (const InsideRef fuse : open_fuses)
    if (branch_of(fuse) >= 0) what_if_->open(branch_of(fuse));
  effect.blown = open_fuses;
  if (!settle(effect, fault.type == FaultType::wire_to_earth)) return effect;
  collect_changes(effect);
  collect_readings(effect);
  if (fault.type == FaultType::contact_stuck && build_.part(fault.inside.part).insides[static_cast<std::size_t>(fault.inside.inside)].flashes)
    collect_steady(fault.inside, effect);
  return effect;
}

}  // namespace loomfolio
