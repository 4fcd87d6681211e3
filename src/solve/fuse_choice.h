// SPDX-License-Identifier: MIT
// A kit that leaves the fuse to the fitter: this load and this wire -> this fuse.
#pragma once

#include <vector>

#include "solve/protection.h"

namespace loomfolio {

/// What the table says where load and wire meet.
enum class FuseFit : std::uint8_t {
  fits,
  too_much_load,  ///< no fuse of the bag may carry that load
  wire_too_thin,  ///< each fuse of the bag that carries the load is too large for that wire, or may not open in a short
                  ///< at its end
};

struct FuseFitCell {
  FuseFit fit = FuseFit::wire_too_thin;
  Amperes rating{0};  ///< the smallest that carries the load and saves the wire; 0 unless it fits
};

/// One row: loads up to this one.
struct FuseLoadRow {
  Amperes load{0};  ///< greatest steady load of the row: 0.75 of a rating in the bag (maker's guide: continuous load at
                    ///< most 75 %)
  Watts power{0};   ///< the same at the build's nominal volts: what may stand on the lamps in all
  std::vector<FuseFitCell> cells;  ///< one a size of FuseSelection::sizes
};

/// The table of one fuse. Every wire whose nearest fuse it is was put in the column's size in turn, the others as the
/// build has them: a column holds for a hook-up whose thinnest wire behind the fuse has that size.
struct FuseSelection {
  InsideRef fuse;
  std::shared_ptr<const FuseFamily> family;
  std::vector<ConductorSize>
      sizes;  ///< columns, rising: on sale, from the first that any fuse of the bag saves to the first that all do
  std::vector<FuseLoadRow> rows;  ///< rising
  Celsius ambient;                ///< it was worked out for
  Amperes load{0};                ///< of the build as it is, worst situation: to mark its own row
};

/// For any fuse of the build; the bag is its range of ratings, or every rating on sale for a fuse with one rating. A
/// fuse that nothing hangs on gives a selection without rows. `study` is study_protection() of the same build. A fuse
/// saves a wire when judge_wire() says no worse than opens_slowly, with the weakest short recomputed for the size: the
/// short's loop loses the wire's own ohms at 105 degC and gains those of the new size.
FuseSelection select_fuse(const Build& build, const ProtectionStudy& study, InsideRef fuse);

/// One for each fuse that the build leaves to the fitter, in order of parts; those without rows are left out.
std::vector<FuseSelection> select_fuses(const Build& build, const ProtectionStudy& study);

}  // namespace loomfolio
