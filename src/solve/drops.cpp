// SPDX-License-Identifier: MIT
#include "solve/drops.h"

#include <algorithm>
#include <cmath>

#include "solve/circuit.h"

namespace loomfolio {
namespace {

struct Poles {
  double live = 0, earthed = 0;
  bool is_there = false;
};

double volts_at(const Build& build, const Solution& solution, PartId part, const Inside::Node& node) {
  if (node.terminal < 0) return std::nan("");
  return solution.terminal_volts[build.part(part).terminals[static_cast<std::size_t>(node.terminal)].at()].number();
}

// The battery's poles; of several the first.
Poles find_poles(const Build& build, const Solution& solution) {
  for (std::size_t p = 0; p < build.parts.size(); ++p)
    for (const Inside& inside : build.parts[p].insides) {
      if (inside.type != InsideType::source || inside.nodes.size() < 2) continue;
      const PartId part{static_cast<std::int32_t>(p)};
      const double plus = volts_at(build, solution, part, inside.nodes[0]),
                   minus = volts_at(build, solution, part, inside.nodes[1]);
      return build.electrics.is_positive_earth ? Poles{minus, plus, true} : Poles{plus, minus, true};
    }
  return {};
}

bool has_loop(const Inside& inside, const InsideState& state) {
  if (!state.is_on) return false;
  return inside.type == InsideType::lamp || inside.type == InsideType::load || inside.type == InsideType::motor ||
         inside.type == InsideType::coil || inside.type == InsideType::charger ||
         (inside.type == InsideType::resistor && !inside.is_winding && std::abs(state.amperes.number()) > 0.1);
}

LoopDrop drop_of(const Build& build, const Solution& solution, InsideRef ref, const Poles& poles) {
  const Inside& inside = build.part(ref.part).insides[static_cast<std::size_t>(ref.inside)];
  LoopDrop drop;
  drop.element = ref;
  drop.situation = solution.situation;
  drop.function = drop_function_of(build, ref);
  drop.limit = drop_limit(build.electrics.drop_limits, drop.function);
  const double a = volts_at(build, solution, ref.part, inside.nodes[0]),
               b = volts_at(build, solution, ref.part, inside.nodes[1]);
  const double source = std::abs(poles.live - poles.earthed), element = std::abs(a - b);
  const double near = std::abs(a - poles.live) < std::abs(b - poles.live) ? a : b, far = near == a ? b : a;
  drop.feed = Volts(std::abs(poles.live - near));
  drop.back = Volts(std::abs(far - poles.earthed));
  drop.total = Volts(inside.type == InsideType::charger ? element - source : source - element);
  drop.is_in_series = inside.type != InsideType::charger && element < 0.5 * source;
  return drop;
}

}  // namespace

DropFunction drop_function_of(const Build& build, InsideRef ref) {
  const Part& part = build.part(ref.part);
  const std::string& group = build.kind_of(part).group;
  switch (part.insides[static_cast<std::size_t>(ref.inside)].type) {
    case InsideType::charger:
      return DropFunction::charging;
    case InsideType::coil:
      return DropFunction::control;
    case InsideType::motor:
      return group == "starting" ? DropFunction::starter : DropFunction::other;
    case InsideType::lamp:
      return group == "instruments" ? DropFunction::other : DropFunction::lighting;
    default:
      break;
  }
  if (group == "ignition") return DropFunction::ignition;
  return group == "lighting" || group == "signalling" ? DropFunction::lighting : DropFunction::other;
}

Volts drop_limit(const DropLimits& limits, DropFunction function) {
  switch (function) {
    case DropFunction::starter:
      return limits.starter;
    case DropFunction::charging:
      return limits.charging;
    case DropFunction::lighting:
      return limits.lighting;
    case DropFunction::ignition:
      return limits.ignition;
    case DropFunction::control:
      return limits.control;
    case DropFunction::other:
      break;
  }
  return limits.other;
}

std::string_view word_of(DropFunction function) {
  switch (function) {
    case DropFunction::starter:
      return "starter";
    case DropFunction::charging:
      return "charging";
    case DropFunction::lighting:
      return "lighting";
    case DropFunction::ignition:
      return "ignition";
    case DropFunction::control:
      return "control";
    case DropFunction::other:
      break;
  }
  return "other";
}

std::vector<LoopDrop> find_loop_drops(const Build& build, const std::vector<Solution>& solutions) {
  std::vector<LoopDrop> drops;
  std::vector<Poles> poles;
  for (const Solution& solution : solutions) poles.push_back(find_poles(build, solution));
  for (std::size_t p = 0; p < build.parts.size(); ++p)
    for (std::size_t i = 0; i < build.parts[p].insides.size(); ++i) {
      const InsideRef ref{PartId{static_cast<std::int32_t>(p)}, static_cast<int>(i)};
      bool is_found = false;
      LoopDrop worst;
      for (std::size_t s = 0; s < solutions.size(); ++s) {
        const InsideState& state = solutions[s].insides[p][i];
        if (!poles[s].is_there || !has_loop(build.parts[p].insides[i], state)) continue;
        const LoopDrop drop = drop_of(build, solutions[s], ref, poles[s]);
        if (!std::isfinite(drop.total.number()) || (is_found && drop.total <= worst.total)) continue;
        worst = drop;
        is_found = true;
      }
      if (is_found) drops.push_back(worst);
    }
  return drops;
}

}  // namespace loomfolio
