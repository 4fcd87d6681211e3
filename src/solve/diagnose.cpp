// SPDX-License-Identifier: MIT
// The suspects of a symptom are the single faults that show it; a measurement is a column of readings, one a suspect,
// as the machine stands at that box. Readings are told apart where a gap of a volt lies between them: less is lost in
// tolerance, meter and battery. First comes what anyone looks at first: the bulb, the fuse; the rest is test sequencing
// (test_tree.h). Two joints of one wire share their effect and always stand together.
#include "solve/diagnose.h"

#include <algorithm>
#include <limits>
#include <map>
#include <set>

#include "solve/charging_path.h"
#include "solve/diagnose_probes.h"

namespace loomfolio {
namespace {

constexpr std::size_t most_probes = 120;

bool is_shown_by(const ProbePlan& p, int fault) {
  for (const StateChange& change : p.here(fault).changes)
    for (const Symptom& symptom : p.symptoms)
      if (change.what == symptom.what && change.after == symptom.seen) return true;
  return false;
}

/// Of a charger's symptom: a battery that gives now, and whatever feeds the charger.
bool starves_battery(ProbePlan& p, std::size_t fault) {
  if (element_of(p.study.build(), p.symptom().what).type != InsideType::charger || p.symptom().seen != Expected::off)
    return false;
  if (feeds_a_charger(p, p.study.book().faults[fault])) return true;
  const auto& changes = p.study.book().effect(fault, p.situation()).changes;
  return std::any_of(changes.begin(), changes.end(), [&](const StateChange& change) {
    return change.before == Expected::charging && element_of(p.study.build(), change.what).type == InsideType::source;
  });
}

/// With a symptom seen while the engine runs, what stops the engine is another symptom's.
bool is_out_of_reach(ProbePlan& p, std::size_t fault) {
  if (p.study.build().situations[p.situation()].engine != EngineState::running) return false;
  const std::string& group = p.study.build().kind_of(p.study.build().part(p.symptom().what.part)).group;
  return group != "ignition" && p.study.stops_engine(fault, p.situation(), p.situation());
}

/// True too when nobody asks for it.
bool works_elsewhere(ProbePlan& p, std::size_t fault) {
  if (!p.works_in.is_set()) return true;
  const auto& changes = p.study.book().effect(fault, p.works_in.at()).changes;
  return std::none_of(changes.begin(), changes.end(),
                      [&](const StateChange& c) { return c.what == p.symptom().what && c.after == p.symptom().seen; });
}

bool is_starting(const Build& build, InsideRef what) { return build.kind_of(build.part(what.part)).group == "starting"; }

bool is_about_starter(const ProbePlan& p) {
  const Build& build = p.study.build();
  return element_of(build, p.symptom().what).type == InsideType::motor && is_starting(build, p.symptom().what);
}

/// A battery nearly flat pulls the relay in, and the starter is the first to tell.
bool starves_starter(const ProbePlan& p, std::size_t fault) {
  return !p.works_in.is_set() && is_about_starter(p) && p.study.book().faults[fault].type == FaultType::battery_flat;
}

/// Of a starter that turns slowly or only clicks: it stands, but its relay pulls in as it should.
bool clicks_only(const ProbePlan& p, std::size_t fault) {
  if (p.symptom().seen != Expected::dim || !is_about_starter(p)) return false;
  const Build& build = p.study.build();
  bool stands = false, pulls_in = true;
  for (const StateChange& change : p.here(static_cast<int>(fault)).changes) {
    stands = stands || (change.what == p.symptom().what && change.after == Expected::off);
    const bool is_relay = element_of(build, change.what).type == InsideType::coil && is_starting(build, change.what);
    pulls_in = pulls_in && !(is_relay && change.after == Expected::off);
  }
  return stands && pulls_in;
}

/// Of a charger: what feeds it, and what lies between it and the battery. A starter that runs on takes the battery down
/// as well, but nobody looks for that at the charger.
class ChargingSuspects {
 public:
  explicit ChargingSuspects(ProbePlan& p) : p_(p) {
    const InsideRef what = p.symptom().what;
    is_asked_ = element_of(p.study.build(), what).type == InsideType::charger && p.symptom().seen == Expected::off;
    if (is_asked_) path_ = find_charging_path(p.study.build(), p.study.solutions()[p.situation()], what);
  }
  bool allow(std::size_t fault) const {
    const Fault& f = p_.study.book().faults[fault];
    return !is_asked_ || feeds_a_charger(p_, f) || opens_path(path_, f, p_.here(static_cast<int>(fault)));
  }

 private:
  ProbePlan& p_;
  ChargingPath path_;
  bool is_asked_ = false;
};

void find_suspects(ProbePlan& p) {
  const FaultBook& book = p.study.book();
  const ChargingSuspects charging(p);
  for (std::size_t f = 0; f < book.faults.size(); ++f)
    if ((is_shown_by(p, static_cast<int>(f)) || starves_battery(p, f) || starves_starter(p, f) || clicks_only(p, f)) &&
        charging.allow(f) && !p.study.burns(f, p.situation()) && !is_out_of_reach(p, f) && works_elsewhere(p, f))
      p.suspects.push_back(static_cast<int>(f));
  std::stable_sort(p.suspects.begin(), p.suspects.end(), [&](int a, int b) {
    return book.faults[static_cast<std::size_t>(a)].weight > book.faults[static_cast<std::size_t>(b)].weight;
  });
  for (const int f : p.suspects)
    p.table.weights.push_back(std::max(1e-6, book.faults[static_cast<std::size_t>(f)].weight));
}

// Columns that say the same: the cheaper stays. Then the most telling ones only.
void thin_out(ProbePlan& p) {
  std::vector<int> states(p.suspects.size());
  for (std::size_t i = 0; i < states.size(); ++i) states[i] = static_cast<int>(i);
  std::vector<std::size_t> order(p.probes.size());
  for (std::size_t i = 0; i < order.size(); ++i) order[i] = i;
  std::vector<double> worth;
  for (std::size_t i = 0; i < order.size(); ++i)
    worth.push_back(information(p.table, static_cast<int>(i), states) / p.table.costs[i]);
  std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) { return worth[a] > worth[b]; });
  TestTable thin;
  thin.weights = p.table.weights;
  std::vector<Probe> probes;
  std::set<std::vector<int>> seen;
  for (const std::size_t i : order) {
    std::map<int, int> renumber;
    std::vector<int> shape;
    for (const int outcome : p.table.outcomes[i])
      shape.push_back(renumber.try_emplace(outcome, static_cast<int>(renumber.size())).first->second);
    const bool is_first_look = p.probes[i].type == ProbeType::ohms || p.probes[i].type == ProbeType::alternating;
    if (!is_first_look && (!seen.insert(shape).second || probes.size() >= most_probes)) continue;
    thin.costs.push_back(p.table.costs[i]);
    thin.outcomes.push_back(p.table.outcomes[i]);
    probes.push_back(p.probes[i]);
  }
  p.table = std::move(thin);
  p.probes = std::move(probes);
}

/// The probe that asks whether this element is open; -1: none does.
int open_probe(const ProbePlan& p, InsideRef what) {
  for (std::size_t i = 0; i < p.probes.size(); ++i)
    if (p.probes[i].type == ProbeType::ohms && p.probes[i].what == what) return static_cast<int>(i);
  return -1;
}

/// What anyone looks at first: the bulb of the one lamp, the fuse that most suspects have open; the likelier first.
std::vector<int> first_looks(const ProbePlan& p) {
  const auto open_weight = [&](int probe) {
    double sum = 0;
    for (std::size_t s = 0; s < p.suspects.size(); ++s)
      if (p.table.outcomes[static_cast<std::size_t>(probe)][s] == 1) sum += p.table.weights[s];
    return sum;
  };
  const Build& build = p.study.build();
  std::vector<int> first;
  int fuse = -1;
  for (std::size_t i = 0; i < p.probes.size(); ++i)
    if (p.probes[i].type == ProbeType::ohms && element_of(build, p.probes[i].what).type == InsideType::fuse)
      if (fuse < 0 || open_weight(static_cast<int>(i)) > open_weight(fuse)) fuse = static_cast<int>(i);
  if (fuse >= 0) first.push_back(fuse);
  const bool is_one_lamp = p.symptoms.size() == 1 && element_of(build, p.symptom().what).type == InsideType::lamp;
  const int bulb = is_one_lamp && p.symptom().seen == Expected::off ? open_probe(p, p.symptom().what) : -1;
  if (bulb >= 0) first.push_back(bulb);
  std::stable_sort(first.begin(), first.end(), [&](int a, int b) { return open_weight(a) > open_weight(b); });
  // With the engine running: after what is looked at with the key off, and the fuse is in hand then.
  for (std::size_t i = 0; i < p.probes.size(); ++i)
    if (p.probes[i].type == ProbeType::alternating) first.push_back(static_cast<int>(i));
  return first;
}

/// The tree: first looks, then what tells most for its cost, then a new fuse where nothing else is left.
class TreeMaker {
 public:
  explicit TreeMaker(ProbePlan& plan) : p_(plan), first_(first_looks(plan)) {
    d_.symptom = plan.symptom();
    d_.suspects = plan.suspects;
  }

  Diagnosis make() {
    std::vector<int> all(p_.suspects.size());
    for (std::size_t i = 0; i < all.size(); ++i) all[i] = static_cast<int>(i);
    add(all, 0);
    double whole = 0;
    for (const double weight : p_.table.weights) whole += weight;
    d_.expected_minutes = whole > 0 ? cost_ / whole : 0;
    for (std::size_t n = 0, count = d_.nodes.size(); n < count; ++n)
      if (d_.nodes[n].probe < 0) try_new_fuse(n);
    for (const DiagnosisNode& node : d_.nodes)
      if (node.probe < 0 && node.suspects.size() > 1) ++d_.inseparable;
    return std::move(d_);
  }

 private:
  double weight_of(const std::vector<int>& states) const {
    double sum = 0;
    for (const int s : states) sum += p_.table.weights[static_cast<std::size_t>(s)];
    return sum;
  }

  int used(int probe) {
    const auto [place, is_new] = used_.try_emplace(probe, static_cast<int>(d_.probes.size()));
    if (is_new) d_.probes.push_back(p_.probes[static_cast<std::size_t>(probe)]);
    return place->second;
  }

  int add(const std::vector<int>& states, std::size_t next_first) {
    for (; next_first < first_.size(); ++next_first)
      if (information(p_.table, first_[next_first], states) > 0) break;
    if (next_first >= first_.size() || states.size() < 2) return add_planned(states);
    const auto probe = static_cast<std::size_t>(first_[next_first]);
    const auto here = static_cast<int>(d_.nodes.size());
    d_.nodes.push_back({used(first_[next_first]), {}, states});
    cost_ += weight_of(states) * p_.table.costs[probe];
    std::map<int, std::vector<int>> split;
    for (const int s : states) split[p_.table.outcomes[probe][static_cast<std::size_t>(s)]].push_back(s);
    for (const auto& [outcome, part] : split) {
      // Where the generator gives nothing no volts behind the charger tell more.
      const bool is_fed = p_.probes[probe].type != ProbeType::alternating ||
                          !p_.probes[probe].outcomes[static_cast<std::size_t>(outcome)].is_open;
      const int child = is_fed ? add(part, next_first + 1) : add_planned(part, Allowed::ohms);
      d_.nodes[static_cast<std::size_t>(here)].branches.emplace_back(outcome, child);
    }
    return here;
  }

  enum class Allowed : std::uint8_t { all, ohms };

  int add_planned(const std::vector<int>& states, Allowed allowed = Allowed::all) {
    TestTable part;
    std::vector<int> probe_of;
    for (const int s : states) part.weights.push_back(p_.table.weights[static_cast<std::size_t>(s)]);
    for (std::size_t i = 0; i < p_.probes.size(); ++i) {
      if (allowed == Allowed::ohms && p_.probes[i].type != ProbeType::ohms) continue;
      probe_of.push_back(static_cast<int>(i));
      part.costs.push_back(p_.table.costs[i]);
      std::vector<int>& some = part.outcomes.emplace_back();
      for (const int s : states) some.push_back(p_.table.outcomes[i][static_cast<std::size_t>(s)]);
    }
    const TestTree tree = plan_tests(part);
    cost_ += tree.expected_cost * weight_of(states);
    const auto base = static_cast<int>(d_.nodes.size());
    for (const TestNode& node : tree.nodes) {
      DiagnosisNode out;
      if (node.test >= 0) out.probe = used(probe_of[static_cast<std::size_t>(node.test)]);
      for (const auto& [outcome, child] : node.branches) out.branches.emplace_back(outcome, base + child);
      for (const int s : node.states) out.suspects.push_back(states[static_cast<std::size_t>(s)]);
      d_.nodes.push_back(std::move(out));
    }
    return base;
  }

  /// All that is left has this fuse blown, and one of them is the fuse alone: a new one holds, or it blows.
  void try_new_fuse(std::size_t n) {
    const std::vector<int> left = d_.nodes[n].suspects;
    const auto fault_of = [&](int s) { return d_.suspects[static_cast<std::size_t>(s)]; };
    const auto alone = std::find_if(left.begin(), left.end(), [&](int s) {
      return p_.study.book().faults[static_cast<std::size_t>(fault_of(s))].type == FaultType::fuse_blown;
    });
    if (left.size() < 2 || alone == left.end()) return;
    const InsideRef fuse = p_.study.book().faults[static_cast<std::size_t>(fault_of(*alone))].inside;
    DiagnosisNode holds, blows;
    for (const int s : left) {
      const auto& blown = p_.here(fault_of(s)).blown;
      if (s != *alone && std::find(blown.begin(), blown.end(), fuse) == blown.end()) return;
      (s == *alone ? holds : blows).suspects.push_back(s);
    }
    Probe probe;
    probe.type = ProbeType::new_fuse;
    probe.situation = p_.symptom().situation;
    probe.what = fuse;
    ProbeOutcome sound, bad;
    sound.is_sound = true, bad.is_open = true;
    probe.outcomes = {sound, bad};
    d_.nodes[n].probe = static_cast<int>(d_.probes.size());
    d_.probes.push_back(std::move(probe));
    d_.nodes[n].branches = {{0, static_cast<int>(d_.nodes.size())}, {1, static_cast<int>(d_.nodes.size()) + 1}};
    d_.nodes.push_back(std::move(holds));
    d_.nodes.push_back(std::move(blows));
  }

  ProbePlan& p_;
  std::vector<int> first_;
  Diagnosis d_;
  std::map<int, int> used_;
  double cost_ = 0;
};

}  // namespace

Diagnosis diagnose(FaultStudy& study, const Symptom& symptom) { return diagnose_any(study, {symptom}); }

Diagnosis diagnose(const Build& build, const std::vector<Solution>& solutions, const FaultBook& book,
                   const Symptom& symptom) {
  FaultStudy study(build, solutions, book);
  return diagnose(study, symptom);
}

Diagnosis diagnose_any(FaultStudy& study, const std::vector<Symptom>& symptoms, SituationId works_in) {
  ProbePlan p{study, symptoms, works_in};
  find_suspects(p);
  if (p.suspects.empty()) return {p.symptom(), {}, {}, {}, 0, 0};
  add_volt_probes(p);
  add_ohm_probes(p);
  add_short_probes(p);
  add_watch_probes(p);
  add_alternating_probes(p);
  thin_out(p);
  return TreeMaker(p).make();
}

}  // namespace loomfolio
