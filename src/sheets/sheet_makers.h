// SPDX-License-Identifier: MIT
// The makers of sheets, one file each, in the order they are bound.
#pragma once

#include <vector>

#include "sheets/folio.h"

namespace loomfolio {

std::vector<Sheet> make_cover(const SheetContext& context);

}  // namespace loomfolio
