// SPDX-License-Identifier: MIT
#include "sheets/paired_rows.h"

#include <utility>

#include "sheets/columns.h"
#include "sheets/page_packing.h"

namespace loomfolio {
namespace {

std::vector<Millimetres> heights_of(const std::vector<Block>& blocks) {
  std::vector<Millimetres> heights;
  for (const Block& block : blocks) heights.push_back(block.height);
  return heights;
}

}  // namespace

std::vector<PairedRow> pair_side_by_side(const PageFlow& flow, std::vector<Block> blocks, Millimetres gap) {
  std::vector<PairedRow> rows;
  const bool is_right_to_left = flow.setting().is_right_to_left;
  for (const ColumnPair& pair : pair_columns(heights_of(blocks), gap)) {
    if (pair.right.empty()) continue;
    PairedRow row{{flow.width(), pair.height, {}}, {}};
    for (const bool is_first : {true, false}) {
      const Millimetres x = is_first == is_right_to_left ? flow.width() - column_width(flow, 2) : Millimetres(0);
      Millimetres y;
      for (const std::size_t i : is_first ? pair.left : pair.right) {
        const Millimetres height = blocks[i].height;
        place_block(row.block.items, std::move(blocks[i]), {x, y});
        y += height + gap;
        row.blocks.push_back(i);
      }
    }
    rows.push_back(std::move(row));
  }
  return rows;
}

void add_packed(PageFlow& flow, std::vector<Block> blocks, Millimetres gap) {
  const auto pages = pack_pages(heights_of(blocks), {flow.room() - gap, flow.full_room(), gap});
  for (const std::vector<std::size_t>& page : pages) {
    if (&page != &pages.front() && flow.may_turn()) flow.new_page();
    for (const std::size_t i : page) flow.add(std::move(blocks[i]), gap);
  }
}

}  // namespace loomfolio
