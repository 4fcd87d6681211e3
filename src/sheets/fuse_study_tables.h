// SPDX-License-Identifier: MIT
// What the fuse chart says beyond its list: fuses to choose, which of two opens first, wires before any fuse.
#pragma once

#include "sheets/page_flow.h"

namespace loomfolio {

/// Each adds nothing where the study has nothing to say.
void add_fuse_choices(PageFlow& flow);
void add_fuse_order(PageFlow& flow);
void add_unfused_leads(PageFlow& flow);
/// Whose opening times were used for each family: the spec's own curve or the program's limits.
void add_fuse_curves(PageFlow& flow);

}  // namespace loomfolio
