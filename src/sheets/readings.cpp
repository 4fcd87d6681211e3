// SPDX-License-Identifier: MIT
#include "sheets/readings.h"

#include <algorithm>
#include <cmath>
#include <set>
#include <tuple>
#include <utility>

#include "check/paths.h"
#include "sheets/feed_way.h"
#include "solve/meter.h"

namespace loomfolio {
namespace {

bool is_consumer(const Inside& inside) {
  return inside.type == InsideType::lamp || inside.type == InsideType::load || inside.type == InsideType::motor;
}

TerminalId terminal_of(const Part& part, const Inside::Node& node) {
  return node.terminal < 0 ? TerminalId{} : part.terminals[static_cast<std::size_t>(node.terminal)];
}

/// Fed end and return of a consumer: the end further from the earthed pole is the fed one.
bool fill_ends(const Part& part, const Inside& inside, const Solution& solution, ExpectedReading& reading) {
  if (inside.nodes.size() < 2) return false;
  TerminalId ends[2] = {terminal_of(part, inside.nodes[0]), terminal_of(part, inside.nodes[1])};
  const auto volts = [&](TerminalId id) { return id.is_set() ? solution.terminal_volts[id.at()] : Volts(0); };
  if (std::abs(volts(ends[1]).number()) > std::abs(volts(ends[0]).number())) std::swap(ends[0], ends[1]);
  // Fed inside its part, over a switch or contact there: the part's own feed is the terminal of most volts.
  if (std::abs(volts(ends[0]).number()) < 1)
    for (const TerminalId id : part.terminals)
      if (std::abs(volts(id).number()) > std::abs(volts(ends[0]).number())) {
        if (!ends[1].is_set()) ends[1] = ends[0];
        ends[0] = id;
      }
  if (!ends[0].is_set() || std::isnan(volts(ends[0]).number())) return false;
  reading.feed = ends[0];
  reading.feed_volts = volts(ends[0]);
  reading.back = ends[1];
  reading.back_volts = volts(ends[1]);
  return true;
}

/// What one situation shows, before it is asked what earlier ones proved.
class Reader {
 public:
  explicit Reader(const Build& build) : build_(build), paths_(trace_paths(build)) {}

  std::vector<ExpectedReading> read(const Situation& situation, const Solution& solution) const {
    std::vector<ExpectedReading> readings;
    for (std::size_t p = 0; p < build_.parts.size(); ++p)
      for (std::size_t i = 0; i < build_.parts[p].insides.size(); ++i) {
        const Inside& inside = build_.parts[p].insides[i];
        ExpectedReading reading;
        reading.consumer = {PartId{static_cast<std::int32_t>(p)}, static_cast<int>(i)};
        reading.state = observed(inside, solution.insides[p][i]);
        if (reading.state == Expected::off) continue;
        if (inside.type == InsideType::charger) {
          if (reading.state == Expected::charging && fill_charger(solution, reading)) readings.push_back(reading);
          continue;
        }
        if (!is_consumer(inside) || !fill_ends(build_.parts[p], inside, solution, reading)) continue;
        reading.way = find_feed_way(build_, paths_, situation, solution, reading.consumer);
        readings.push_back(std::move(reading));
      }
    return readings;
  }

 private:
  bool fill_charger(const Solution& solution, ExpectedReading& reading) const {
    reading.feed = live_pole(build_);
    if (!reading.feed.is_set()) return false;
    reading.feed_volts = solution.terminal_volts[reading.feed.at()];
    return !std::isnan(reading.feed_volts.number());
  }

  const Build& build_;
  Paths paths_;
};

bool is_gear(const Build& build, const Setting& setting) {
  return inside_of(build, setting.actuator).worked_by == "gear";
}

bool is_same_reading(const ExpectedReading& a, const ExpectedReading& b) {
  constexpr double same_volts = 0.2;
  return a.consumer == b.consumer && a.state == b.state && a.way == b.way &&
         std::abs(a.feed_volts.number() - b.feed_volts.number()) < same_volts;
}

/// The element, or any of a part as a whole.
bool is_anything_on(const Build& build, const Solution& solution, InsideRef what) {
  const std::vector<Inside>& insides = build.part(what.part).insides;
  for (std::size_t i = 0; i < insides.size(); ++i)
    if ((what.inside < 0 || what.inside == static_cast<int>(i)) &&
        observed(insides[i], solution.insides[what.part.at()][i]) != Expected::off)
      return true;
  return false;
}

/// Takes the gear out where what is tested reads the same without it.
void try_neutral(const Build& build, const Reader& reader, SituationReadings& tested) {
  std::vector<Setting> settings;
  for (const Setting& setting : tested.settings)
    if (!is_gear(build, setting)) settings.push_back(setting);
  if (settings.size() == tested.settings.size()) return;
  tested.gear = Gear::in;
  SituationReadings trial = tested;
  trial.settings = settings;
  const Build changed = as_tested(build, trial);
  Solution solution = solve_situation(changed, tested.situation);
  const std::vector<ExpectedReading> all = reader.read(changed.situations[tested.situation.at()], solution);
  std::vector<ExpectedReading> found;
  for (const ExpectedReading& reading : tested.readings)
    for (const ExpectedReading& other : all)
      if (is_same_reading(reading, other)) found.push_back(other);
  if (found.size() != tested.readings.size()) return;
  for (const InsideRef what : tested.stay_off)
    if (is_anything_on(build, solution, what)) return;
  tested.settings = settings;
  tested.readings = found;
  tested.gear = Gear::neutral;
  tested.solution = std::move(solution);
}

/// What a situation is there to prove is asked there, though a control unit hides by which of its inputs it was let.
bool must_turn(const Build& build, const Situation& situation, const ExpectedReading& reading) {
  if (inside_of(build, reading.consumer).type != InsideType::motor) return false;
  return situation.engine == EngineState::cranking || std::any_of(
      situation.expectations.begin(), situation.expectations.end(), [&](const Expectation& e) {
        return e.what.part == reading.consumer.part && e.state == Expected::on;
      });
}

}  // namespace

std::vector<SituationReadings> find_readings(const SolvedBuild& solved) {
  std::vector<SituationReadings> all;
  std::set<std::tuple<InsideRef, Expected, std::vector<InsideRef>>> proven;
  const Build& build = solved.build;
  const Reader reader(build);
  for (std::size_t s = 0; s < solved.solutions.size(); ++s) {
    const Situation& situation = build.situations[s];
    SituationReadings readings{SituationId{static_cast<std::int32_t>(s)}, situation.settings, Gear::neutral, {}, {}, solved.solutions[s]};
    for (ExpectedReading& reading : reader.read(situation, solved.solutions[s]))
      if (proven.insert({reading.consumer, reading.state, reading.way}).second || must_turn(build, situation, reading))
        readings.readings.push_back(std::move(reading));
    for (const Expectation& expectation : situation.expectations)
      if (expectation.state == Expected::off) readings.stay_off.push_back(expectation.what);
    try_neutral(build, reader, readings);
    all.push_back(std::move(readings));
  }
  return all;
}

Build as_tested(const Build& build, const SituationReadings& readings) {
  Build changed = build;
  changed.situations[readings.situation.at()].settings = readings.settings;
  return changed;
}

}  // namespace loomfolio
