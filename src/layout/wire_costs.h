// SPDX-License-Identifier: MIT
// What each wire of a finished drawing costs, by the weights it was routed with; and where a note of it finds room.
#pragma once

#include <vector>

#include "layout/laid.h"

namespace loomfolio {

/// Counts and charges of one wire; a crossing counts for both wires. Charges in whole mm of wire.
struct WireCost {
  Grid length = 0;  ///< 0.01 mm
  int bends = 0;
  int crossings = 0;
  long length_charge = 0, bend_charge = 0, crossing_charge = 0;
  long total() const { return length_charge + bend_charge + crossing_charge; }
};

/// By wire of the drawing. `graph` is the one that was laid out.
std::vector<WireCost> find_wire_costs(const Graph& graph, const Laid& laid);

/// Room that a note asks for beside its wire, in 0.01 mm; a width of 0: no note.
struct NoteSize {
  Grid width = 0, height = 0;
};

/// One place a wire at most, clear of everything drawn, of its labels and of the boxes `taken`; what finds no room is left out.
std::vector<PlacedLabel> place_wire_notes(const Graph& graph, const Laid& laid, const std::vector<NoteSize>& sizes,
                                          const std::vector<GridBox>& taken);

}  // namespace loomfolio
