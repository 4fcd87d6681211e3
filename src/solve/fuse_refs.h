// SPDX-License-Identifier: MIT
// Fuses of a build as the solver sees them.
#pragma once

#include <memory>
#include <string_view>
#include <vector>

#include "solve/circuit.h"
#include "solve/fuse_curve.h"

namespace loomfolio {

struct FuseRef {
  InsideRef inside;
  Amperes rating;
  std::shared_ptr<const FuseFamily> family;
};

/// V more over a fuse: one that so little would open is asked at every short.
inline constexpr double fuse_slack = 0.03;

/// Every fuse, in order of parts and insides. A fuse left to the fitter counts with the greatest rating of its range: the safe side
/// for its wires.
std::vector<FuseRef> find_fuses(const Build& build);

/// The family's curve for a rating: the one that the build gives in a [[fuse_curve]], else the program's. An empty id is
/// regular blade. Never null.
std::shared_ptr<const FuseFamily> family_in(const Build& build, std::string_view id, Amperes rating);

/// The rating that counts: given, else the greatest on offer, else 10 A.
Amperes rating_of_fuse(const Part& part, const Inside& fuse);

}  // namespace loomfolio
