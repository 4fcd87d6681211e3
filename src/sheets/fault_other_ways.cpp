// SPDX-License-Identifier: MIT
#include "sheets/fault_other_ways.h"

#include <algorithm>
#include <map>
#include <utility>

#include "check/paths.h"
#include "sheets/feed_way.h"

namespace loomfolio {
namespace {

/// Switches of hand or foot on the way, and where each stands.
using HandWay = std::map<InsideRef, int>;

class OtherWays {
 public:
  OtherWays(const BenchSituations& bench, const FaultBook& book, const std::vector<Symptom>& symptoms)
      : bench_(bench), build_(bench.build), book_(book), paths_(trace_paths(bench.build)), head_(symptoms.front().situation) {
    for (const Symptom& symptom : symptoms) add(symptom.what);
  }

  std::vector<OtherWay> take() { return std::move(ways_); }

 private:
  HandWay way_of(InsideRef what, const Situation& situation, const Solution& solution) const {
    HandWay way;
    for (const InsideRef ref : find_feed_way(build_, paths_, situation, solution, what))
      if (is_hand_or_foot_switch(inside_of(build_, ref))) way[ref] = position_in(build_, situation, ref);
    return way;
  }

  static Expected state_in(const Build& build, const Solution& solution, InsideRef what) {
    return observed(inside_of(build, what), solution.insides[what.part.at()][static_cast<std::size_t>(what.inside)]);
  }

  /// What moves from one way to the other: what the second needs, and what of the first it does without.
  std::vector<Setting> moves_between(const HandWay& from, const HandWay& to, const Situation& target) const {
    const Situation& head = build_.situations[head_.at()];
    std::vector<Setting> moves;
    for (const HandWay* way : {&to, &from})
      for (const auto& [ref, position] : *way) {
        const bool is_told = std::any_of(moves.begin(), moves.end(), [&](const Setting& move) { return move.actuator == ref; });
        if (const int there = position_in(build_, target, ref); !is_told && there != position_in(build_, head, ref)) moves.push_back({ref, there, {}});
      }
    return moves;
  }

  /// With all else as in the head's situation.
  Build with_moves(const std::vector<Setting>& moves) const {
    Build changed = build_;
    Situation& situation = changed.situations[head_.at()];
    for (const Setting& move : moves) {
      std::erase_if(situation.settings, [&](const Setting& setting) { return setting.actuator == move.actuator; });
      situation.settings.push_back(move);
    }
    return changed;
  }

  static bool puts_out(const FaultEffect& effect, InsideRef what) {
    return std::any_of(effect.changes.begin(), effect.changes.end(), [&](const StateChange& change) {
      return change.what == what && change.after == Expected::off;
    });
  }

  /// What puts it out in the head's situation and not in the changed one. A fuse that blew stays blown.
  std::vector<int> suspects_of(InsideRef what, const Build& changed, const Solution& solution) const {
    std::vector<int> here;
    std::vector<Fault> faults;
    for (std::size_t f = 0; f < book_.faults.size(); ++f) {
      const FaultEffect& effect = book_.effect(f, head_.at());
      if (!effect.blown.empty() || !puts_out(effect, what)) continue;
      here.push_back(static_cast<int>(f));
      faults.push_back(book_.faults[f]);
    }
    const FaultBook there = solve_these_faults(changed, {solution}, std::move(faults), {});
    std::vector<int> suspects;
    for (std::size_t f = 0; f < here.size(); ++f)
      if (!puts_out(there.effect(f, 0), what)) suspects.push_back(here[f]);
    std::stable_sort(suspects.begin(), suspects.end(), [&](int a, int b) {
      return book_.faults[static_cast<std::size_t>(a)].weight > book_.faults[static_cast<std::size_t>(b)].weight;
    });
    return suspects;
  }

  void add(InsideRef what) {
    const HandWay head_way = way_of(what, build_.situations[head_.at()], bench_.solutions[head_.at()]);
    for (const Solution& solution : bench_.solutions) {
      if (solution.situation == head_ || state_in(build_, solution, what) == Expected::off) continue;
      const Situation& there = build_.situations[solution.situation.at()];
      const HandWay way = way_of(what, there, solution);
      if (way == head_way) continue;
      std::vector<Setting> moves = moves_between(head_way, way, there);
      if (moves.empty()) continue;
      const auto known = std::find_if(ways_.begin(), ways_.end(), [&](const OtherWay& other) {
        return std::equal(other.settings.begin(), other.settings.end(), moves.begin(), moves.end(), [](const Setting& a, const Setting& b) {
          return a.actuator == b.actuator && a.position == b.position;
        });
      });
      if (known != ways_.end()) {
        if (std::find(known->works.begin(), known->works.end(), what) == known->works.end()) known->works.push_back(what);
        continue;
      }
      const Build changed = with_moves(moves);
      const Solution so = solve_situation(changed, head_);
      if (state_in(changed, so, what) == Expected::off || way_of(what, changed.situations[head_.at()], so) == head_way) continue;
      OtherWay other{{what}, std::move(moves), suspects_of(what, changed, so), {}};
      for (const Setting& move : other.settings) {
        const bool is_suspect = std::any_of(other.suspects.begin(), other.suspects.end(), [&](int f) {
          const Fault& fault = book_.faults[static_cast<std::size_t>(f)];
          return fault.type == FaultType::switch_open && fault.inside == move.actuator;
        });
        if (head_way.contains(move.actuator) && !is_suspect) other.switches.push_back(move.actuator);
      }
      ways_.push_back(std::move(other));
    }
  }

  const BenchSituations& bench_;
  const Build& build_;
  const FaultBook& book_;
  Paths paths_;
  SituationId head_;
  std::vector<OtherWay> ways_;
};

}  // namespace

std::vector<OtherWay> find_other_ways(const BenchSituations& bench, const FaultBook& book, const std::vector<Symptom>& symptoms) {
  return symptoms.empty() ? std::vector<OtherWay>{} : OtherWays(bench, book, symptoms).take();
}

}  // namespace loomfolio
