// SPDX-License-Identifier: MIT
#include "sheets/packed_blocks.h"

#include <utility>

#include "sheets/columns.h"
#include "sheets/page_packing.h"

namespace loomfolio {
namespace {

std::vector<FreeHeights> heights_of(const std::vector<FreeBlock>& blocks) {
  std::vector<FreeHeights> heights;
  for (const FreeBlock& block : blocks) {
    heights.push_back({block.whole.height});
    if (block.half.height.number() > 0) heights.back().half = block.half.height;
  }
  return heights;
}

/// Both columns as one block, the first at the side from which the language reads.
Block columns_block(const PageFlow& flow, const PackedPage& page, std::vector<FreeBlock>& blocks, Millimetres gap) {
  Block both{flow.width(), {}, {}};
  const bool is_right_to_left = flow.setting().is_right_to_left;
  for (std::size_t side = 0; side < 2; ++side) {
    const Millimetres x = (side == 0) == is_right_to_left ? flow.width() - column_width(flow, 2) : Millimetres(0);
    Millimetres y;
    for (const std::size_t i : page.columns[side]) {
      if (y.number() > 0) y += gap;
      const Millimetres height = blocks[i].half.height;
      place_block(both.items, std::move(blocks[i].half), {x, y});
      y += height;
    }
    both.height = std::max(both.height, y);
  }
  return both;
}

}  // namespace

void add_packed(PageFlow& flow, std::vector<FreeBlock> blocks, Millimetres gap) {
  const auto pack = [&] {
    return pack_pages(heights_of(blocks), {flow.room() - (flow.is_at_top() ? Millimetres(0) : gap), flow.full_room(), gap});
  };
  std::vector<PackedPage> pages = pack();
  // A run that leaves the rest of another's page begins anew, with its title, on one of its own.
  if (pages.front().whole.empty() && pages.front().columns[0].empty() && flow.may_turn()) {
    flow.new_page();
    pages = pack();
  }
  for (const PackedPage& page : pages) {
    if (&page != &pages.front() && flow.may_turn()) flow.new_page();
    for (const std::size_t i : page.whole) flow.add(std::move(blocks[i].whole), gap);
    if (!page.columns[0].empty()) flow.add(columns_block(flow, page, blocks, gap), gap);
  }
}

}  // namespace loomfolio
