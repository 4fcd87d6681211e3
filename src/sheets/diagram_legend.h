// SPDX-License-Identifier: MIT
// What the signs on a diagram mean, those that are used and no others.
#pragma once

#include <string>

#include "sheets/diagram_plan.h"
#include "sheets/draw.h"

namespace loomfolio {

/// The legend as a block of that width.
Block make_legend(const SheetContext& context, const LaidDiagram& diagram, Millimetres width);

/// 'Starter relay 31 to earth E2': where the wire runs.
std::string wire_run_text(const Build& build, WireId wire, const Words& words);

}  // namespace loomfolio
