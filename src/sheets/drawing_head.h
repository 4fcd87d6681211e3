// SPDX-License-Identifier: MIT
// The head of a sheet that is one drawing: its title at the left, the hook-up it belongs to at the right.
#pragma once

#include <string>

#include "sheets/draw.h"
#include "sheets/folio.h"

namespace loomfolio {

/// Tagged as heading and paragraph; the baseline lies 6 mm below the body's upper edge. A long name of a hook-up is set
/// smaller until it stands clear of the title.
void add_drawing_head(Items& items, const SheetContext& context, const Rect& body, const std::string& title);

}  // namespace loomfolio
