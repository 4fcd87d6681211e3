// SPDX-License-Identifier: MIT
#include "sheets/wire_groups.h"

#include <cmath>
#include <map>
#include <tuple>

#include "base/text.h"
#include "sheets/hook_ups.h"
#include "sheets/print_text.h"

namespace loomfolio {

std::vector<WireGroup> group_wires(const SheetContext& context) {
  const Build& build = context.build();
  using Key = std::tuple<double, std::string, Insulation, std::string, std::string>;
  std::map<Key, WireGroup> groups;
  for (std::size_t i = 0; i < build.wires.size(); ++i) {
    const Wire& wire = build.wires[i];
    if (wire.provided == Provider::machine || !shows_wire(context, WireId{static_cast<std::int32_t>(i)})) continue;
    WireGroup& group =
        groups[{wire.area.number(), print_wire_size(wire), wire.insulation, wire.colour.base, wire.colour.stripe}];
    group.wires.push_back(WireId{static_cast<std::int32_t>(i)});
    if (wire.length)
      group.total += *wire.length;
    else
      group.has_all_lengths = false;
  }
  std::vector<WireGroup> list;
  for (auto& [key, group] : groups) list.push_back(std::move(group));
  return list;
}

std::string print_reel_length(Metres length, UnitSystem units) {
  constexpr double feet_per_metre = 1 / 0.3048;
  const double number = length.number() * (units == UnitSystem::metric ? 1 : feet_per_metre);
  return fixed(std::ceil(number * 10 - 1e-9) / 10, 1);
}

std::string reel_unit(UnitSystem units, const Words& words) {
  return words(units == UnitSystem::metric ? "unit.metre" : "unit.foot");
}

}  // namespace loomfolio
