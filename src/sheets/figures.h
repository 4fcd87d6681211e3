// SPDX-License-Identifier: MIT
// Figures of a build that several pages print. The sheets measure nothing: these only pick out what solve/ found.
#pragma once

#include <future>
#include <optional>
#include <string_view>
#include <vector>

#include "model/build.h"
#include "sheets/fault_plan.h"
#include "solve/own_supply.h"
#include "solve/protection.h"
#include "solve/solution.h"
#include "solve/wire_load.h"

namespace loomfolio {

/// One build with what was computed from it.
struct SolvedBuild {
  const Build& build;
  std::vector<Solution> solutions;  ///< by SituationId; empty where nothing was solved: figures then stay blank
  std::optional<ProtectionStudy> study = std::nullopt;  ///< compose_folio makes it when it is not given
  std::vector<WireLoad> wire_loads = {};                ///< by WireId; likewise
  OwnSupply own_supply = {};                            ///< complete_figures finds it
  std::shared_future<FaultPlan> fault_plan = {};        ///< thought out beside the drawing; not valid: not begun
};

/// Fills in what is not there and can be had from the solutions.
void complete_figures(SolvedBuild& solved);

/// The study of one fuse; nothing when none was made.
const FuseStudy* study_of(const SolvedBuild& solved, InsideRef fuse);

/// Consumers at the ends of those wires: parts that hold a lamp, load, motor, coil or output; by PartId.
std::vector<PartId> consumers_on(const Build& build, const std::vector<WireId>& wires);

/// Key of the words for what stands between a short on a wire and harm; empty where its fuse alone says it.
std::string_view verdict_key(WireVerdict verdict);
/// The same on the fuse chart, where a wire that is saved is called so: from shorts alone where it does not carry for ever
/// what its fuse may carry (check calls that fuse rather large).
std::string_view guard_key(WireVerdict verdict, bool carries_overload);

}  // namespace loomfolio
