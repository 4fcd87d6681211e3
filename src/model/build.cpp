// SPDX-License-Identifier: MIT
#include "model/build.h"

#include <algorithm>

#include "base/text.h"

namespace loomfolio {

ZoneId zone_of(const Build& build, TerminalId id) {
  const Terminal& terminal = build.terminal(id);
  const auto index = static_cast<std::size_t>(terminal.owner_index);
  switch (terminal.owner) {
    case OwnerType::part: return build.parts[index].zone;
    case OwnerType::splice: return build.splices[index].zone;
    case OwnerType::earth: return build.earths[index].zone;
  }
  return {};
}

std::string call_terminal(const Build& build, TerminalId id) {
  const Terminal& terminal = build.terminal(id);
  if (terminal.owner != OwnerType::part) return terminal.name;
  const Part& part = build.parts[static_cast<std::size_t>(terminal.owner_index)];
  return part.label + " " + build.kind_of(part).terminals[static_cast<std::size_t>(terminal.kind_terminal)].id;
}

std::vector<std::vector<WireId>> wires_at_terminals(const Build& build) {
  std::vector<std::vector<WireId>> at(build.terminals.size());
  for (std::size_t i = 0; i < build.wires.size(); ++i) {
    const WireId id{static_cast<std::int32_t>(i)};
    at[build.wires[i].from.at()].push_back(id);
    if (build.wires[i].to != build.wires[i].from) at[build.wires[i].to.at()].push_back(id);
  }
  return at;
}

bool has_wire(const Build& build, TerminalId terminal) {
  return std::any_of(build.wires.begin(), build.wires.end(),
                     [&](const Wire& wire) { return wire.from == terminal || wire.to == terminal; });
}

int position_in(const Build& build, const Situation& situation, InsideRef element) {
  for (const Setting& setting : situation.settings)
    if (setting.actuator == element) return setting.position;
  return build.part(element.part).insides[static_cast<std::size_t>(element.inside)].rest_position;
}

bool is_hand_or_foot_switch(const Inside& inside) {
  return inside.type == InsideType::switch_ && (inside.worked_by == "hand" || inside.worked_by == "foot");
}

std::string print_size(const Wire& wire) {
  if (wire.size_text.ends_with("AWG")) return wire.size_text;
  return shortest(wire.area.number(), 2) + " mm2";
}

}  // namespace loomfolio
