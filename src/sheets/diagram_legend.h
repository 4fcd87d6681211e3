// SPDX-License-Identifier: MIT
// What the signs on a diagram mean, those that are used and no others.
#pragma once

#include "sheets/diagram_plan.h"
#include "sheets/draw.h"

namespace loomfolio {

/// The legend as a block of that width.
Block make_legend(const SheetContext& context, const LaidDiagram& diagram, Millimetres width);

}  // namespace loomfolio
