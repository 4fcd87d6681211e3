// SPDX-License-Identifier: MIT
// The suspects of a symptom are the single faults that show it; a measurement is a column of readings, one a suspect,
// taken from the fault book. Readings are told apart where a gap lies between them, a volt on 12 V: less is lost in
// tolerance, meter and battery. Then it is test sequencing (test_tree.h). Two joints of one wire share their effect and
// always stand together.
#include "solve/diagnose.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <map>
#include <set>

#include "solve/meter.h"
#include "solve/reading_limits.h"

namespace loomfolio {
namespace {

constexpr double gap_on_12_volts = 1.0;  // V, in proportion on others
constexpr double fault_spread = 0.3;     // of a gap, from memory
constexpr std::size_t most_probes = 120;

// Minutes, from memory: at the battery, at a fuse, at a part that shows its terminals, in a connector, a part out; a
// look.
constexpr double minutes_at_battery = 1, minutes_at_fuse = 1, minutes_at_part = 2, minutes_in_connector = 3,
                 minutes_for_ohms = 2, minutes_to_look = 0.5;

bool is_noticed(InsideType type) {
  return type == InsideType::lamp || type == InsideType::load || type == InsideType::motor ||
         type == InsideType::charger;
}

const Inside& inside_of(const Build& build, InsideRef ref) {
  return build.part(ref.part).insides[static_cast<std::size_t>(ref.inside)];
}

// What is fed and what a person sees or hears are not the same: a flasher's timer, a control unit or a charger shows
// nothing.
bool is_watched(const Build& build, InsideRef ref) {
  const Inside& inside = inside_of(build, ref);
  if (inside.type == InsideType::lamp || inside.type == InsideType::motor) return true;
  if (inside.type != InsideType::load) return false;
  const Part& part = build.part(ref.part);
  if (std::any_of(part.insides.begin(), part.insides.end(), [](const Inside& i) { return i.flashes; })) return false;
  const std::string& group = build.kind_of(part).group;
  return group != "control" && group != "ignition";
}

Expected seen_in(const Build& build, const std::vector<Solution>& solutions, const FaultBook& book, std::size_t fault,
                 std::size_t situation, InsideRef what) {
  for (const StateChange& change : book.effect(fault, situation).changes)
    if (change.what == what) return change.after;
  return observed(inside_of(build, what),
                  solutions[situation].insides[what.part.at()][static_cast<std::size_t>(what.inside)]);
}

struct Planning {
  const Build& build;
  const std::vector<Solution>& solutions;
  const FaultBook& book;
  const std::vector<Symptom>& symptoms;  // of one situation
  const Symptom& symptom;                // the first
  double gap = gap_on_12_volts;
  ReadingLimits limits;  // of the symptom's situation
  std::vector<int> suspects;
  std::vector<Probe> probes;
  TestTable table;
};

bool is_shown_by(const Planning& p, std::size_t fault) {
  for (const StateChange& change : p.book.effect(fault, p.symptom.situation.at()).changes)
    for (const Symptom& symptom : p.symptoms)
      if (change.what == symptom.what && change.after == symptom.seen) return true;
  return false;
}

void find_suspects(Planning& p) {
  for (std::size_t f = 0; f < p.book.faults.size(); ++f)
    if (is_shown_by(p, f)) p.suspects.push_back(static_cast<int>(f));
  std::stable_sort(p.suspects.begin(), p.suspects.end(), [&](int a, int b) {
    return p.book.faults[static_cast<std::size_t>(a)].weight > p.book.faults[static_cast<std::size_t>(b)].weight;
  });
  for (const int f : p.suspects)
    p.table.weights.push_back(std::max(1e-6, p.book.faults[static_cast<std::size_t>(f)].weight));
}

// A meter with 10 megohm shows nothing on a place that floats.
double reading_at(const Planning& p, int fault, TerminalId at) {
  for (const Reading& reading : p.book.effect(static_cast<std::size_t>(fault), p.symptom.situation.at()).readings)
    if (reading.at == at) return std::isnan(reading.volts) ? 0 : reading.volts;
  const double sound = p.solutions[p.symptom.situation.at()].terminal_volts[at.at()].number();
  return std::isnan(sound) ? 0 : sound;
}

double minutes_for(const Build& build, TerminalId at) {
  const Terminal& terminal = build.terminal(at);
  if (terminal.owner == OwnerType::earth) return minutes_at_part;
  if (terminal.owner == OwnerType::splice) return 0;  // nobody opens a loom to measure
  const Part& part = build.parts[static_cast<std::size_t>(terminal.owner_index)];
  const auto has = [&](InsideType type) {
    return std::any_of(part.insides.begin(), part.insides.end(), [&](const Inside& i) { return i.type == type; });
  };
  if (has(InsideType::source)) return minutes_at_battery;
  if (has(InsideType::fuse)) return minutes_at_fuse;
  return build.kind_of(part).is_connector ? minutes_in_connector : minutes_at_part;
}

// How far a reading may lie from the computed one, down and up: as far as the sound machine's at that place (where it
// reads nothing there: at the battery's live pole), in proportion to the reading. What a fault leaves - a dead place,
// half the volts - depends on more than that: leaks, how bad a joint is. It has a few tenths of a volt at least. Less
// than half a gap, so that ranges stay apart.
struct Widening {
  double down = 0, up = 0;
};
Widening widening_at(const Planning& p, TerminalId at, double reading) {
  const auto& volts = p.solutions[p.symptom.situation.at()].terminal_volts;
  const auto says_nothing = [&](TerminalId t) {
    return !(std::abs(volts[t.at()].number()) >= p.gap) || !std::isfinite(p.limits.least[t.at()].number());
  };
  const bool is_sound = !says_nothing(at) && std::abs(reading - volts[at.at()].number()) < p.gap;
  const double error = std::abs(reading) * sound::meter_share + sound::meter_digits.number();
  const double least = is_sound ? error : fault_spread * p.gap;
  if (says_nothing(at)) at = live_pole(p.build);
  Widening wide{least, least};
  if (at.is_set() && !says_nothing(at)) {
    const double share = std::abs(reading / volts[at.at()].number());
    wide.down = std::max(least, share * (volts[at.at()] - p.limits.least[at.at()]).number());
    wide.up = std::max(least, share * (p.limits.most[at.at()] - volts[at.at()]).number());
  }
  const double most = p.gap * 0.49;
  return {std::min(wide.down, most), std::min(wide.up, most)};
}

// Groups readings at gaps; fills the test's column and the probe's outcomes. False when all look the same.
bool sort_into_outcomes(const Planning& p, const std::vector<double>& readings, double sound, std::vector<int>& column,
                        Probe& probe) {
  std::vector<std::size_t> order(readings.size());
  for (std::size_t i = 0; i < order.size(); ++i) order[i] = i;
  std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) { return readings[a] < readings[b]; });
  column.assign(readings.size(), 0);
  int outcome = -1;
  for (std::size_t i = 0; i < order.size(); ++i) {
    const double now = readings[order[i]];
    if (i == 0 || now - readings[order[i - 1]] >= p.gap) {
      ++outcome;
      probe.outcomes.push_back({now, now, Expected::on, false, false});
    }
    probe.outcomes.back().most = now;
    column[order[i]] = outcome;
  }
  for (ProbeOutcome& o : probe.outcomes) {
    o.is_sound = sound > o.least - p.gap / 2 && sound < o.most + p.gap / 2;
    o.least -= widening_at(p, probe.at, o.least).down;
    o.most += widening_at(p, probe.at, o.most).up;
  }
  return probe.outcomes.size() > 1;
}

void add_volt_probes(Planning& p) {
  std::set<TerminalId> places;
  for (const int f : p.suspects)
    for (const Reading& reading : p.book.effect(static_cast<std::size_t>(f), p.symptom.situation.at()).readings)
      places.insert(reading.at);
  for (const TerminalId at : places) {
    Probe probe;
    probe.situation = p.symptom.situation;
    probe.at = at;
    probe.minutes = minutes_for(p.build, at);
    if (probe.minutes <= 0) continue;
    std::vector<double> readings;
    for (const int f : p.suspects) readings.push_back(reading_at(p, f, at));
    const double sound = p.solutions[p.symptom.situation.at()].terminal_volts[at.at()].number();
    std::vector<int> column;
    if (!sort_into_outcomes(p, readings, std::isnan(sound) ? 0 : sound, column, probe)) continue;
    p.table.costs.push_back(probe.minutes);
    p.table.outcomes.push_back(std::move(column));
    p.probes.push_back(std::move(probe));
  }
}

// A lamp, coil or fuse taken out: open or not.
void add_ohm_probes(Planning& p) {
  std::set<InsideRef> tried;
  for (const int f : p.suspects) {
    const Fault& fault = p.book.faults[static_cast<std::size_t>(f)];
    if (fault.type != FaultType::element_dead && fault.type != FaultType::fuse_blown) continue;
    if (!tried.insert(fault.inside).second) continue;
    Probe probe;
    probe.type = ProbeType::ohms;
    probe.situation = p.symptom.situation;
    probe.what = fault.inside;
    probe.minutes = fault.type == FaultType::fuse_blown ? minutes_at_fuse : minutes_for_ohms;
    std::vector<int> column;
    for (const int g : p.suspects) {
      const Fault& other = p.book.faults[static_cast<std::size_t>(g)];
      const auto& blown = p.book.effect(static_cast<std::size_t>(g), p.symptom.situation.at()).blown;
      const bool is_open = (other.inside == fault.inside && other.type == fault.type) ||
                           std::find(blown.begin(), blown.end(), fault.inside) != blown.end();
      column.push_back(is_open ? 1 : 0);
    }
    if (std::all_of(column.begin(), column.end(), [&](int c) { return c == column.front(); })) continue;
    probe.outcomes = {{0, 0, Expected::on, false, true}, {0, 0, Expected::on, true, false}};
    p.table.costs.push_back(probe.minutes);
    p.table.outcomes.push_back(std::move(column));
    p.probes.push_back(std::move(probe));
  }
}

// The fuse's terminal away from the battery: the one that reads less while it is blown.
TerminalId lower_end(const Planning& p, int fault, InsideRef fuse) {
  const Part& part = p.build.part(fuse.part);
  TerminalId lower;
  double least = std::numeric_limits<double>::infinity();
  for (const Inside::Node& node : inside_of(p.build, fuse).nodes) {
    if (node.terminal < 0) continue;
    const TerminalId at = part.terminals[static_cast<std::size_t>(node.terminal)];
    const double volts = std::abs(reading_at(p, fault, at));
    if (volts < least) lower = at, least = volts;
  }
  return lower;
}

// A fuse that blew: is there a short behind it, or not?
void add_short_probes(Planning& p) {
  std::map<InsideRef, TerminalId> fuses;
  for (const int f : p.suspects)
    for (const InsideRef fuse : p.book.effect(static_cast<std::size_t>(f), p.symptom.situation.at()).blown)
      fuses.try_emplace(fuse, lower_end(p, f, fuse));
  for (const auto& [fuse, at] : fuses) {
    Probe probe;
    probe.type = ProbeType::short_to_earth;
    probe.situation = p.symptom.situation;
    probe.at = at;
    probe.what = fuse;
    probe.minutes = minutes_for_ohms;
    std::vector<int> column;
    for (const int f : p.suspects) {
      const auto& blown = p.book.effect(static_cast<std::size_t>(f), p.symptom.situation.at()).blown;
      column.push_back(std::find(blown.begin(), blown.end(), fuse) != blown.end() ? 0 : 1);
    }
    if (std::all_of(column.begin(), column.end(), [&](int c) { return c == column.front(); })) continue;
    probe.outcomes = {{0, 0, Expected::on, false, false}, {0, 0, Expected::on, true, true}};
    p.table.costs.push_back(probe.minutes);
    p.table.outcomes.push_back(std::move(column));
    p.probes.push_back(std::move(probe));
  }
}

// Another lamp or load in the same or another situation: does it work?
void add_watch_probes(Planning& p) {
  std::set<std::pair<SituationId, InsideRef>> places;
  for (const int f : p.suspects)
    for (std::size_t s = 0; s < p.solutions.size(); ++s)
      for (const StateChange& change : p.book.effect(static_cast<std::size_t>(f), s).changes)
        if (is_watched(p.build, change.what)) places.insert({p.solutions[s].situation, change.what});
  for (const auto& [situation, what] : places) {
    if (p.symptoms.size() == 1 && situation == p.symptom.situation && what == p.symptom.what)
      continue;  // known already
    std::map<Expected, int> number;
    std::vector<Expected> seen;
    for (const int f : p.suspects)
      seen.push_back(seen_in(p.build, p.solutions, p.book, static_cast<std::size_t>(f), situation.at(), what));
    for (const Expected state : seen) number.try_emplace(state, 0);
    if (number.size() < 2) continue;
    Probe probe;
    probe.type = ProbeType::watch;
    probe.situation = situation;
    probe.what = what;
    probe.minutes = minutes_to_look;
    const Expected sound =
        observed(inside_of(p.build, what),
                 p.solutions[situation.at()].insides[what.part.at()][static_cast<std::size_t>(what.inside)]);
    for (auto& [state, index] : number) {
      index = static_cast<int>(probe.outcomes.size());
      probe.outcomes.push_back({0, 0, state, false, state == sound});
    }
    std::vector<int> column;
    for (const Expected state : seen) column.push_back(number[state]);
    p.table.costs.push_back(probe.minutes);
    p.table.outcomes.push_back(std::move(column));
    p.probes.push_back(std::move(probe));
  }
}

// Columns that say the same: the cheaper stays. Then the most telling ones only.
void thin_out(Planning& p) {
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
    if (!seen.insert(shape).second || probes.size() >= most_probes) continue;
    thin.costs.push_back(p.table.costs[i]);
    thin.outcomes.push_back(p.table.outcomes[i]);
    probes.push_back(p.probes[i]);
  }
  p.table = std::move(thin);
  p.probes = std::move(probes);
}

Diagnosis to_diagnosis(const Planning& p, const TestTree& tree) {
  Diagnosis d;
  d.symptom = p.symptom;
  d.suspects = p.suspects;
  d.expected_minutes = tree.expected_cost;
  std::map<int, int> used;
  for (const TestNode& node : tree.nodes) {
    DiagnosisNode out;
    out.branches = node.branches;
    out.suspects = node.states;
    if (node.test >= 0) {
      const auto [place, is_new] = used.try_emplace(node.test, static_cast<int>(d.probes.size()));
      if (is_new) d.probes.push_back(p.probes[static_cast<std::size_t>(node.test)]);
      out.probe = place->second;
    } else if (node.states.size() > 1) {
      ++d.inseparable;
    }
    d.nodes.push_back(std::move(out));
  }
  return d;
}

bool shows_one_of(const FaultBook& book, std::size_t fault, const std::vector<Symptom>& symptoms) {
  return std::any_of(symptoms.begin(), symptoms.end(), [&](const Symptom& symptom) {
    const auto& changes = book.effect(fault, symptom.situation.at()).changes;
    return std::any_of(changes.begin(), changes.end(), [&](const StateChange& change) {
      return change.what == symptom.what && change.after == symptom.seen;
    });
  });
}

// A fault that shows nothing of what is listed, but something: its first symptom is listed too, in its own situation.
void add_missed_symptoms(const Build& build, const std::vector<Solution>& solutions, const FaultBook& book,
                         std::vector<Symptom>& symptoms) {
  for (std::size_t f = 0; f < book.faults.size(); ++f) {
    if (shows_one_of(book, f, symptoms)) continue;
    for (std::size_t s = 0; s < solutions.size(); ++s) {
      const auto& changes = book.effect(f, s).changes;
      const auto noticed = std::find_if(changes.begin(), changes.end(), [&](const StateChange& c) {
        return is_noticed(inside_of(build, c.what).type);
      });
      if (noticed == changes.end()) continue;
      symptoms.push_back({solutions[s].situation, noticed->what, noticed->before, noticed->after});
      break;
    }
  }
}

}  // namespace

std::vector<Symptom> list_symptoms(const Build& build, const std::vector<Solution>& solutions, const FaultBook& book) {
  std::map<std::pair<InsideRef, std::pair<Expected, Expected>>, std::map<SituationId, int>> shown;
  for (std::size_t f = 0; f < book.faults.size(); ++f)
    for (std::size_t s = 0; s < solutions.size(); ++s)
      for (const StateChange& change : book.effect(f, s).changes)
        if (is_noticed(inside_of(build, change.what).type))
          ++shown[{change.what, {change.before, change.after}}][solutions[s].situation];
  std::vector<Symptom> symptoms;
  for (const auto& [key, situations] : shown) {
    const auto most = std::max_element(situations.begin(), situations.end(),
                                       [](const auto& a, const auto& b) { return a.second < b.second; });
    symptoms.push_back({most->first, key.first, key.second.first, key.second.second});
  }
  add_missed_symptoms(build, solutions, book, symptoms);
  std::sort(symptoms.begin(), symptoms.end());
  return symptoms;
}

Diagnosis diagnose(const Build& build, const std::vector<Solution>& solutions, const FaultBook& book,
                   const Symptom& symptom) {
  return diagnose_any(build, solutions, book, {symptom});
}

Diagnosis diagnose_any(const Build& build, const std::vector<Solution>& solutions, const FaultBook& book,
                       const std::vector<Symptom>& symptoms) {
  const double gap = gap_on_12_volts * build.electrics.nominal.number() / 12;
  Planning p{build, solutions, book, symptoms, symptoms.front(), gap, {}, {}, {}, {}};
  find_suspects(p);
  if (p.suspects.empty()) return {p.symptom, {}, {}, {}, 0, 0};
  p.limits = find_reading_limits(build, solutions[p.symptom.situation.at()]);
  add_volt_probes(p);
  add_ohm_probes(p);
  add_short_probes(p);
  add_watch_probes(p);
  thin_out(p);
  return to_diagnosis(p, plan_tests(p.table));
}

}  // namespace loomfolio
