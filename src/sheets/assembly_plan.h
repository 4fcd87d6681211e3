// SPDX-License-Identifier: MIT
// In which order a build is put together: stages, in each the places, at each place the actions. Only which and when;
// how an action reads and looks is the page's.
#pragma once

#include <string>
#include <vector>

#include "model/build.h"
#include "model/words.h"
#include "sheets/figures.h"

namespace loomfolio {

/// In the order of work. The battery comes last of all, its earthed pole last of the battery.
enum class Stage : std::uint8_t { bracket, splices, earths, signals, supply, fuses, battery };

enum class ActionType : std::uint8_t { mount, join_end, make_splice, lay_fuse, author };

/// One thing to do.
struct Action {
  ActionType type = ActionType::author;
  PartId part;                ///< mount
  WireId wire;                ///< join_end
  TerminalId terminal;        ///< join_end: where
  SpliceId splice;            ///< make_splice
  InsideRef fuse;             ///< lay_fuse
  std::string text, caution;  ///< author
};

/// Actions at one part, earth or zone.
struct ActionGroup {
  std::string title;  ///< empty: none
  std::vector<Action> actions;
};

struct StagePlan {
  Stage stage = Stage::bracket;
  std::vector<ActionGroup> groups;
};

/// Stages that have nothing to do are left out, save the battery's.
std::vector<StagePlan> plan_assembly(const SolvedBuild& solved, const Words& words);

}  // namespace loomfolio
