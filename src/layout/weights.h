// SPDX-License-Identifier: MIT
// Every figure the layout engine weighs one ugliness against another with, and every distance it keeps. Lengths in
// hundredths of a millimetre; charges in the same unit, so that 100 is the price of 1 mm of wire.
#pragma once

#include "base/geometry.h"

namespace loomfolio::laying {

struct RouteWeights {
  int length = 1;               ///< per 0.01 mm of wire: wandering
  int bend = 1000;              ///< stairs
  int crossing = 5200;          ///< tangles
  int crossing_maybe = 1800;    ///< a vertical that may or may not be crossed, by the order of tracks
  int upward = 50;              ///< per mm against the current below the supply: loops over the top
  int outside = 6000;           ///< a run outside all zone bands
  int rank_turned = 2500;       ///< a part that stands above one that feeds it
  int straight_pull = 8;        ///< how much harder a pair of ends that can be joined straight pulls together
  int crowding = 4;             ///< per 0.01 mm that a row becomes too long for its column: wide sheets
  int loose_pull = 1;           ///< pull of any other pair
  int apart = 100000;           ///< two parts side by side that the author keeps apart: dearer than any tangle
  int pair_parted = 3000;       ///< a left and a right part that share neither row nor column: less than a crossing
  int pair_stacked = 1200;      ///< one above the other, which reads nearly as well as side by side
  int pair_pull = 12;           ///< how hard two that are one above the other pull to one edge: less than two straight wires
  int pair_between = 1000;      ///< a foreign part between the two
  int pair_unlike = 300;        ///< the two not mirrored
  int part_moved = 20000;       ///< a known part that a later wire pushes aside
  int squeeze = 2;              ///< per 0.01 mm that a later wire runs where others must give way
};

/// Distances that hold in every drawing: they are never gone below; the drawing grows instead.
struct Spacing {
  Grid clear = 300;         ///< from a wire's first bend, or a foreign wire, to a part
  Grid pitch = 250;         ///< between neighbouring parallel wires
  Grid least = 150;         ///< between two parallel wires beside half their pens, where terminals stand too close for more
  Grid label_gap = 50;      ///< above and below a label
  Grid part_gap = 800;      ///< between two parts of a row with no wire between them
  Grid spare = 200;         ///< left free between a part and the first run beside it, so that a later wire finds a way out
  Grid row_gap = 800;       ///< between two rows with no wire between them
  Grid band_gap = 400;      ///< between two zone bands
  Grid apart = 4000;        ///< between two parts that the author keeps apart, in a row
  Grid wires_apart = 750;   ///< between two parallel wires that the author keeps apart
  Grid band_margin = 400;   ///< from a band's edge to the first part
  Grid band_head = 700;     ///< above the first row, for the zone's name
};

}  // namespace loomfolio::laying
