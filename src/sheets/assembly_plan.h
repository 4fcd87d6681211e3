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
enum class Stage : std::uint8_t {
  prepare,  ///< the machine made free and safe to work on
  bracket,
  splices,  ///< on the bench
  loom,     ///< laid in the machine
  earths,
  signals,
  supply,
  plugs,  ///< connectors pushed together, the loom tied
  fuses,
  cold,  ///< tests without power
  battery,
  tests,
};

enum class ActionType : std::uint8_t {
  key_off,        ///< a kit: before anything else
  remove_covers,  ///< seat and covers: what hides the battery
  disconnect,     ///< a kit: the machine's battery
  remove_battery, ///< a whole machine: one that may be in
  remove_tank,    ///< the fuel tank, once nothing can spark
  take_battery,   ///< a kit that brings a battery: the old one out
  take_fuse,      ///< a fuse of the machine that the kit's wires will use
  find,           ///< a part that the machine has
  unplug,         ///< a plug of the machine that gets wires
  free_wire,      ///< a wire of the machine that will share its fitting with a new one
  mount,          ///< a part that is new
  check_clear,    ///< what was mounted stands clear of heat, fuel and what moves
  cut_wires,      ///< all of them, and labels on both ends
  make_splice,
  lay_wires,    ///< those that run from one zone to another
  check_way,    ///< the loom lies clear, with slack at both stops
  undo_earth,   ///< a bolt that holds rings of the machine
  clean_earth,  ///< bare metal where wires bolt to frame or engine
  body_return,  ///< a part whose own metal is its return
  join_end,     ///< all wires that the fitter joins at one terminal, for good
  ready_ring,   ///< a ring for a battery pole crimped and covered
  plug,         ///< a connector pushed together
  tie_loom,
  lay_fuse,
  test_cold,       ///< the tests without power
  clip_test_fuse,  ///< a small fuse between the live pole and its rings, for the first power
  join_for_test,   ///< rings on the earthed pole
  test_first,      ///< the tests of first power
  part_again,      ///< the earthed pole's rings off
  unclip_test_fuse,
  refit_tank,  ///< its tap shut
  cover_pole,  ///< the live one, once its rings are bolted
  open_tap,    ///< once no ring can spark any more
  test_live,  ///< those of each situation
  refit_covers,
  author,
};

/// One thing to do.
struct Action {
  ActionType type = ActionType::author;
  int turn = 0;                  ///< of an action that is several steps: 1, 2 ...; 0: it is one
  PartId part;                   ///< find, unplug, mount, body_return, plug
  EarthId earth;                 ///< undo_earth, clean_earth
  std::vector<WireId> wires;     ///< join_end and at battery poles: thickest first; lay_wires: in wire order
  std::vector<WireId> machines;  ///< join_end: wires of the machine already at that terminal
  TerminalId terminal;           ///< where the wires end
  ZoneId from, to;               ///< lay_wires
  SpliceId splice;               ///< make_splice
  InsideRef fuse;                ///< take_fuse, lay_fuse
  std::string text, caution;     ///< author
  std::string before, after;     ///< author: what it stands beside, as the spec names it
};

/// Actions at one part, earth or zone.
struct ActionGroup {
  std::string title;  ///< empty: none
  PartId part;        ///< at which all of it is done; unset: none, or several
  std::vector<Action> actions;
  std::string note_key = {};  ///< of the words: what holds for all its actions, said once; may be empty
};

struct StagePlan {
  Stage stage = Stage::bracket;
  std::vector<ActionGroup> groups;
};

/// Each action as often as it is told in steps, with its turn.
std::vector<Action> in_turns(const std::vector<Action>& actions);

/// The fitter works at the part: the kit brings it, or a wire of the kit ends there.
bool is_worked_at(const Build& build, const Part& part);

/// The fitter clicks contacts into a plug of the part.
bool gets_contacts(const Build& build, const Part& part);

/// A wire's end that the fitter joins: not one of a wire that the machine has already.
bool is_joined_by_fitter(const Wire& wire);

/// Several wires at such a terminal share one fitting; on a stud each has a ring of its own.
bool shares_fitting(const Build& build, TerminalId terminal);

/// A contact that clicks into a connector's cavity.
bool is_in_housing(TerminalForm form);

/// Wires of the machine whose fitting must go, since a new wire shares the one that takes its place.
std::vector<WireId> wires_to_free(const Build& build, TerminalId terminal);

/// Stages that have nothing to do are left out, save the battery's and the tests'.
std::vector<StagePlan> plan_assembly(const SolvedBuild& solved, const Words& words);

}  // namespace loomfolio
