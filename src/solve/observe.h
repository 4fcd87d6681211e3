// SPDX-License-Identifier: MIT
// The state of one element inside a part, from node volts however they were found.
#pragma once

#include <cmath>

#include "solve/circuit.h"

namespace loomfolio {

/// Shares of rated volts from which a person sees something happen. From memory but the light: flux ~ volts^3.4.
namespace visible {
inline constexpr double lamp_lit = 0.20;   ///< a filament begins to glow
inline constexpr double lamp_dim = 0.70;   ///< below it under a third of the light
inline constexpr double load_on = 0.5;
inline constexpr double motor_turns = 0.3;
inline constexpr Amperes least_charge{0.02};
}  // namespace visible

/// `View` has: double volts(int node), double amperes(int branch), bool is_active(int branch), bool is_pulled_in(int coil_device).
template <class View>
InsideState observe(const Build& build, const Circuit& circuit, InsideRef ref, const View& view);

namespace observing {

template <class View>
double over(const View& view, int a, int b) {
  return a < 0 || b < 0 ? 0 : view.volts(a) - view.volts(b);
}

template <class View>
void fill_switch(const Circuit& circuit, InsideRef ref, const View& view, InsideState& state) {
  const int first = circuit.inside_branch[ref.part.at()][static_cast<std::size_t>(ref.inside)];
  for (int i = first; i >= 0 && i < static_cast<int>(circuit.branches.size()); ++i) {
    const Branch& branch = circuit.branches[static_cast<std::size_t>(i)];
    if (branch.inside != ref) break;  // a switch's joints follow each other
    state.is_on = true;
    const double amperes = view.amperes(i);
    if (std::abs(amperes) > std::abs(state.amperes.number())) state.amperes = Amperes(amperes);
  }
}

template <class View>
bool is_on(const Circuit& circuit, const Inside& inside, int number, const View& view, const InsideState& state) {
  const Branch& branch = circuit.branches[static_cast<std::size_t>(number)];
  const double volts = over(view, branch.a, branch.b);
  const double share = branch.volts.number() > 0 ? std::abs(volts) / branch.volts.number() : 0;
  switch (inside.type) {
    case InsideType::lamp: return share >= visible::lamp_lit;
    case InsideType::load: return share >= visible::load_on;
    case InsideType::motor: return share >= visible::motor_turns;
    case InsideType::charger: return -state.amperes >= visible::least_charge;
    case InsideType::source: return std::abs(state.amperes.number()) >= visible::least_charge.number();
    case InsideType::contact:
    case InsideType::output: return view.is_active(number);
    case InsideType::coil:
      for (std::size_t i = 0; i < circuit.coils.size(); ++i)
        if (circuit.coils[i].branch == number) return view.is_pulled_in(static_cast<int>(i));
      return false;
    default: return true;
  }
}

}  // namespace observing

template <class View>
InsideState observe(const Build& build, const Circuit& circuit, InsideRef ref, const View& view) {
  const Inside& inside = build.part(ref.part).insides[static_cast<std::size_t>(ref.inside)];
  InsideState state;
  if (inside.nodes.size() >= 2)
    state.volts = Volts(observing::over(view, node_of(build, circuit, ref.part, inside.nodes[0]),
                                        node_of(build, circuit, ref.part, inside.nodes[1])));
  if (inside.type == InsideType::switch_) {
    observing::fill_switch(circuit, ref, view, state);
    return state;
  }
  const int number = circuit.inside_branch[ref.part.at()][static_cast<std::size_t>(ref.inside)];
  if (number < 0) return state;
  const Branch& branch = circuit.branches[static_cast<std::size_t>(number)];
  state.amperes = Amperes(view.amperes(number));
  state.is_on = observing::is_on(circuit, inside, number, view, state);
  const double volts = std::abs(observing::over(view, branch.a, branch.b));
  if (inside.type == InsideType::lamp && state.is_on) state.is_dim = volts < visible::lamp_dim * branch.volts.number();
  if (branch.law == Law::limited || branch.law == Law::charger)
    state.is_limiting = branch.amperes.number() > 0 && std::abs(state.amperes.number()) > 0.999 * branch.amperes.number();
  return state;
}

}  // namespace loomfolio
