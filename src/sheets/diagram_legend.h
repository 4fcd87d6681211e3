// SPDX-License-Identifier: MIT
// What the signs on a diagram mean, those that are used and no others.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "sheets/costs_overlay.h"
#include "sheets/diagram_cables.h"
#include "sheets/diagram_trunks.h"
#include "sheets/diagram_plan.h"
#include "sheets/draw.h"

namespace loomfolio {

/// What was found once for the drawing and its legend.
struct DiagramFinds {
  std::vector<CableRing> rings;
  std::vector<Trunk> trunks;
  std::optional<CostNotes> costs;  ///< with the overlay only
};

/// The legend as a block of that width.
Block make_legend(const SheetContext& context, const LaidDiagram& diagram, const DiagramFinds& finds, Millimetres width);

/// 'Starter relay 31 to earth E2': where the wire runs.
std::string wire_run_text(const Build& build, WireId wire, const Words& words);

}  // namespace loomfolio
