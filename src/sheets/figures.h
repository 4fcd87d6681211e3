// SPDX-License-Identifier: MIT
// Figures of a build that several pages print. The sheets measure nothing: these only pick out what solve/ found.
#pragma once

#include <vector>

#include "model/build.h"
#include "solve/solution.h"
#include "solve/wire_load.h"

namespace loomfolio {

/// One build with what was computed from it.
struct SolvedBuild {
  const Build& build;
  std::vector<Solution> solutions;        ///< by SituationId; empty where nothing was solved: figures then stay blank
  std::vector<WireLoad> wire_loads = {};  ///< by WireId; compose_folio finds them when they are not given
};

/// The most that flows through an element over all situations, and where.
struct MostCurrent {
  Amperes amperes{0};
  SituationId situation;  ///< unset while nothing flows in any
};
MostCurrent most_through(const SolvedBuild& solved, InsideRef inside);

/// Wires whose nearest fuse is that one.
std::vector<WireId> wires_behind(const SolvedBuild& solved, InsideRef fuse);

/// Of those, the one with the least metal; unset when there is none.
WireId smallest_wire_behind(const SolvedBuild& solved, InsideRef fuse);

/// Consumers at the ends of the wires behind a fuse: parts that hold a lamp, load, motor, coil, charger or output; by
/// PartId.
std::vector<PartId> parts_behind(const SolvedBuild& solved, InsideRef fuse);

}  // namespace loomfolio
