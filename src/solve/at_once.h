// SPDX-License-Identifier: MIT
// What a fuse carries when all that can be on together is on: more than any one of the listed situations may ask for.
#pragma once

#include "solve/protection.h"

namespace loomfolio {

/// Sets `at_once`, `at_once_from` and `at_once_moved` of every fuse of the study. From the situation without cranking in which the fuses
/// carry most together, each switch that hand or foot works goes where the fuse carries most, one position each, so that a person can do
/// it; what turns the starter stays as it is. The circuit is solved with these switches, for a fuse between battery and generator with the charging dead too: the figure is
/// what flows then, never a sum. Switches are tried one at a time, then as each situation sets several; a load that needs two moves
/// which no situation makes together is not found (check says that it is never on).
void study_at_once(const Build& build, const std::vector<Solution>& solutions, ProtectionStudy& study);

/// `study_protection`, with all on at once of every fuse.
ProtectionStudy study_with_all_on(const Build& build, const std::vector<Solution>& solutions);

}  // namespace loomfolio
