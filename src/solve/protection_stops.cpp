// SPDX-License-Identifier: MIT
// What goes off when a fuse opens, over all situations.
#include <algorithm>

#include "solve/faults.h"
#include "solve/protection_parts.h"

namespace loomfolio {

namespace {

bool takes_power(InsideType type) {
  return type == InsideType::lamp || type == InsideType::load || type == InsideType::motor || type == InsideType::coil;
}

bool goes_off(const Study& study, const StateChange& change) {
  const InsideType type = study.build.part(change.what.part).insides[static_cast<std::size_t>(change.what.inside)].type;
  return type != InsideType::source && (change.after == Expected::off || change.after == Expected::dim);
}

/// Lamps, loads, motors and coils that work in the situation.
std::size_t count_working(const Study& study, const Solution& solution) {
  std::size_t count = 0;
  for (std::size_t p = 0; p < study.build.parts.size(); ++p)
    for (std::size_t i = 0; i < study.build.parts[p].insides.size(); ++i) {
      const Inside& inside = study.build.parts[p].insides[i];
      if (takes_power(inside.type) && observed(inside, solution.insides[p][i]) != Expected::off) ++count;
    }
  return count;
}

void add_once(std::vector<Stopped>& stops, const Stopped& stopped) {
  const auto is_same = [&](const Stopped& other) { return other.what == stopped.what; };
  if (std::none_of(stops.begin(), stops.end(), is_same)) stops.push_back(stopped);
}

/// Parked: with the engine stopped. False where nothing works in any such situation.
bool stops_all_parked(const Study& study, const FaultBook& book, std::size_t fault) {
  bool is_any = false;
  for (std::size_t s = 0; s < study.solutions.size(); ++s) {
    if (study.build.situations[study.solutions[s].situation.at()].engine != EngineState::stopped) continue;
    const std::size_t working = count_working(study, study.solutions[s]);
    std::size_t off = 0;
    for (const StateChange& change : book.effect(fault, s).changes) {
      const InsideType type =
          study.build.part(change.what.part).insides[static_cast<std::size_t>(change.what.inside)].type;
      if (takes_power(type) && goes_off(study, change)) ++off;
    }
    if (off < working) return false;
    is_any = is_any || working > 0;
  }
  return is_any;
}

}  // namespace

void study_stops(Study& study) {
  std::vector<Fault> faults;
  for (const FuseRef& fuse : study.fuses) {
    Fault fault;
    fault.type = FaultType::fuse_blown;
    fault.inside = fuse.inside;
    faults.push_back(fault);
  }
  const FaultBook book = solve_these_faults(study.build, study.solutions, faults, {});
  for (std::size_t f = 0; f < faults.size(); ++f)
    for (std::size_t s = 0; s < study.solutions.size(); ++s)
      for (const StateChange& change : book.effect(f, s).changes) {
        if (!goes_off(study, change)) continue;
        const Stopped stopped{change.what, study.solutions[s].situation};
        add_once(study.result.fuses[f].stops, stopped);
        if (study.build.situations[stopped.situation.at()].engine == EngineState::running)
          add_once(study.result.fuses[f].stops_running, stopped);
      }
  for (std::size_t f = 0; f < faults.size(); ++f) {
    FuseStudy& fuse = study.result.fuses[f];
    fuse.stops_all_parked = stops_all_parked(study, book, f);
    for (std::vector<Stopped>* list : {&fuse.stops, &fuse.stops_running})
      std::sort(list->begin(), list->end(), [](const Stopped& a, const Stopped& b) { return a.what < b.what; });
  }
}

}  // namespace loomfolio
