// SPDX-License-Identifier: MIT
// Which blocks share a page, where their order is free: as few pages as they need, blocks near their order.
#pragma once

#include <array>
#include <optional>
#include <vector>

#include "sheets/draw.h"

namespace loomfolio {

struct PackingRoom {
  Millimetres first, others;  ///< what the first page and any other has room for
  Millimetres gap;            ///< between blocks of a page, and of a column
};

/// How high a block is as wide as the page, and in one of two columns; without `half` it needs the page's width.
struct FreeHeights {
  Millimetres whole;
  std::optional<Millimetres> half = std::nullopt;
};

/// Blocks as wide as the page, and below them two columns, the left one never the empty one.
struct PackedPage {
  std::vector<std::size_t> whole;
  std::array<std::vector<std::size_t>, 2> columns;
};

/// The first page may stay empty. A block higher than a page has one alone. Pages after the first stand in the order of
/// their first blocks, and blocks of a page in theirs; one that is half empty stands last. Columns are as even as they
/// can be; what would stand in one beside nothing takes the whole width where the page has room for that.
std::vector<PackedPage> pack_pages(const std::vector<FreeHeights>& heights, const PackingRoom& room);

}  // namespace loomfolio
