// SPDX-License-Identifier: MIT
#include "sheets/readings.h"

#include <cmath>
#include <set>

#include "check/paths.h"

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

}  // namespace

std::vector<SituationReadings> find_readings(const SolvedBuild& solved) {
  std::vector<SituationReadings> all;
  std::set<std::pair<InsideRef, Expected>> proven;
  const Build& build = solved.build;
  for (std::size_t s = 0; s < solved.solutions.size(); ++s) {
    const Solution& solution = solved.solutions[s];
    SituationReadings readings{SituationId{static_cast<std::int32_t>(s)}, {}, {}};
    for (std::size_t p = 0; p < build.parts.size(); ++p)
      for (std::size_t i = 0; i < build.parts[p].insides.size(); ++i) {
        const Inside& inside = build.parts[p].insides[i];
        if (!is_consumer(inside)) continue;
        ExpectedReading reading;
        reading.consumer = {PartId{static_cast<std::int32_t>(p)}, static_cast<int>(i)};
        reading.state = observed(inside, solution.insides[p][i]);
        if (reading.state == Expected::off || !fill_ends(build.parts[p], inside, solution, reading)) continue;
        if (proven.insert({reading.consumer, reading.state}).second) readings.readings.push_back(reading);
      }
    for (const Expectation& expectation : build.situations[s].expectations)
      if (expectation.state == Expected::off) readings.stay_off.push_back(expectation.what);
    all.push_back(std::move(readings));
  }
  return all;
}

}  // namespace loomfolio
