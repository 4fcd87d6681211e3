// SPDX-License-Identifier: MIT
#include "check/wire_function.h"

namespace loomfolio {

WireFunction wire_function_of(const Build& build, InsideRef ref) {
  const Part& part = build.part(ref.part);
  const Inside& inside = part.insides[static_cast<std::size_t>(ref.inside)];
  const std::string& group = build.kind_of(part).group;
  if (inside.type == InsideType::charger) return WireFunction::charging;
  if (inside.type == InsideType::coil) return WireFunction::control;
  if (inside.type == InsideType::motor && group == "starting") return WireFunction::starter;
  if (group == "ignition") return WireFunction::ignition;
  if (inside.type == InsideType::lamp && group != "instruments") return WireFunction::lighting;
  return WireFunction::other;
}

Volts drop_limit(const DropLimits& limits, WireFunction function) {
  switch (function) {
    case WireFunction::starter:
      return limits.starter;
    case WireFunction::charging:
      return limits.charging;
    case WireFunction::lighting:
      return limits.lighting;
    case WireFunction::ignition:
      return limits.ignition;
    case WireFunction::control:
      return limits.control;
    case WireFunction::other:
      break;
  }
  return limits.other;
}

std::string_view word_of(WireFunction function) {
  switch (function) {
    case WireFunction::starter:
      return "starter";
    case WireFunction::charging:
      return "charging";
    case WireFunction::lighting:
      return "lighting";
    case WireFunction::ignition:
      return "ignition";
    case WireFunction::control:
      return "control";
    case WireFunction::other:
      break;
  }
  return "other";
}

}  // namespace loomfolio
