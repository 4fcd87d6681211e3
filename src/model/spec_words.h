// SPDX-License-Identifier: MIT
// What a spec calls states and positions: one place for the reader, findings, tables and pages.
#pragma once

#include <algorithm>
#include <string>
#include <string_view>

#include "model/build.h"

namespace loomfolio {

/// As `engine = "..."` says it.
constexpr std::string_view spec_word(EngineState engine) {
  switch (engine) {
    case EngineState::stopped:
      return "stopped";
    case EngineState::cranking:
      return "cranking";
    case EngineState::running:
      return "running";
  }
  return {};
}

/// As `expect = { lamp = "..." }` says it.
constexpr std::string_view spec_word(Expected state) {
  switch (state) {
    case Expected::on:
      return "on";
    case Expected::off:
      return "off";
    case Expected::dim:
      return "dim";
    case Expected::flashing:
      return "flashing";
    case Expected::charging:
      return "charging";
  }
  return {};
}

/// A position as pages say it: 'in gear' of `in-gear`.
inline std::string position_words(std::string name) {
  std::replace(name.begin(), name.end(), '-', ' ');
  return name;
}

}  // namespace loomfolio
