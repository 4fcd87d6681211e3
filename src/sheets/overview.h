// SPDX-License-Identifier: MIT
// The overview: the machine from front to rear, what stands where, and on which diagram it is drawn.
#pragma once

#include <vector>

#include "sheets/diagram_plan.h"

namespace loomfolio {

/// One sheet across. It is the table of contents of the diagrams.
Sheet make_overview(const SheetContext& context, const std::vector<LaidDiagram>& diagrams);

}  // namespace loomfolio
