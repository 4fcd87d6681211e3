// SPDX-License-Identifier: MIT
// Which state stands beside a situation as the one before it: another situation of the build that is one action away,
// or the situation itself with its button let go, solved for the purpose.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "sheets/figures.h"

namespace loomfolio {

/// One state of the machine, solved.
struct SolvedState {
  Situation situation;
  Solution solution;
  int index = -1;  ///< of the build's situation; -1: none of them, solved for the page
};

/// A switch that is moved between two states, and where it stands in each.
struct MovedSwitch {
  InsideRef actuator;
  int before = 0, after = 0;
};

struct SituationPair {
  SolvedState before, after;
  std::vector<MovedSwitch> moved;  ///< at least one
};

/// The pair for the situation; nothing when no switch is moved in it or nothing was solved.
std::optional<SituationPair> find_pair(const SolvedBuild& solved, SituationId situation);

/// The state that a pair's later state falls back to when what was moved is let go: solved from the later state on, so
/// that a relay that holds itself shows.
SolvedState let_go(const Build& build, const SituationPair& pair);

/// The engine turns because the starter does: cranking and stopped are one step apart, running is a state of its own.
bool are_engines_near(EngineState a, EngineState b);

/// Switches that stand differently.
std::vector<MovedSwitch> find_moved(const Build& build, const Situation& before, const Situation& after);

}  // namespace loomfolio
