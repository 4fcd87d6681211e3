// SPDX-License-Identifier: MIT
// Looks for the best order of blocks in their rows: take one out, put it in elsewhere in its row, or mirror it; keep
// what costs less; stop when no single change helps. Parts are small, so every change is judged by laying the whole out
// anew.
#include <algorithm>

#include "layout/inside_grid.h"
#include "layout/inside_turn.h"

namespace loomfolio::inside {
namespace {

constexpr int most_search_rounds = 5;

long judge(const Flow& flow, FlowGrid& grid) {
  settle_across(flow, grid);
  return cost_of(flow, grid, route_channels(flow, grid));
}

void mirror_item(const Flow& flow, GridItem& item) {
  item.is_mirrored = !item.is_mirrored;
  const Block& block = flow.blocks[static_cast<std::size_t>(item.index)];
  const Block turned = item.is_mirrored ? mirrored_block(block) : block;
  item.low = turned.low;
  item.high = turned.high;
}

bool try_moves(const Flow& flow, FlowGrid& grid, std::size_t row, long& best) {
  bool is_better = false;
  const std::size_t count = grid.rows[row].size();
  for (std::size_t from = 0; from < count; ++from)
    for (std::size_t to = 0; to < count; ++to) {
      if (from == to) continue;
      FlowGrid tried = grid;
      auto& items = tried.rows[row];
      const GridItem moved = items[from];
      items.erase(items.begin() + static_cast<std::ptrdiff_t>(from));
      items.insert(items.begin() + static_cast<std::ptrdiff_t>(to), moved);
      const long cost = judge(flow, tried);
      if (cost >= best) continue;
      best = cost;
      grid = std::move(tried);
      is_better = true;
    }
  return is_better;
}

bool try_mirrors(const Flow& flow, FlowGrid& grid, std::size_t row, long& best) {
  bool is_better = false;
  for (std::size_t i = 0; i < grid.rows[row].size(); ++i) {
    const GridItem& item = grid.rows[row][i];
    if (item.type != ItemType::block || item.pins.size() < 2) continue;
    const Block& block = flow.blocks[static_cast<std::size_t>(item.index)];
    if (!block.is_bridge && item.pins.size() < 3) continue;
    if (!block.tables.empty()) continue;
    FlowGrid tried = grid;
    mirror_item(flow, tried.rows[row][i]);
    const long cost = judge(flow, tried);
    if (cost >= best) continue;
    best = cost;
    grid = std::move(tried);
    is_better = true;
  }
  return is_better;
}

}  // namespace

void search_orders(const Flow& flow, FlowGrid& grid) {
  long best = judge(flow, grid);
  for (int round = 0; round < most_search_rounds; ++round) {
    bool is_better = false;
    for (std::size_t row = 1; row + 1 < grid.rows.size(); ++row) {
      is_better = try_mirrors(flow, grid, row, best) || is_better;
      is_better = try_moves(flow, grid, row, best) || is_better;
    }
    if (!is_better) break;
  }
}

}  // namespace loomfolio::inside
