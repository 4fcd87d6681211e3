// SPDX-License-Identifier: MIT
// `--overlay=costs`: beside each wire of a diagram what its length, bends and crossings cost, so that an ugly page
// explains itself. No label gives way to it.
#pragma once

#include <string>
#include <vector>

#include "sheets/diagram_plan.h"
#include "sheets/draw.h"

namespace loomfolio {

/// '84+16+40=140', and where it stands beside its wire.
struct CostNote {
  std::string text;
  PlacedLabel place;
};

struct CostNotes {
  std::vector<CostNote> placed;         ///< whole, or the sum alone
  std::vector<std::size_t> told_below;  ///< wires of the graph that are not told whole
};

/// A note beside every wire that has room for one, else its sum alone.
CostNotes find_cost_notes(const DiagramGraph& diagram, const Laid& laid, const TextMeasure& measure);

/// `origin` as in `draw_diagram`.
void draw_costs(Items& items, const CostNotes& notes, const TextMeasure& measure, Point origin);

/// How the notes read, and all of what stood on the drawing as a sum alone or not at all.
std::string costs_text(const SheetContext& context, const LaidDiagram& diagram, const CostNotes& notes);

}  // namespace loomfolio
