// SPDX-License-Identifier: MIT
// Sizes for wires of size "auto": a stage from a build to a build.
#pragma once

#include <vector>

#include "solve/conductor.h"
#include "solve/earth_lift.h"

namespace loomfolio {

/// What made a wire as thick as it is.
enum class SizeReason : std::uint8_t {
  least,       ///< the thinnest that is used on a machine, 0.5 mm2 (common practice)
  terminal,    ///< its terminals take nothing thinner
  current,     ///< its load
  protection,  ///< the fuse above it must save it
  drop,        ///< volts lost on a loop it is part of
  earth,       ///< a part's earth would stand too far above the battery's (earth_lift.h)
  strap,       ///< it earths the battery, and is as thick as the live cable
};

struct SizedWire {
  WireId wire;
  SizeReason reason = SizeReason::least;
};

/// What could not be met with sizes on sale that the terminals take.
struct UnmetWire {
  WireId wire;
  SizeReason reason = SizeReason::current;  ///< current or protection
};
struct UnmetDrop {
  InsideRef element;
  SituationId situation;
  Volts total, limit;
};

struct SizingResult {
  Build build;  ///< every wire has an area and a size text; none is auto any more
  std::vector<SizedWire> chosen;
  std::vector<UnmetWire> unmet_wires;
  std::vector<UnmetDrop> unmet_drops;
  std::vector<EarthLift> unmet_lifts;
};

/// Thinnest sizes on sale - mm2 for metric documents, AWG for imperial ones - that carry the load, are saved by their
/// fuse, keep every loop within its drop limit and every part's earth near the battery's, and fit both terminals. Deterministic; a build without auto wires comes
/// back as it was.
SizingResult size_wires(Build build);

/// Sizes the auto wires of all hook-ups of one spec: a wire that several share, by its id, is as thick in each as the
/// one that needs it thickest.
void size_wires_of_all(std::vector<Build>& builds);

/// Sizes on sale, rising: common practice.
const std::vector<ConductorSize>& sizes_on_sale(UnitSystem units);

}  // namespace loomfolio
