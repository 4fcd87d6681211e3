// SPDX-License-Identifier: MIT
// Blocks whose order is free: narrow ones two side by side, all of them on as few pages as they need.
#pragma once

#include <vector>

#include "sheets/page_flow.h"

namespace loomfolio {

/// A row as wide as the page, of narrow blocks in two columns.
struct PairedRow {
  Block block;
  std::vector<std::size_t> blocks;  ///< which stand in it
};

/// Rows of blocks of column_width(flow, 2), `gap` between those of one column. A block that finds no neighbour is in no row.
std::vector<PairedRow> pair_side_by_side(const PageFlow& flow, std::vector<Block> blocks, Millimetres gap);

/// Puts the blocks into the flow as `pack_pages` says.
void add_packed(PageFlow& flow, std::vector<Block> blocks, Millimetres gap);

}  // namespace loomfolio
