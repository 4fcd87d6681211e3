// SPDX-License-Identifier: MIT
// Which blocks share a page, where their order is free: as few pages as they need, blocks near their order.
#pragma once

#include <vector>

#include "sheets/draw.h"

namespace loomfolio {

struct PackingRoom {
  Millimetres first, others;  ///< what the first page and any other has room for
  Millimetres gap;            ///< between blocks of a page
};

/// Indices by page; the first page may stay empty. A block higher than a page has one alone. Pages after the first
/// stand in the order of their first blocks, and blocks of a page in theirs; one that is half empty stands last.
std::vector<std::vector<std::size_t>> pack_pages(const std::vector<Millimetres>& heights, const PackingRoom& room);

/// Blocks for one of two columns: which stand at the left and which at the right of one row.
struct ColumnPair {
  std::vector<std::size_t> left, right;
  Millimetres height;
};

/// The highest stands alone in its column; the other is filled beside it. A pair without a right column is one block
/// that found no other.
std::vector<ColumnPair> pair_columns(const std::vector<Millimetres>& heights, Millimetres gap);

}  // namespace loomfolio
