// SPDX-License-Identifier: MIT
// Dashed links inside a part end on the blades that they move, wherever these stand.
#pragma once

#include <vector>

#include "layout/inside_drawing.h"
#include "sheets/symbols/symbols.h"

namespace loomfolio {

/// The link with its ends on the blades; `stands` by PartDrawing::symbols. An end at no blade stays.
InnerLine end_on_blades(InnerLine link, const PartDrawing& drawing, const std::vector<SymbolState>& stands);

}  // namespace loomfolio
