// SPDX-License-Identifier: MIT
#include "sheets/step_sharing.h"

#include <algorithm>

#include "sheets/hook_ups.h"

namespace loomfolio {
namespace {

/// An earth of that id and place stands in every hook-up, whatever wires meet there.
bool is_earth_of_all(const SheetContext& context, const Earth& earth) {
  const auto& builds = context.hook_ups->builds;
  return std::all_of(builds.begin(), builds.end(), [&](const SolvedBuild* other) {
    return std::any_of(other->build.earths.begin(), other->build.earths.end(),
                       [&](const Earth& found) { return found.id == earth.id && found.place == earth.place; });
  });
}

/// In every hook-up rings of the machine sit under the bolt, the same ones.
bool is_bolt_of_all(const SheetContext& context, const Action& action) {
  const Build& build = context.build();
  const auto& builds = context.hook_ups->builds;
  return std::all_of(builds.begin(), builds.end(), [&](const SolvedBuild* other) {
    return std::all_of(action.wires.begin(), action.wires.end(), [&](WireId wire) {
      return std::any_of(other->build.wires.begin(), other->build.wires.end(), [&](const Wire& found) {
        return found.id == build.wire(wire).id && !is_joined_by_fitter(found);
      });
    });
  });
}

bool is_step_of_all(const SheetContext& context, const Action& action) {
  const auto& builds = context.hook_ups->builds;
  return std::all_of(builds.begin(), builds.end(), [&](const SolvedBuild* other) {
    return std::any_of(other->build.steps.begin(), other->build.steps.end(), [&](const AuthorStep& found) {
      return found.text == action.text && found.caution == action.caution && found.before == action.before &&
             found.after == action.after;
    });
  });
}

/// All hook-ups have the same wires at that terminal.
bool is_joint_of_all(const SheetContext& context, const SheetContext& common, TerminalId terminal) {
  const std::string& name = context.build().terminal(terminal).name;
  const auto wires_there = [&](const Build& build) {
    std::vector<WireId> there;
    for (std::size_t w = 0; w < build.wires.size(); ++w)
      for (const TerminalId end : {build.wires[w].from, build.wires[w].to})
        if (build.terminal(end).name == name) there.push_back(WireId{static_cast<std::int32_t>(w)});
    return there;
  };
  const std::vector<WireId> own = wires_there(context.build());
  const auto& builds = context.hook_ups->builds;
  return std::all_of(own.begin(), own.end(), [&](WireId wire) { return shows_wire(common, wire); }) &&
         std::all_of(builds.begin(), builds.end(),
                     [&](const SolvedBuild* other) { return wires_there(other->build).size() == own.size(); });
}

/// Every hook-up has the part, and the same is done at it.
bool is_part_done_in_all(const SheetContext& context, const SheetContext& common, const Action& action) {
  if (!shows_part(common, action.part)) return false;
  const bool is_plug = action.type == ActionType::plug || action.type == ActionType::unplug;
  const std::string& id = context.build().part(action.part).id;
  const auto& builds = context.hook_ups->builds;
  return std::all_of(builds.begin(), builds.end(), [&](const SolvedBuild* other) {
    const std::vector<Part>& parts = other->build.parts;
    return std::any_of(parts.begin(), parts.end(), [&](const Part& part) {
      return part.id == id && (is_plug ? gets_contacts(other->build, part) : is_worked_at(other->build, part));
    });
  });
}

bool is_action_of_all(const SheetContext& context, const Action& action) {
  SheetContext common = context;
  common.extent = Extent::common;
  switch (action.type) {
    case ActionType::find:
    case ActionType::unplug:
    case ActionType::mount:
    case ActionType::body_return:
    case ActionType::plug:
      return is_part_done_in_all(context, common, action);
    case ActionType::clean_earth:
      return is_earth_of_all(context, context.build().earths[static_cast<std::size_t>(action.earth.index)]);
    case ActionType::undo_earth:
      return is_bolt_of_all(context, action);
    case ActionType::join_end:
    case ActionType::ready_ring:
    case ActionType::clip_test_fuse:
    case ActionType::join_for_test:
    case ActionType::part_again:
    case ActionType::unclip_test_fuse:
    case ActionType::cover_pole:
    case ActionType::free_wire:
      return is_joint_of_all(context, common, action.terminal);
    case ActionType::make_splice:
      return shows_splice(common, action.splice);
    case ActionType::take_fuse:
    case ActionType::lay_fuse:
      return shows_part(common, action.fuse.part);
    case ActionType::author:
      return is_step_of_all(context, action);
    default:
      return true;
  }
}

}  // namespace

bool shows_action(const SheetContext& context, const Action& action) {
  if (context.extent == Extent::whole || context.hook_ups == nullptr) return true;
  // The common wires are cut before the common steps, a hook-up's own before its own.
  if (action.type == ActionType::cut_wires) return true;
  if (action.type == ActionType::lay_wires)
    return std::any_of(action.wires.begin(), action.wires.end(),
                       [&](WireId wire) { return shows_wire(context, wire); });
  // A hook-up's own steps come after the common ones that clean the metal.
  if (action.type == ActionType::undo_earth && context.extent == Extent::own) return false;
  return is_action_of_all(context, action) == (context.extent == Extent::common);
}

}  // namespace loomfolio
