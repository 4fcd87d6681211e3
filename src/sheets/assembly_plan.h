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

/// In the order of work. The battery is joined last of all, its earthed pole last of the battery; then all is tested.
enum class Stage : std::uint8_t { bracket, splices, earths, signals, supply, fuses, battery, tests };

enum class ActionType : std::uint8_t {
  disconnect,   ///< a kit: take the machine's battery off before anything else
  find,         ///< a part that the machine has
  mount,        ///< a part that is new
  check_clear,  ///< what was mounted stands clear of heat, fuel and what moves
  clean_earth,  ///< bare metal where wires bolt to frame or engine
  body_return,  ///< a part whose own metal is its return
  join_end,
  cut_wires,  ///< all of them, and labels on both ends
  make_splice,
  lay_fuse,
  test_cold,  ///< the tests without power
  test_fuse,  ///< a small fuse in line with the live cable, for the first power
  test_live,  ///< those of first power and of each situation
  author,
};

/// One thing to do.
struct Action {
  ActionType type = ActionType::author;
  PartId part;                ///< find, mount, body_return
  EarthId earth;              ///< clean_earth
  WireId wire;                ///< join_end
  TerminalId terminal;        ///< join_end: where
  SpliceId splice;            ///< make_splice
  InsideRef fuse;             ///< lay_fuse
  std::string text, caution;  ///< author
};

/// Actions at one part, earth or zone.
struct ActionGroup {
  std::string title;  ///< empty: none
  PartId part;        ///< at which all of it is done; unset: none, or several
  std::vector<Action> actions;
};

struct StagePlan {
  Stage stage = Stage::bracket;
  std::vector<ActionGroup> groups;
};

/// The fitter works at the part: the kit brings it, or a wire of the kit ends there.
bool is_worked_at(const Build& build, const Part& part);

/// A wire's end that the fitter joins: not one of a wire that the machine has already.
bool is_joined_by_fitter(const Wire& wire);

/// Stages that have nothing to do are left out, save the battery's and the tests'.
std::vector<StagePlan> plan_assembly(const SolvedBuild& solved, const Words& words);

}  // namespace loomfolio
