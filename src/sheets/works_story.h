// SPDX-License-Identifier: MIT
// What a part does in this machine, told from solved situations: which switch is moved, what then flows, what closes,
// what comes of it. Every figure is a solution's.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "model/words.h"
#include "sheets/situation_pairs.h"

namespace loomfolio {

/// A coil that is at rest, pulled in by an action, and let go.
struct CoilStory {
  PartId part;
  int coil = -1;  ///< index into Part::insides
  SituationPair pair;
  SolvedState released;
};

/// The first situation whose action pulls in the part's coil; nothing when none does.
std::optional<CoilStory> find_coil_story(const SolvedBuild& solved, PartId part);

/// One sentence an event, in the order in which they happen.
std::vector<std::string> tell_coil_story(const Build& build, const CoilStory& story, const Words& words);

/// What a switch joins in each of its positions, and the most that switches, fuses, outputs, chargers and flashing
/// contacts carry in any situation.
std::vector<std::string> tell_use(const SolvedBuild& solved, PartId part, const Words& words);

/// 'Start button: on'.
std::string moved_text(const Build& build, const MovedSwitch& moved, int position);

}  // namespace loomfolio
