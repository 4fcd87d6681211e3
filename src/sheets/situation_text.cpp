// SPDX-License-Identifier: MIT
#include "sheets/situation_text.h"

#include <vector>

#include "sheets/names.h"

namespace loomfolio {
namespace {

bool is_worth_listing(const Inside& inside) {
  return inside.type == InsideType::lamp || inside.type == InsideType::motor || inside.type == InsideType::load ||
         inside.type == InsideType::charger;
}

}  // namespace

std::string working_text(const Build& build, const Solution& solution, const Words& words) {
  std::vector<NamedElement> elements;
  for (std::size_t p = 0; p < build.parts.size(); ++p)
    for (std::size_t i = 0; i < build.parts[p].insides.size(); ++i) {
      const Inside& inside = build.parts[p].insides[i];
      if (!is_worth_listing(inside)) continue;
      const Expected seen = observed(inside, solution.insides[p][i]);
      if (seen == Expected::off) continue;
      std::string note;
      if (seen == Expected::flashing) note = words("situations.flashing");
      if (seen == Expected::dim) note = words("situations.dim");
      elements.push_back({{PartId{static_cast<std::int32_t>(p)}, static_cast<int>(i)}, std::move(note)});
    }
  return list_elements(build, elements);
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
