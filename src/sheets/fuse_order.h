// SPDX-License-Identifier: MIT
// In which order fuses go in at first power, through a small fuse in line with the live pole.
#pragma once

#include <vector>

#include "sheets/figures.h"

namespace loomfolio {

/// One fuse going in while those before it are in.
struct FuseTrial {
  InsideRef fuse;
  std::vector<Setting> settings;  ///< what must be switched on so that the fuse has supply; engine stopped
  bool has_supply = false;        ///< false: nothing supplies it while the engine stands
  Amperes drawn;                  ///< that the battery then gives; 0 without supply
  std::vector<InsideRef> works;   ///< lamps, loads, motors and coils that this fuse sets going
};

/// A fuse is proved only while its supply side is live: those that the battery reaches with every switch at rest first,
/// from the battery outwards; then those that a switch must be moved for, the fewest moves first; last those that have
/// no supply with the engine stopped. Solves the build once or twice a fuse; empty without a battery.
std::vector<FuseTrial> order_fuses(const Build& build);

/// A situation, engine stopped, that the test fuse carries with all fuses in: the key is turned behind it first.
struct TrialSituation {
  SituationId situation;
  Amperes drawn;
  std::vector<InsideRef> works;  ///< lamps, loads and coils
};
/// Those in which a lasting load within `test_fuse` flows and something works; no button is pressed, no motor turns. Empty
/// where nothing was solved.
std::vector<TrialSituation> situations_behind(const SolvedBuild& solved, Amperes test_fuse);

/// The least usual fuse that carries `drawn` with a quarter to spare, 3 A at least: blade fuses as ISO 8820-3 lists
/// them.
Amperes trial_fuse(Amperes drawn);

}  // namespace loomfolio
