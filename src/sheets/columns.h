// SPDX-License-Identifier: MIT
// Blocks set in columns of even height, in reading order: down the first column, then the next.
#pragma once

#include <vector>

#include "sheets/draw.h"
#include "sheets/page_flow.h"

namespace loomfolio {

struct ColumnSetting {
  int count = 2;
  Millimetres gap = look::block_gap;  ///< between blocks of a column
  bool is_right_to_left = false;      ///< set by add_columns: the first column is the right one
};

/// Width of one of `count` columns over the flow's width.
Millimetres column_width(const PageFlow& flow, int count);

/// Whether all of them fit into columns of that height.
bool fit_in_columns(const std::vector<Block>& blocks, Millimetres height, const ColumnSetting& setting);

/// Puts blocks of column_width into the flow, as many pages as they need; the columns of each page are as even as the
/// order allows.
void add_columns(PageFlow& flow, std::vector<Block> blocks, ColumnSetting setting, Millimetres gap);

}  // namespace loomfolio
