// SPDX-License-Identifier: MIT
// Switches that share nothing but a battery's poles and the frame cannot change each other's fuses: they are tried in one solve, so that
// ten machines on one battery take no more solves than one.
#include "solve/at_once.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <set>

#include "solve/branch_law.h"
#include "solve/machine_groups.h"
#include "solve/settle.h"

namespace loomfolio {
namespace {

// A switch that adds less to a fuse is left where it stands; what a fuse carries moves a little with the battery's volts whatever is
// switched.
constexpr Amperes least_more{0.1};
constexpr double least_share = 0.02;  // of what the fuse carries

struct Move {
  InsideRef actuator;
  int position = 0;
};

/// One way to set the switches, as it settled.
struct Tried {
  bool is_fit = false;  ///< one steady state, and no starter turns that did not before
  std::vector<Amperes> by_fuse;
};

class AtOnce {
 public:
  AtOnce(const Build& build, const std::vector<Solution>& solutions, ProtectionStudy& study)
      : build_(build), solutions_(solutions), study_(study), groups_(build) {}

  void find() {
    if (!choose_start()) return;
    find_with(Charging::alive);
    // A fuse between battery and generator carries what the generator does not give: all of it when that is dead.
    if (std::any_of(study_.fuses.begin(), study_.fuses.end(), [](const FuseStudy& fuse) { return fuse.is_uncharged; }))
      find_with(Charging::dead);
  }

 private:
  enum class Charging : std::uint8_t { alive, dead };

  void find_with(Charging charging) {
    charging_ = charging;
    start_ = try_with({});
    if (!start_.is_fit) return;
    best_.assign(study_.fuses.size(), {});
    turns_off_.clear();
    for (const std::vector<Move>& batch : batches()) try_batch(batch);
    for (const Solution& solution : solutions_) try_together(moves_to(build_.situations[solution.situation.at()]));
    for (const std::vector<std::size_t>& fuses : fuses_together()) settle_moves(fuses);
  }

  /// Fuses in sets that one solve answers: within a group those that want the same moves, of each group one such set.
  std::vector<std::vector<std::size_t>> fuses_together() {
    std::map<int, std::map<std::vector<std::pair<InsideRef, int>>, std::vector<std::size_t>>> by_group;
    std::vector<std::vector<std::size_t>> together;
    for (std::size_t f = 0; f < best_.size(); ++f) {
      const int group = groups_.of(study_.fuses[f].fuse.part);
      std::vector<std::pair<InsideRef, int>> moves;
      bool is_apart = false;  // moves of its own group alone disturb no other
      for (const auto& [actuator, best] : best_[f]) {
        moves.emplace_back(actuator, best.first);
        is_apart = is_apart || groups_.of(actuator.part) != group;
      }
      if (is_apart)
        together.push_back({f});
      else
        by_group[group][moves].push_back(f);
    }
    const std::size_t apart = together.size();
    for (const auto& [group, sets] : by_group) {
      std::size_t k = apart;
      for (const auto& [moves, fuses] : sets) {
        if (k == together.size()) together.emplace_back();
        together[k].insert(together[k].end(), fuses.begin(), fuses.end());
        ++k;
      }
    }
    return together;
  }

  bool choose_start() {
    Amperes most{-1};
    for (const Solution& solution : solutions_) {
      if (solution.settling != Settling::settled) continue;
      if (build_.situations[solution.situation.at()].engine == EngineState::cranking) continue;
      Amperes sum{0};
      for (const FuseStudy& fuse : study_.fuses) sum += Amperes(std::abs(state_of(solution, fuse.fuse).amperes.number()));
      if (sum > most) most = sum, from_ = &solution;
    }
    return from_ != nullptr;
  }

  static const InsideState& state_of(const Solution& solution, InsideRef ref) {
    return solution.insides[ref.part.at()][static_cast<std::size_t>(ref.inside)];
  }

  template <class Visit>
  void for_each_hand_switch(Visit visit) const {
    for (std::size_t p = 0; p < build_.parts.size(); ++p)
      for (std::size_t i = 0; i < build_.parts[p].insides.size(); ++i) {
        const Inside& inside = build_.parts[p].insides[i];
        if (is_hand_or_foot_switch(inside))
          visit(InsideRef{PartId{static_cast<std::int32_t>(p)}, static_cast<int>(i)}, inside);
      }
  }

  /// The k-th position of the k-th switch of each group, until all have been tried.
  std::vector<std::vector<Move>> batches() {
    std::map<int, std::vector<Move>> by_group;
    const Situation& situation = build_.situations[from_->situation.at()];
    for_each_hand_switch([&](InsideRef ref, const Inside& inside) {
      for (int to = 0; to < static_cast<int>(inside.positions.size()); ++to)
        if (to != position_in(build_, situation, ref)) by_group[groups_.of(ref.part)].push_back({ref, to});
    });
    std::vector<std::vector<Move>> batches;
    for (const auto& [group, moves] : by_group)
      for (std::size_t k = 0; k < moves.size(); ++k) {
        if (k == batches.size()) batches.emplace_back();
        batches[k].push_back(moves[k]);
      }
    return batches;
  }

  void try_batch(const std::vector<Move>& batch) {
    const Tried tried = try_with(batch);
    if (!tried.is_fit) {
      // One of them turns a starter or will not settle: each by itself.
      if (batch.size() > 1)
        for (const Move& move : batch) try_batch({move});
      return;
    }
    for (const Move& move : batch)
      for (std::size_t f = 0; f < best_.size(); ++f) {
        if (batch.size() > 1 && groups_.of(study_.fuses[f].fuse.part) != groups_.of(move.actuator.part)) continue;
        const Amperes more = tried.by_fuse[f] - start_.by_fuse[f];
        if (more < -least_more) turns_off_.insert({move.actuator, move.position});
        if (more < std::max(least_more, start_.by_fuse[f] * least_share)) continue;
        const auto found = best_[f].find(move.actuator);
        if (found == best_[f].end() || more > found->second.second) best_[f][move.actuator] = {move.position, more};
      }
  }

  /// What hand and foot do to come from the start to a situation, without what turns something off.
  std::vector<Move> moves_to(const Situation& situation) const {
    std::vector<Move> moves;
    if (situation.engine == EngineState::cranking) return moves;
    const Situation& start = build_.situations[from_->situation.at()];
    for_each_hand_switch([&](InsideRef ref, const Inside&) {
      const int to = position_in(build_, situation, ref);
      if (to != position_in(build_, start, ref) && !turns_off_.contains({ref, to})) moves.push_back({ref, to});
    });
    return moves;
  }

  /// Two switches in one way add nothing alone: where a situation moves several of a group and a fuse carries more than
  /// by each alone, those that it takes stand together.
  void try_together(const std::vector<Move>& moves) {
    if (moves.size() < 2) return;
    const Tried tried = try_with(moves);
    if (!tried.is_fit) return;
    for (std::size_t f = 0; f < best_.size(); ++f) {
      const int group = groups_.of(study_.fuses[f].fuse.part);
      std::vector<Move> own;
      Amperes alone{0};
      for (const Move& move : moves) {
        if (groups_.of(move.actuator.part) != group) continue;
        own.push_back(move);
        const auto known = best_[f].find(move.actuator);
        if (known != best_[f].end() && known->second.first == move.position) alone += known->second.second;
      }
      const Amperes more = tried.by_fuse[f] - start_.by_fuse[f];
      if (own.size() < 2 || more < alone + std::max(least_more, start_.by_fuse[f] * least_share)) continue;
      for (const Move& move : leave_out_idle(f, std::move(own), tried.by_fuse[f])) best_[f][move.actuator] = {move.position, more};
    }
  }

  /// Without the moves that this fuse does not need.
  std::vector<Move> leave_out_idle(std::size_t f, std::vector<Move> moves, Amperes amperes) const {
    for (std::size_t i = moves.size(); i-- > 0 && moves.size() > 1;) {
      std::vector<Move> fewer = moves;
      fewer.erase(fewer.begin() + static_cast<std::ptrdiff_t>(i));
      const Tried tried = try_with(fewer);
      if (tried.is_fit && tried.by_fuse[f] > amperes - least_more) moves = std::move(fewer);
    }
    return moves;
  }

  void settle_moves(const std::vector<std::size_t>& fuses) {
    std::map<InsideRef, int> all;
    for (const std::size_t f : fuses)
      for (const auto& [actuator, best] : best_[f]) all[actuator] = best.first;
    std::vector<Move> moves;
    for (const auto& [actuator, position] : all) moves.push_back({actuator, position});
    const Tried tried = moves.empty() ? start_ : try_with(moves);
    if (!tried.is_fit) {
      if (fuses.size() > 1)
        for (const std::size_t f : fuses) settle_moves({f});
      return;
    }
    for (const std::size_t f : fuses) {
      FuseStudy& fuse = study_.fuses[f];
      if (fuse.at_once_from.is_set() && tried.by_fuse[f] <= fuse.at_once) continue;
      fuse.at_once = std::max(fuse.load, tried.by_fuse[f]);
      fuse.at_once_from = from_->situation;
      fuse.at_once_moved.clear();
      for (const auto& [actuator, best] : best_[f]) fuse.at_once_moved.push_back({actuator, best.first, {}});
    }
  }

  Tried try_with(const std::vector<Move>& moves) const {
    Situation situation = build_.situations[from_->situation.at()];
    for (const Move& move : moves) {
      std::erase_if(situation.settings, [&](const Setting& setting) { return setting.actuator == move.actuator; });
      situation.settings.push_back({move.actuator, move.position, {}});
    }
    Circuit circuit = make_circuit(build_, situation, usual_options(build_));
    if (charging_ == Charging::dead)
      for (Branch& branch : circuit.branches)
        if (branch.law == Law::charger) branch.amperes = Amperes(1e-9);
    NodeSolver solver(circuit);
    const bool fits = from_->relays.coil_in.size() == circuit.coils.size() &&
                      from_->relays.output_on.size() == circuit.outputs.size();
    const Settled settled = settle(circuit, solver, fits ? from_->relays : rest_state(circuit), Flash::lit);
    Tried tried;
    tried.is_fit = settled.settling == Settling::settled && !starts(circuit, settled);
    const auto amperes = [&](InsideRef ref) {
      const int number = circuit.inside_branch[ref.part.at()][static_cast<std::size_t>(ref.inside)];
      if (number < 0) return Amperes(0);
      const Branch& branch = circuit.branches[static_cast<std::size_t>(number)];
      const auto volts = [&](int node) { return settled.nodes.volts[static_cast<std::size_t>(node)]; };
      return Amperes(std::abs(work(branch, volts(branch.a) - volts(branch.b)).amperes));
    };
    for (const FuseStudy& fuse : study_.fuses) tried.by_fuse.push_back(amperes(fuse.fuse));
    return tried;
  }

  /// A coil of a starting part pulls in that did not.
  bool starts(const Circuit& circuit, const Settled& settled) const {
    for (std::size_t c = 0; c < circuit.coils.size(); ++c) {
      const PartId part = circuit.coils[c].inside.part;
      if (!part.is_set() || build_.kind_of(build_.part(part)).group != "starting") continue;
      if (settled.relays.coil_in[c] && (c >= from_->relays.coil_in.size() || !from_->relays.coil_in[c])) return true;
    }
    return false;
  }

  const Build& build_;
  const std::vector<Solution>& solutions_;
  ProtectionStudy& study_;
  MachineGroups groups_;
  const Solution* from_ = nullptr;
  Charging charging_ = Charging::alive;
  Tried start_;
  std::set<std::pair<InsideRef, int>> turns_off_;  // moves that alone take something from a fuse
  std::vector<std::map<InsideRef, std::pair<int, Amperes>>> best_;  // by fuse: position and what it adds, by switch
};

}  // namespace

void study_at_once(const Build& build, const std::vector<Solution>& solutions, ProtectionStudy& study) {
  for (FuseStudy& fuse : study.fuses) fuse.at_once = fuse.load;
  AtOnce(build, solutions, study).find();
}

ProtectionStudy study_with_all_on(const Build& build, const std::vector<Solution>& solutions) {
  ProtectionStudy study = study_protection(build, solutions);
  study_at_once(build, solutions, study);
  return study;
}

}  // namespace loomfolio
