// SPDX-License-Identifier: MIT
// `--overlay=costs`: beside each wire of a diagram what its length, bends and crossings cost, so that an ugly page
// explains itself. No label gives way to it.
#pragma once

#include <string>

#include "sheets/diagram_plan.h"
#include "sheets/draw.h"

namespace loomfolio {

/// A note beside every wire that has room for one: '84+16+40=140', else its sum alone. `origin` as in `draw_diagram`.
void draw_costs(Items& items, const DiagramGraph& diagram, const Laid& laid, const TextMeasure& measure, Point origin);

/// How the notes read, and all of what stood on the drawing as a sum alone or not at all.
std::string costs_text(const SheetContext& context, const LaidDiagram& diagram);

}  // namespace loomfolio
