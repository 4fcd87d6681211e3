// SPDX-License-Identifier: MIT
// What hangs on a fuse that the kit leaves to the fitter -> which of the fuses in the bag.
#pragma once

#include "sheets/page_flow.h"

namespace loomfolio {

/// Where the chart tells which fuse to take: the table of that fuse, or its row where it has none.
std::string choice_anchor(const SheetContext& context, InsideRef fuse);

/// A table a fuse whose rating is left to the fitter: loads, rising, and for each thinnest wire the fuse. Nothing where
/// there is none.
void add_fuse_selections(PageFlow& flow);

}  // namespace loomfolio
