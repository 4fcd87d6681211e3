// SPDX-License-Identifier: MIT
#include "sheets/stopped_text.h"

#include <algorithm>

#include "base/text.h"
#include "check/paths.h"
#include "sheets/names.h"

namespace loomfolio {
namespace {

/// 'Everything but' names at most so many, and never more than a quarter of all; a build of fewer consumers than
/// `least_all` is listed.
constexpr std::size_t most_left = 3, least_all = 4;

bool consumes(const Inside& inside) {
  return inside.type == InsideType::lamp || inside.type == InsideType::load || inside.type == InsideType::motor ||
         inside.type == InsideType::coil;
}

/// Consumers that work in some situation.
std::vector<InsideRef> all_that_work(const SolvedBuild& solved) {
  std::vector<InsideRef> refs;
  for (std::size_t p = 0; p < solved.build.parts.size(); ++p)
    for (std::size_t i = 0; i < solved.build.parts[p].insides.size(); ++i) {
      const Inside& inside = solved.build.parts[p].insides[i];
      if (!consumes(inside)) continue;
      const bool works = std::any_of(solved.solutions.begin(), solved.solutions.end(), [&](const Solution& solution) {
        return observed(inside, solution.insides[p][i]) != Expected::off;
      });
      if (works) refs.push_back({PartId{static_cast<std::int32_t>(p)}, static_cast<int>(i)});
    }
  return refs;
}

std::string list(const Build& build, const std::vector<InsideRef>& refs) {
  std::vector<NamedElement> elements;
  for (const InsideRef ref : refs) elements.push_back({ref, {}});
  return list_elements(build, elements);
}

std::string list_stopped(const SolvedBuild& solved, const std::vector<Stopped>& stops, const Words& words) {
  std::vector<InsideRef> stopped, left;
  for (const Stopped& stop : stops) stopped.push_back(stop.what);
  const bool is_charging = stopped.size() == 1 && inside_of(solved.build, stopped.front()).type == InsideType::charger;
  if (is_charging) return words("fuses.charging_stops");
  const std::vector<InsideRef> all = all_that_work(solved);
  for (const InsideRef ref : all)
    if (std::find(stopped.begin(), stopped.end(), ref) == stopped.end()) left.push_back(ref);
  if (all.size() >= least_all && left.empty()) return words("fuses.everything");
  if (all.size() >= least_all && left.size() <= most_left && left.size() * 4 <= all.size())
    return words("fuses.everything_but", {{"list", list(solved.build, left)}});
  return list(solved.build, stopped);
}

/// The parts with such an element that one of the wires ends at.
std::vector<PartId> parts_on(const Build& build, const std::vector<WireId>& wires, InsideType type) {
  std::vector<PartId> parts;
  for (const WireId id : wires)
    for (const TerminalId end : {build.wire(id).from, build.wire(id).to}) {
      const Terminal& terminal = build.terminal(end);
      if (terminal.owner != OwnerType::part) continue;
      const PartId part{terminal.owner_index};
      const auto& insides = build.part(part).insides;
      const bool has_it =
          std::any_of(insides.begin(), insides.end(), [&](const Inside& inside) { return inside.type == type; });
      if (has_it && std::find(parts.begin(), parts.end(), part) == parts.end()) parts.push_back(part);
    }
  return parts;
}

}  // namespace

std::string stopped_text(const SolvedBuild& solved, const FuseStudy& study, const Words& words) {
  const std::string all = list_stopped(solved, study.stops, words);
  if (!study.stops_all_parked || all == words("fuses.everything")) return all;
  const std::string running =
      study.stops_running.empty() ? words("fuses.running_nothing") : list_stopped(solved, study.stops_running, words);
  return words("fuses.parked_all", {{"running", running}});
}

std::string protected_text(const SolvedBuild& solved, const FuseStudy& study, const Words& words) {
  const Build& build = solved.build;
  // A wire between a lamp and the switch that earths it may be fed by several fuses, through what stands before it.
  std::vector<WireId> fed = study.wires;
  std::erase_if(fed, [&](WireId wire) { return solved.study->wires[wire.at()].verdict == WireVerdict::limited; });
  std::vector<PartId> parts = consumers_on(build, fed.empty() ? study.wires : fed);
  std::erase(parts, study.fuse.part);  // of a relay that holds the fuse, the coil is fed elsewhere
  // What hangs on the fuses behind it, a main fuse protects too.
  std::vector<PartId> all = parts_on(build, study.wires, InsideType::fuse);
  const bool is_of_charger = parts.empty() && !parts_on(build, study.wires, InsideType::charger).empty();
  std::erase(all, study.fuse.part);
  if (is_of_charger && all.empty()) return words("fuses.charging_wires", {{"wires", wire_ids(build, study.wires)}});
  if (is_of_charger) parts = parts_on(build, study.wires, InsideType::charger);
  for (const PartId part : parts)
    if (std::find(all.begin(), all.end(), part) == all.end()) all.push_back(part);
  std::erase(all, study.fuse.part);
  std::vector<std::string> names;
  for (const PartId part : all) names.push_back(build.part(part).label);
  return join(names, ", ");
}

}  // namespace loomfolio
