// SPDX-License-Identifier: MIT
// From placed bodies and runs to boxes, bands and courses.
#pragma once

#include "layout/laid.h"
#include "layout/tracks.h"

namespace loomfolio::laying {

/// Boxes, bands, courses, width and height; no dots, hops or labels yet. The top left of all is (0, 0).
Laid draw(const Plan& plan, const Streets& streets, const Routes& routes, const Tracks& tracks);

/// Drops repeated points and those a straight line runs on through.
void simplify(std::vector<GridPoint>& points);

}  // namespace loomfolio::laying
