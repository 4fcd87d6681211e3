// SPDX-License-Identifier: MIT
#include "sheets/setting_text.h"

#include "check/paths.h"
#include "model/spec_words.h"
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
  const std::string position = position_words(element.positions[static_cast<std::size_t>(setting.position)].name);
  return switch_name(build, setting.actuator) + ": " + position;
}

}  // namespace loomfolio
