// SPDX-License-Identifier: MIT
#include "sheets/setting_text.h"

#include <algorithm>

#include "check/paths.h"
#include "sheets/names.h"

namespace loomfolio {

std::string_view engine_key(EngineState engine) {
  switch (engine) {
    case EngineState::stopped:
      return "situations.stopped";
    case EngineState::cranking:
      return "situations.cranking";
    case EngineState::running:
      return "situations.running";
  }
  return {};
}

std::string setting_text(const Build& build, const Setting& setting) {
  const Inside& element = inside_of(build, setting.actuator);
  std::string position = element.positions[static_cast<std::size_t>(setting.position)].name;
  std::replace(position.begin(), position.end(), '-', ' ');  // words of the spec are written with hyphens
  return switch_name(build, setting.actuator) + ": " + position;
}

}  // namespace loomfolio
