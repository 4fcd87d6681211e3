// SPDX-License-Identifier: MIT
// The soft qualities of a drawing, from its geometry alone.
#pragma once

#include "layout/laid.h"
#include "layout/weights.h"

namespace loomfolio::laying {

struct Quality {
  long crossings = 0;   ///< pairs of wires that cross, each place counted
  long bends = 0;
  long length = 0;      ///< 0.01 mm
  long cost(const RouteWeights& w) const { return crossings * w.crossing + bends * w.bend + length * w.length; }
};

Quality measure(const Laid& laid);

}  // namespace loomfolio::laying
