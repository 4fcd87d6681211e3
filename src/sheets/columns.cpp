// SPDX-License-Identifier: MIT
// A page's columns are filled at the least height at which its blocks fit: the height is found by bisection over whole
// hundredths of a millimetre, and what does not fit at the page's full height goes to the next page.
#include "sheets/columns.h"

#include <algorithm>
#include <utility>

namespace loomfolio {
namespace {

/// How many of the blocks from `first` on fit into columns of that height.
std::size_t count_fitting(const std::vector<Block>& blocks, std::size_t first, Millimetres height,
                          const ColumnSetting& setting) {
  std::size_t at = first;
  for (int column = 0; column < setting.count; ++column) {
    Millimetres used;
    while (at < blocks.size()) {
      const Millimetres needed = used + (used.number() > 0 ? setting.gap : Millimetres(0)) + blocks[at].height;
      if (needed > height && used.number() > 0) break;
      used = needed;
      ++at;
      if (used > height) break;
    }
  }
  return at - first;
}

Millimetres least_height(const std::vector<Block>& blocks, std::size_t first, std::size_t count, Millimetres most,
                         const ColumnSetting& setting) {
  Grid low = 0, high = to_grid(most);
  while (low < high) {
    const Grid middle = low + (high - low) / 2;
    bool is_enough = count_fitting(blocks, first, to_mm(middle), setting) >= count;
    for (std::size_t i = first; i < first + count; ++i) is_enough = is_enough && blocks[i].height <= to_mm(middle);
    if (is_enough)
      high = middle;
    else
      low = middle + 1;
  }
  return to_mm(high);
}

Block set_columns(std::vector<Block>& blocks, std::size_t first, std::size_t count, Millimetres height,
                  Millimetres width, const ColumnSetting& setting) {
  Block all;
  std::size_t at = first;
  const std::size_t end = first + count;
  for (int column = 0; column < setting.count; ++column) {
    Millimetres used;
    while (at < end) {
      const Millimetres top = used + (used.number() > 0 ? setting.gap : Millimetres(0));
      if (top + blocks[at].height > height && used.number() > 0) break;
      used = top + blocks[at].height;
      const int place = setting.is_right_to_left ? setting.count - 1 - column : column;
      place_block(all.items, std::move(blocks[at]), {(width + look::gutter) * place, top});
      ++at;
    }
    all.height = std::max(all.height, used);
  }
  return all;
}

}  // namespace

Millimetres column_width(const PageFlow& flow, int count) {
  return (flow.width() - look::gutter * (count - 1)) / count;
}

bool fit_in_columns(const std::vector<Block>& blocks, Millimetres height, const ColumnSetting& setting) {
  return count_fitting(blocks, 0, height, setting) == blocks.size();
}

void add_columns(PageFlow& flow, std::vector<Block> blocks, ColumnSetting setting, Millimetres gap) {
  setting.is_right_to_left = flow.setting().is_right_to_left;
  const Millimetres width = column_width(flow, setting.count);
  for (std::size_t first = 0; first < blocks.size();) {
    const Millimetres gap_now = flow.is_at_top() ? Millimetres(0) : gap;
    Millimetres room = flow.room() - gap_now;
    if (blocks[first].height > room && flow.may_turn()) {
      flow.new_page();
      continue;
    }
    const std::size_t count = std::max<std::size_t>(1, count_fitting(blocks, first, room, setting));
    room = std::max(room, blocks[first].height);
    const Millimetres height = least_height(blocks, first, count, room, setting);
    flow.add(set_columns(blocks, first, count, height, width, setting), gap_now);
    first += count;
    if (first < blocks.size()) flow.new_page();
  }
}

}  // namespace loomfolio
