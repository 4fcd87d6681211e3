// SPDX-License-Identifier: MIT
// Blocks whose order is free: narrow ones in two columns, all of them on as few pages as they need.
#pragma once

#include <vector>

#include "sheets/page_flow.h"

namespace loomfolio {

/// A block as wide as the page, and as it stands in one of two columns (column_width); an empty `half`: it needs the
/// page's width.
struct FreeBlock {
  Block whole, half = {};
};

/// Puts the blocks into the flow as `pack_pages` says.
void add_packed(PageFlow& flow, std::vector<FreeBlock> blocks, Millimetres gap);

}  // namespace loomfolio
