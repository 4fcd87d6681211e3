// SPDX-License-Identifier: MIT
#include "sheets/fault_plan.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <set>

#include "check/paths.h"

namespace loomfolio {
namespace {

/// Elements share a chart from that share of common suspects on, by likelihood; of parts of one kind a lesser share
/// will do, of lamps in one housing a smaller one yet.
constexpr double least_shared = 0.5, least_shared_of_kind = 0.4, least_shared_of_part = 0.25;
/// A situation that is easier to reach is as good when it shows that share of the suspects.
constexpr double nearly_all = 0.97;

/// All that is known, and what was chosen so far.
class FaultPlanner {
 public:
  FaultPlanner(const Build& build, const std::vector<Solution>& solutions)
      : bench_(set_on_bench(build, solutions)),
        build_(bench_.build),
        solutions_(bench_.solutions),
        book_(solve_faults(build_, solutions_, {})),
        study_(build_, solutions_, book_) {}

  FaultPlan plan() {
    gather_groups();
    FaultPlan plan;
    for (const Group& group : groups_) add_chart(plan, group, group.situation, {});
    for (const Group& group : groups_) add_partial_charts(plan, group);
    for (const Group& group : groups_) add_slow_chart(plan, group);
    // Of the lamps and loads the large charts first: the small ones then share sheets.
    std::stable_sort(plan.charts.begin(), plan.charts.end(), [](const FaultChart& a, const FaultChart& b) {
      if (rank(a.kind) != rank(b.kind)) return rank(a.kind) < rank(b.kind);
      return a.kind == Ailing::shown && a.diagnosis.nodes.size() > b.diagnosis.nodes.size();
    });
    add_blows(plan);
    add_odd(plan);
    for (std::size_t f = 0; f < book_.faults.size(); ++f)
      if (!is_crossed(f) && burns_somewhere(f)) plan.burning.push_back(static_cast<int>(f));
    plan.faults = book_.faults;
    plan.bench = bench_;
    return plan;
  }

 private:
  struct Group {
    Ailing kind = Ailing::none;
    std::vector<InsideRef> elements;
    std::vector<SituationId> situations;  // in which all of them work
    SituationId situation;
  };

  Expected state_in(SituationId s, InsideRef what) const {
    return observed(inside_of(build_, what),
                    solutions_[s.at()].insides[what.part.at()][static_cast<std::size_t>(what.inside)]);
  }

  /// Wires that touch a live one are for what is on and should not be: no chart is made for them.
  bool is_crossed(std::size_t fault) const { return book_.faults[fault].type == FaultType::wire_to_live; }

  std::set<int> suspects_in(SituationId s, InsideRef what, Expected seen) const {
    std::set<int> suspects;
    for (std::size_t f = 0; f < book_.faults.size(); ++f)
      if (seen != Expected::off || !is_crossed(f))
        for (const StateChange& change : book_.effect(f, s.at()).changes)
          if (change.what == what && change.after == seen && !study_.burns(f, s.at()))
            suspects.insert(static_cast<int>(f));
    return suspects;
  }

  /// What puts it out without blowing a fuse there. A short elsewhere on the fuse is no reason to set what feeds the
  /// short: the fuse page names it, and a chart asks for the fuse in any situation.
  std::set<int> lasting_suspects(SituationId s, InsideRef what) const {
    std::set<int> suspects = suspects_in(s, what, Expected::off);
    std::erase_if(suspects,
                  [&](int f) { return !book_.effect(static_cast<std::size_t>(f), s.at()).blown.empty(); });
    return suspects;
  }

  bool burns_somewhere(std::size_t fault) const {
    for (std::size_t s = 0; s < solutions_.size(); ++s)
      if (study_.burns(fault, s)) return true;
    return false;
  }

  void add_chart(FaultPlan& plan, const Group& group, SituationId situation, SituationId works_in) {
    FaultChart chart{group.kind, {}, works_in, {}, {}};
    for (const InsideRef what : group.elements)
      if (const Expected sound = state_in(situation, what); sound != Expected::off)
        chart.symptoms.push_back({situation, what, sound, Expected::off});
    chart.diagnosis = diagnose_any(study_, chart.symptoms, works_in);
    if (chart.diagnosis.suspects.empty()) return;
    if (group.kind == Ailing::shown && !works_in.is_set()) chart.other_ways = find_other_ways(bench_, book_, chart.symptoms);
    covered_.insert(chart.diagnosis.suspects.begin(), chart.diagnosis.suspects.end());
    plan.charts.push_back(std::move(chart));
  }

  /// A starter that only clicks or turns slowly: a weak battery, a bad joint, a bad earth.
  void add_slow_chart(FaultPlan& plan, const Group& group) {
    if (group.kind != Ailing::starter) return;
    FaultChart chart{group.kind, {{group.situation, group.elements.front(), Expected::on, Expected::dim}}, {}, {}, {}};
    chart.diagnosis = diagnose_any(study_, chart.symptoms);
    if (!chart.diagnosis.suspects.empty()) plan.charts.push_back(std::move(chart));
  }

  /// What shows in one of the group's other situations only: a second way to the same lamp, a second interlock.
  void add_partial_charts(FaultPlan& plan, const Group& group) {
    for (const InsideRef what : group.elements) add_partial_charts(plan, group, what);
  }

  void add_partial_charts(FaultPlan& plan, const Group& group, InsideRef what) {
    const auto missed_in = [&](SituationId s) {
      std::set<int> missed;
      if (s == group.situation || state_in(s, what) == Expected::off || is_running_in_vain(group.kind, s))
        return missed;
      for (const int f : lasting_suspects(s, what))
        if (!covered_.contains(f)) missed.insert(f);
      return missed;
    };
    for (std::size_t round = 0; round < solutions_.size(); ++round) {
      SituationId best;
      double most = 0;
      for (const Solution& solution : solutions_)
        if (const double missed = weight(missed_in(solution.situation)); missed > most)
          best = solution.situation, most = missed;
      if (!best.is_set()) return;
      const std::size_t before = covered_.size();
      add_chart(plan, {group.kind, {what}, {}, best}, best, group.situation);
      if (covered_.size() == before) return;
    }
  }

  /// What a situation asks of the person: the less the better.
  std::pair<int, std::size_t> effort(SituationId s) const {
    const Situation& situation = build_.situations[s.at()];
    const int engine = situation.engine == EngineState::running ? 4 : situation.engine == EngineState::cranking ? 1 : 0;
    return {engine + (is_in_gear(build_, situation) ? 2 : 0), situation.settings.size()};
  }

  /// No engine runs that does not start.
  bool is_running_in_vain(Ailing kind, SituationId s) const {
    return (kind == Ailing::starter || kind == Ailing::ignition) &&
           build_.situations[s.at()].engine == EngineState::running;
  }

  static int rank(Ailing kind) {
    return kind == Ailing::starter ? 0 : kind == Ailing::ignition ? 1 : kind == Ailing::charging ? 2 : 3;
  }

  double weight(const std::set<int>& suspects) const {
    double sum = 0;
    for (const int f : suspects) sum += book_.faults[static_cast<std::size_t>(f)].weight;
    return sum;
  }

  std::vector<SituationId> working_situations(InsideRef what) const {
    std::vector<SituationId> situations;
    for (const Solution& solution : solutions_)
      if (state_in(solution.situation, what) != Expected::off) situations.push_back(solution.situation);
    return situations;
  }

  /// Where most suspects show; of those that show nearly as many, the one that asks least of the person.
  SituationId best_situation(const std::vector<SituationId>& among, InsideRef what) const {
    double most = 0;
    std::vector<double> shown;
    for (const SituationId s : among) {
      shown.push_back(weight(lasting_suspects(s, what)));
      most = std::max(most, shown.back());
    }
    if (most <= 0) return {};
    SituationId best;
    for (std::size_t i = 0; i < among.size(); ++i)
      if (shown[i] >= most * nearly_all && (!best.is_set() || effort(among[i]) < effort(best))) best = among[i];
    return best;
  }

  double shared(SituationId s, InsideRef a, InsideRef b) const {
    const std::set<int> of_a = suspects_in(s, a, Expected::off), of_b = suspects_in(s, b, Expected::off);
    std::set<int> both, any = of_a;
    any.insert(of_b.begin(), of_b.end());
    std::set_intersection(of_a.begin(), of_a.end(), of_b.begin(), of_b.end(), std::inserter(both, both.end()));
    return any.empty() ? 0 : weight(both) / weight(any);
  }

  bool join(Group& group, InsideRef what, const std::vector<SituationId>& situations) const {
    std::vector<SituationId> common;
    std::set_intersection(group.situations.begin(), group.situations.end(), situations.begin(), situations.end(),
                          std::back_inserter(common));
    if (common.empty()) return false;
    const SituationId s = best_situation(common, group.elements.front());
    if (!s.is_set()) return false;
    const InsideRef first = group.elements.front();
    const bool is_one_kind = build_.part(first.part).kind == build_.part(what.part).kind;
    const double least = first.part == what.part ? least_shared_of_part : is_one_kind ? least_shared_of_kind : least_shared;
    if (shared(s, first, what) < least) return false;
    group.elements.push_back(what);
    group.situations = std::move(common);
    group.situation = s;
    return true;
  }

  void gather(InsideRef what) {
    const Ailing kind = kind_of_element(build_, what);
    if (kind == Ailing::none) return;
    std::vector<SituationId> situations = working_situations(what);
    std::erase_if(situations, [&](SituationId s) { return is_running_in_vain(kind, s); });
    const SituationId best = best_situation(situations, what);
    if (!best.is_set()) return;
    for (Group& group : groups_)
      if (group.kind == kind && join(group, what, situations)) return;
    groups_.push_back({kind, {what}, situations, best});
  }

  void gather_groups() {
    for (std::size_t p = 0; p < build_.parts.size(); ++p)
      for (std::size_t i = 0; i < build_.parts[p].insides.size(); ++i)
        gather({PartId{static_cast<std::int32_t>(p)}, static_cast<int>(i)});
    std::stable_sort(groups_.begin(), groups_.end(),
                     [](const Group& a, const Group& b) { return rank(a.kind) < rank(b.kind); });
  }

  std::vector<int> by_likelihood(const std::set<int>& suspects) const {
    std::vector<int> sorted(suspects.begin(), suspects.end());
    std::stable_sort(sorted.begin(), sorted.end(), [&](int a, int b) {
      return book_.faults[static_cast<std::size_t>(a)].weight > book_.faults[static_cast<std::size_t>(b)].weight;
    });
    return sorted;
  }

  void add_blows(FaultPlan& plan) const {
    std::map<std::pair<InsideRef, SituationId>, std::set<int>> first;
    for (std::size_t f = 0; f < book_.faults.size(); ++f) {
      if (is_crossed(f)) continue;
      std::set<InsideRef> seen;
      for (const Solution& solution : solutions_)
        for (const InsideRef fuse : book_.effect(f, solution.situation.at()).blown)
          if (!study_.burns(f, solution.situation.at()) && seen.insert(fuse).second)
            first[{fuse, solution.situation}].insert(static_cast<int>(f));
    }
    for (const auto& [key, suspects] : first)
      plan.blows.push_back({key.first, key.second,
                            dead_end(study_, static_cast<std::size_t>(*suspects.begin()), key.second.at(), key.first),
                            by_likelihood(suspects)});
  }

  void add_odd_symptom(FaultPlan& plan, const Symptom& symptom) const {
    const std::vector<int> suspects = by_likelihood(suspects_in(symptom.situation, symptom.what, symptom.seen));
    const auto same = std::find_if(plan.odd.begin(), plan.odd.end(), [&](const OddSymptom& o) {
      return o.suspects == suspects && o.symptoms.front().situation == symptom.situation &&
             o.symptoms.front().seen == symptom.seen && o.symptoms.front().expected == symptom.expected;
    });
    if (same == plan.odd.end())
      plan.odd.push_back({{symptom}, suspects});
    else if (std::find(same->symptoms.begin(), same->symptoms.end(), symptom) == same->symptoms.end())
      same->symptoms.push_back(symptom);
  }

  /// What the spec says must stay off has its row for that very situation: the tests lead there.
  void add_what_must_stay_off(FaultPlan& plan) const {
    for (std::size_t s = 0; s < build_.situations.size(); ++s)
      for (const Expectation& expectation : build_.situations[s].expectations) {
        if (expectation.state != Expected::off) continue;
        const std::vector<Inside>& insides = build_.part(expectation.what.part).insides;
        for (std::size_t i = 0; i < insides.size(); ++i) {
          const InsideRef what{expectation.what.part, static_cast<int>(i)};
          const bool is_meant = expectation.what.inside < 0 || expectation.what == what;
          const bool is_seen = insides[i].type == InsideType::coil || kind_of_element(build_, what) != Ailing::none;
          const SituationId situation{static_cast<std::int32_t>(s)};
          if (is_meant && is_seen && state_in(situation, what) == Expected::off)
            add_odd_symptom(plan, {situation, what, Expected::off, Expected::on});
        }
      }
  }

  bool has_slow_chart(const Symptom& symptom) const {
    return symptom.seen == Expected::dim && kind_of_element(build_, symptom.what) == Ailing::starter;
  }

  void add_odd(FaultPlan& plan) const {
    for (const Symptom& symptom : list_symptoms(build_, solutions_, book_))
      if (symptom.seen != Expected::off && kind_of_element(build_, symptom.what) != Ailing::none && !has_slow_chart(symptom))
        add_odd_symptom(plan, symptom);
    add_what_must_stay_off(plan);
    std::erase_if(plan.odd, [](const OddSymptom& o) { return o.suspects.empty(); });
    const auto key = [](const OddSymptom& o) { return std::pair(o.symptoms.front().what, o.symptoms.front().seen); };
    std::stable_sort(plan.odd.begin(), plan.odd.end(),
                     [&](const OddSymptom& a, const OddSymptom& b) { return key(a) < key(b); });
  }

  BenchSituations bench_;
  const Build& build_;
  const std::vector<Solution>& solutions_;
  FaultBook book_;
  FaultStudy study_;
  std::set<int> covered_;  // by charts so far
  std::vector<Group> groups_;
};

}  // namespace

Ailing kind_of_element(const Build& build, InsideRef what) {
  const Inside& inside = inside_of(build, what);
  const Part& part = build.part(what.part);
  const std::string& group = build.kind_of(part).group;
  if (inside.type == InsideType::charger) return Ailing::charging;
  if (inside.type == InsideType::motor) return group == "starting" ? Ailing::starter : Ailing::shown;
  if (inside.type == InsideType::lamp) return Ailing::shown;
  if (inside.type != InsideType::load) return Ailing::none;
  if (group == "ignition") return Ailing::ignition;
  const auto flashes = [](const Inside& i) { return i.flashes; };
  const bool is_hidden = group == "control" || std::any_of(part.insides.begin(), part.insides.end(), flashes);
  return is_hidden ? Ailing::none : Ailing::shown;
}

Mend mend_for(const Fault& fault) {
  const FaultType type = fault.type == FaultType::bad_joint ? FaultType::wire_open : fault.type;
  const TerminalId body = type == FaultType::earth_loose ? fault.end : TerminalId{};
  return {type, fault.wire, fault.earth, body, fault.inside};
}

int FaultPlan::chart_for(InsideRef what, SituationId situation) const {
  int found = -1;
  for (std::size_t c = 0; c < charts.size(); ++c)
    for (const Symptom& symptom : charts[c].symptoms)
      if (symptom.what == what && symptom.situation == situation) return static_cast<int>(c);
  for (std::size_t c = 0; c < charts.size(); ++c)
    for (const Symptom& symptom : charts[c].symptoms) {
      if (symptom.what != what) continue;
      if (!charts[c].works_in.is_set()) return static_cast<int>(c);  // the whole chart before one of a single situation
      if (found < 0) found = static_cast<int>(c);
    }
  return found;
}

int FaultPlan::chart_suspecting(PartId part) const {
  const auto ends_here = [&](WireId wire) {
    return wire.is_set() && std::any_of(bench.build.part(part).terminals.begin(), bench.build.part(part).terminals.end(),
                                        [&](TerminalId terminal) {
                                          return bench.build.wire(wire).from == terminal || bench.build.wire(wire).to == terminal;
                                        });
  };
  const auto first_with = [&](const auto& is_of_part) {
    for (std::size_t c = 0; c < charts.size(); ++c)
      for (const int suspect : charts[c].diagnosis.suspects)
        if (is_of_part(faults[static_cast<std::size_t>(suspect)])) return static_cast<int>(c);
    return -1;
  };
  const int inside = first_with([&](const Fault& fault) { return fault.inside.part == part; });
  return inside >= 0 ? inside : first_with([&](const Fault& fault) { return ends_here(fault.wire); });
}

FaultPlan plan_faults(const Build& build, const std::vector<Solution>& solutions) {
  return FaultPlanner(build, solutions).plan();
}

}  // namespace loomfolio
