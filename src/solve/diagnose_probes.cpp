// SPDX-License-Identifier: MIT
#include "solve/diagnose_probes.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <set>

#include "solve/bench_situations.h"
#include "solve/loose.h"
#include "solve/meter.h"
#include "solve/reading_limits.h"
#include "solve/volt_sorter.h"

namespace loomfolio {
namespace {

constexpr double most_off = 0.05;     // of a faulty reading: a starter that does not turn pulls no volts down

bool has_inside(const Part& part, InsideType type) {
  return std::any_of(part.insides.begin(), part.insides.end(), [&](const Inside& i) { return i.type == type; });
}

// What is fed and what a person sees or hears are not the same: a flasher's timer, a control unit or a charger shows
// nothing.
bool is_watched(const Build& build, InsideRef ref) {
  const Inside& inside = element_of(build, ref);
  if (inside.type == InsideType::lamp || inside.type == InsideType::motor) return true;
  if (inside.type != InsideType::load) return false;
  const Part& part = build.part(ref.part);
  if (std::any_of(part.insides.begin(), part.insides.end(), [](const Inside& i) { return i.flashes; })) return false;
  const std::string& group = build.kind_of(part).group;
  return group != "control" && group != "ignition";
}

double minutes_at(const Build& build, TerminalId at) {
  const Terminal& terminal = build.terminal(at);
  if (terminal.owner == OwnerType::earth) return minutes::at_part;
  if (terminal.owner == OwnerType::splice) return 0;  // nobody opens a loom to measure
  const Part& part = build.parts[static_cast<std::size_t>(terminal.owner_index)];
  if (has_inside(part, InsideType::source)) return minutes::at_battery;
  if (has_inside(part, InsideType::fuse)) return minutes::at_fuse;
  return build.kind_of(part).is_connector ? minutes::in_connector : minutes::at_part;
}

double minutes_to_reach(const Build& build, SituationId from, SituationId to) {
  if (from == to) return 0;
  const Situation& situation = build.situations[to.at()];
  double sum = minutes::to_set;
  if (situation.engine == EngineState::cranking) sum += minutes::to_crank;
  if (situation.engine == EngineState::running) sum += minutes::engine_running;
  return is_in_gear(build, situation) ? sum + minutes::in_gear : sum;
}

/// Nobody measures where some suspect leaves no more than a diode's leakage: the meter may show anything.
bool is_told_by_leakage(const ProbePlan& plan, const std::vector<char>& sound_loose, TerminalId at, double least) {
  const double sound = plan.study.solutions()[plan.situation()].terminal_volts[at.at()].number();
  for (const int f : plan.suspects) {
    double volts = sound;
    bool is_loose = sound_loose[at.at()] != 0;
    for (const Reading& reading : plan.here(f).readings)
      if (reading.at == at) volts = reading.volts, is_loose = reading.is_loose;
    if (is_loose && !std::isnan(volts) && std::abs(volts) >= least) return true;
  }
  return false;
}

// A meter with 10 megohm shows nothing on a place that floats.
double reading_at(const ProbePlan& plan, int fault, TerminalId at) {
  for (const Reading& reading : plan.here(fault).readings)
    if (reading.at == at) return std::isnan(reading.volts) ? 0 : reading.volts;
  const double sound = plan.study.solutions()[plan.situation()].terminal_volts[at.at()].number();
  return std::isnan(sound) ? 0 : sound;
}

// By how much of itself the battery's own reading may be off.
double share_at_pole(const Build& build, const Solution& solution, const ReadingLimits& limits) {
  const TerminalId pole = live_pole(build);
  if (!pole.is_set()) return 0;
  const double sound = solution.terminal_volts[pole.at()].number();
  const double off = std::max(sound - limits.least[pole.at()].number(), limits.most[pole.at()].number() - sound);
  return std::abs(sound) > 0 ? std::min(off / std::abs(sound), most_off) : 0;
}

/// What the battery's live pole reads at most, with its sign; endless without a battery. A starter that does not turn
/// leaves the battery at rest.
double greatest_volts(const Build& build, EngineState engine, const ReadingLimits& limits) {
  const TerminalId pole = live_pole(build);
  const bool is_negative = build.electrics.is_positive_earth;
  if (!pole.is_set())
    return is_negative ? -std::numeric_limits<double>::infinity() : std::numeric_limits<double>::infinity();
  if (engine == EngineState::running) return (is_negative ? limits.least : limits.most)[pole.at()].number();
  const double fresh = build.electrics.resting.number() + sound::freshest.number() * build.electrics.nominal.number() / 12;
  const double read = fresh * (1 + sound::meter_share) + sound::meter_digits.number();
  return is_negative ? -read : read;
}

bool is_open_over(const ProbePlan& plan, int suspect, InsideRef what, FaultType type) {
  const Fault& fault = plan.study.book().faults[static_cast<std::size_t>(suspect)];
  const auto& blown = plan.here(suspect).blown;
  return (fault.inside == what && fault.type == type) || std::find(blown.begin(), blown.end(), what) != blown.end();
}

/// One unplugging tells of all windings of a generator.
int ohms_outcome(const ProbePlan& plan, int suspect, const Fault& asked) {
  const Build& build = plan.study.build();
  const Fault& fault = plan.study.book().faults[static_cast<std::size_t>(suspect)];
  if (fault.type == FaultType::diode_reversed && fault.inside == asked.inside) return 2;
  const bool is_winding = element_of(build, asked.inside).is_winding;
  if (is_winding && fault.type == FaultType::element_dead && fault.inside.part == asked.inside.part)
    return element_of(build, fault.inside).is_winding ? 1 : 0;
  const FaultType type = asked.type == FaultType::diode_reversed ? FaultType::element_dead : asked.type;
  return is_open_over(plan, suspect, asked.inside, type) ? 1 : 0;
}

/// Can everyone who has one of the suspects come there, without blowing another fuse on the way?
bool is_reachable(ProbePlan& plan, std::size_t s) {
  if (s == plan.situation()) return true;
  const bool must_run = plan.study.build().situations[s].engine == EngineState::running;
  for (const int f : plan.suspects) {
    const auto fault = static_cast<std::size_t>(f);
    if (plan.study.burns(fault, s)) return false;
    if (plan.study.effect(fault, s, plan.situation()).blown.size() > plan.here(f).blown.size()) return false;
    if (must_run && plan.study.stops_engine(fault, s, plan.situation())) return false;
  }
  return true;
}

bool is_about_starting(const ProbePlan& plan) {
  const std::string& group = plan.study.build().kind_of(plan.study.build().part(plan.symptom().what.part)).group;
  return group == "starting" || group == "ignition";
}

void add_watch(ProbePlan& plan, SituationId situation, InsideRef what) {
  std::map<Expected, int> number;
  std::vector<Expected> seen;
  for (const int f : plan.suspects)
    seen.push_back(plan.study.seen(static_cast<std::size_t>(f), situation.at(), plan.situation(), what));
  for (const Expected state : seen) number.try_emplace(state, 0);
  const Build& build = plan.study.build();
  Probe probe;
  probe.type = ProbeType::watch;
  probe.situation = situation;
  probe.what = what;
  probe.minutes = minutes::to_look + minutes_to_reach(build, plan.symptom().situation, situation);
  if (build.situations[situation.at()].engine == EngineState::cranking && !is_about_starting(plan))
    probe.minutes += minutes::to_crank_aside;
  const auto inside = static_cast<std::size_t>(what.inside);
  const Expected sound =
      observed(element_of(build, what), plan.study.solutions()[situation.at()].insides[what.part.at()][inside]);
  for (auto& [state, index] : number) {
    index = static_cast<int>(probe.outcomes.size());
    ProbeOutcome outcome;
    outcome.state = state, outcome.is_sound = state == sound;
    probe.outcomes.push_back(outcome);
  }
  std::vector<int> column;
  for (const Expected state : seen) column.push_back(number[state]);
  add_probe(plan, std::move(probe), std::move(column));
}

}  // namespace

void add_probe(ProbePlan& plan, Probe probe, std::vector<int> column) {
  if (std::all_of(column.begin(), column.end(), [&](int c) { return c == column.front(); })) return;
  plan.table.costs.push_back(probe.minutes);
  plan.table.outcomes.push_back(std::move(column));
  plan.probes.push_back(std::move(probe));
}

void add_volt_probes(ProbePlan& plan) {
  const Build& build = plan.study.build();
  const Solution& solution = plan.study.solutions()[plan.situation()];
  const ReadingLimits limits = find_reading_limits(build, solution);
  const double share = share_at_pole(build, solution, limits);
  const double greatest = greatest_volts(build, build.situations[plan.situation()].engine, limits);
  std::set<TerminalId> places;
  for (const int f : plan.suspects)
    for (const Reading& reading : plan.here(f).readings) places.insert(reading.at);
  const std::vector<char> sound_loose = find_loose_in(build, solution);
  const double near_a_gap = sorting::near_nothing * build.electrics.nominal.number() / 12;
  for (const TerminalId at : places) {
    Probe probe;
    probe.situation = plan.symptom().situation;
    probe.at = at;
    probe.minutes = minutes_at(build, at);
    if (probe.minutes <= 0 || is_told_by_leakage(plan, sound_loose, at, near_a_gap)) continue;
    std::vector<double> readings;
    for (const int f : plan.suspects) readings.push_back(reading_at(plan, f, at));
    const double sound = solution.terminal_volts[at.at()].number();
    const VoltSorter sorter(build, std::isnan(sound) ? 0 : sound, limits.least[at.at()].number(),
                            limits.most[at.at()].number(), share, greatest);
    std::vector<int> column;
    if (sorter.sort(readings, column, probe)) add_probe(plan, std::move(probe), std::move(column));
  }
}

void add_ohm_probes(ProbePlan& plan) {
  std::set<InsideRef> tried;
  std::set<PartId> wound;
  for (const int f : plan.suspects) {
    const Fault& fault = plan.study.book().faults[static_cast<std::size_t>(f)];
    const bool is_asked = fault.type == FaultType::element_dead || fault.type == FaultType::fuse_blown ||
                          fault.type == FaultType::diode_reversed;
    if (!is_asked || !tried.insert(fault.inside).second) continue;
    const Inside& inside = element_of(plan.study.build(), fault.inside);
    if (inside.is_winding && !wound.insert(fault.inside.part).second) continue;
    Probe probe;
    probe.type = ProbeType::ohms;
    probe.situation = plan.symptom().situation;
    probe.what = fault.inside;
    probe.minutes = fault.type == FaultType::fuse_blown ? minutes::at_fuse : minutes::for_ohms;
    std::vector<int> column;
    for (const int g : plan.suspects) column.push_back(ohms_outcome(plan, g, fault));
    ProbeOutcome whole, open, reversed;
    whole.is_sound = true, open.is_open = true, reversed.is_reversed = true;
    probe.outcomes = {whole, open};
    if (inside.type == InsideType::diode) probe.outcomes.push_back(reversed);
    add_probe(plan, std::move(probe), std::move(column));
  }
}

// Another lamp or load in the same or another situation: does it work?
void add_watch_probes(ProbePlan& plan) {
  const Build& build = plan.study.build();
  for (std::size_t s = 0; s < plan.study.solutions().size(); ++s) {
    if (build.situations[s].engine == EngineState::running && s != plan.situation() && is_about_starting(plan))
      continue;
    std::set<InsideRef> places;
    for (const int f : plan.suspects)
      for (const StateChange& change : plan.study.effect(static_cast<std::size_t>(f), s, plan.situation()).changes)
        if (is_watched(build, change.what)) places.insert(change.what);
    if (places.empty() || !is_reachable(plan, s)) continue;
    for (const InsideRef what : places)
      if (plan.symptoms.size() > 1 || s != plan.situation() || what != plan.symptom().what)  // else known already
        add_watch(plan, plan.study.solutions()[s].situation, what);
  }
}

bool feeds_a_charger(const ProbePlan& plan, const Fault& fault) {
  if (fault.type == FaultType::wire_open || fault.type == FaultType::bad_joint)
    return plan.study.solutions()[plan.situation()].wire_alternating[fault.wire.at()].number() > 0;
  const Build& build = plan.study.build();
  return fault.type == FaultType::element_dead && element_of(build, fault.inside).is_winding &&
         build.kind_of(build.part(fault.inside.part)).group == "charging";
}

void add_alternating_probes(ProbePlan& plan) {
  const Inside& charger = element_of(plan.study.build(), plan.symptom().what);
  if (charger.type != InsideType::charger || charger.fed_by.size() < 2) return;
  Probe probe;
  probe.type = ProbeType::alternating;
  probe.situation = plan.symptom().situation;
  probe.what = plan.symptom().what;
  probe.minutes = minutes::for_ohms;
  std::vector<int> column;
  for (const int f : plan.suspects)
    column.push_back(feeds_a_charger(plan, plan.study.book().faults[static_cast<std::size_t>(f)]) ? 1 : 0);
  ProbeOutcome alike, unlike;
  alike.is_sound = true, unlike.is_open = true;
  probe.outcomes = {alike, unlike};
  add_probe(plan, std::move(probe), std::move(column));
}

}  // namespace loomfolio
