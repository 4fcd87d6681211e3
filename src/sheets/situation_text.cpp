// SPDX-License-Identifier: MIT
#include "sheets/situation_text.h"

#include <algorithm>
#include <iterator>
#include <string_view>
#include <vector>

#include "sheets/names.h"

namespace loomfolio {
namespace {

/// What a person sees, hears or feels: lamps, motors, and loads that are no works of a switching or timing part.
bool is_noticed(const Kind& kind, const std::vector<Inside>& insides, const Inside& inside) {
  if (inside.type == InsideType::lamp || inside.type == InsideType::motor) return true;
  if (inside.type != InsideType::load) return false;
  const bool is_works = std::any_of(insides.begin(), insides.end(), [](const Inside& other) {
    return other.type == InsideType::output || (other.type == InsideType::contact && other.flashes);
  });
  constexpr std::string_view silent[] = {"ignition", "control", "charging", "switching", "protection"};
  return !is_works && std::find(std::begin(silent), std::end(silent), kind.group) == std::end(silent);
}

std::vector<InsideRef> working_elements(const Build& build, const Solution& solution) {
  std::vector<InsideRef> working;
  for (std::size_t p = 0; p < build.parts.size(); ++p)
    for (std::size_t i = 0; i < build.parts[p].insides.size(); ++i) {
      const Inside& inside = build.parts[p].insides[i];
      const bool is_charger = inside.type == InsideType::charger;
      if (!is_charger && !is_noticed(build.kind_of(build.parts[p]), build.parts[p].insides, inside)) continue;
      if (observed(inside, solution.insides[p][i]) != Expected::off)
        working.push_back({PartId{static_cast<std::int32_t>(p)}, static_cast<int>(i)});
    }
  return working;
}

}  // namespace

std::string working_text(const Build& build, const Solution& solution, const Words& words) {
  std::vector<NamedElement> elements;
  for (const InsideRef what : working_elements(build, solution)) {
    const Inside& inside = build.part(what.part).insides[static_cast<std::size_t>(what.inside)];
    const Expected seen = observed(inside, solution.insides[what.part.at()][static_cast<std::size_t>(what.inside)]);
    std::string note;
    if (seen == Expected::flashing) note = words("situations.flashing");
    if (seen == Expected::dim) note = words("situations.dim");
    if (inside.type == InsideType::charger) note = words("situations.charging");
    elements.push_back({what, std::move(note)});
  }
  return list_elements(build, elements);
}

std::vector<PartId> working_parts(const Build& build, const Solution& solution) {
  std::vector<PartId> parts;
  for (const InsideRef what : working_elements(build, solution))
    if (parts.empty() || parts.back() != what.part) parts.push_back(what.part);
  return parts;
}

std::optional<BatteryReading> read_battery(const Build& build, const Solution& solution) {
  for (std::size_t p = 0; p < build.parts.size(); ++p)
    for (std::size_t i = 0; i < build.parts[p].insides.size(); ++i) {
      if (build.parts[p].insides[i].type != InsideType::source) continue;
      const InsideState& state = solution.insides[p][i];
      return BatteryReading{state.volts, -state.amperes};
    }
  return std::nullopt;
}

}  // namespace loomfolio
