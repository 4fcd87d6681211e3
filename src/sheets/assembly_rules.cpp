// SPDX-License-Identifier: MIT
// What of a build the fitter has to do with, and how many steps an action is told in.
#include <algorithm>

#include "sheets/assembly_plan.h"
#include "sheets/fitting_picture.h"

namespace loomfolio {
namespace {

/// In how many steps it is told: one thing to do in each.
int turns_of(ActionType type) {
  switch (type) {
    case ActionType::disconnect:
    case ActionType::remove_tank:
    case ActionType::clip_test_fuse:
      return 3;
    case ActionType::free_wire:
    case ActionType::tie_loom:
    case ActionType::part_again:
      return 2;
    default:
      return 1;
  }
}

}  // namespace

std::vector<Action> in_turns(const std::vector<Action>& actions) {
  std::vector<Action> all;
  for (const Action& action : actions) {
    const int turns = turns_of(action.type);
    for (int turn = 1; turn <= turns; ++turn) {
      all.push_back(action);
      if (turns > 1) all.back().turn = turn;
    }
  }
  return all;
}

bool is_worked_at(const Build& build, const Part& part) {
  if (part.provided == Provider::kit) return true;
  return std::any_of(build.wires.begin(), build.wires.end(), [&](const Wire& wire) {
    const auto is_here = [&](TerminalId end) {
      return std::find(part.terminals.begin(), part.terminals.end(), end) != part.terminals.end();
    };
    return is_joined_by_fitter(wire) && (is_here(wire.from) || is_here(wire.to));
  });
}

bool gets_contacts(const Build& build, const Part& part) {
  const std::vector<KindTerminal>& terminals = build.kind_of(part).terminals;
  return std::any_of(build.wires.begin(), build.wires.end(), [&](const Wire& wire) {
    if (!is_joined_by_fitter(wire)) return false;
    for (std::size_t k = 0; k < part.terminals.size(); ++k)
      if (is_in_housing(terminals[k].form) && (part.terminals[k] == wire.from || part.terminals[k] == wire.to))
        return true;
    return false;
  });
}

bool is_joined_by_fitter(const Wire& wire) { return wire.provided == Provider::kit; }

bool shares_fitting(const Build& build, TerminalId terminal) {
  const FittingShape shape = fitting_shape(build, terminal);
  return shape != FittingShape::ring && shape != FittingShape::bare;
}

bool is_in_housing(TerminalForm form) { return form == TerminalForm::sealed || form == TerminalForm::cavity; }

std::vector<WireId> wires_to_free(const Build& build, TerminalId terminal) {
  const FittingShape shape = fitting_shape(build, terminal);
  if (!shares_fitting(build, terminal) || shape == FittingShape::splice || shape == FittingShape::lead) return {};
  std::vector<WireId> machines;
  bool has_new = false;
  for (std::size_t w = 0; w < build.wires.size(); ++w) {
    const Wire& wire = build.wires[w];
    if (wire.from != terminal && wire.to != terminal) continue;
    if (is_joined_by_fitter(wire))
      has_new = true;
    else
      machines.push_back(WireId{static_cast<std::int32_t>(w)});
  }
  return has_new ? machines : std::vector<WireId>{};
}

}  // namespace loomfolio
