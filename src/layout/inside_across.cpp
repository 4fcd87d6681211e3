// SPDX-License-Identifier: MIT
// Places across the flow. Each item wishes to stand where its leads run straight; items of a row keep their order and
// their room. Rows are settled one after the other, back and forth: neighbours whose wishes collide move as one block
// to the mean of their wishes (isotonic regression). Then single items, and all items from one on, try small steps for
// as long as the leads get straighter.
#include <algorithm>
#include <cmath>

#include "layout/inside_grid.h"

namespace loomfolio::inside {
namespace {

constexpr Grid item_gap = 130;
constexpr int sweeps = 6, most_across_rounds = 12, furthest_step = 8;
constexpr long bend_charge = 600, spread_charge = 1;

Grid apart(const GridItem& left, const GridItem& right) { return up_to_module(left.high + right.low + item_gap); }

Grid pin_x(const GridItem& item, const BlockPin& pin) { return item.x + (item.is_mirrored ? -pin.x : pin.x); }

std::size_t channel_of(std::size_t row, Edge edge) { return edge == Edge::end ? row : row - 1; }

struct Wish {
  double x = 0;
  double weight = 0;
};

/// Where the item would stand to have its leads straight.
Wish wish_of(const FlowGrid& grid, std::size_t row, const GridItem& item) {
  Wish wish;
  for (const BlockPin& pin : item.pins) {
    const std::size_t channel = channel_of(row, pin.edge);
    double sum = 0;
    int count = 0;
    for (std::size_t other_row : {channel, channel + 1})
      for (const GridItem& other : grid.rows[other_row]) {
        if (&other == &item) continue;
        for (const BlockPin& other_pin : other.pins) {
          if (other_pin.node != pin.node || channel_of(other_row, other_pin.edge) != channel) continue;
          sum += pin_x(other, other_pin);
          ++count;
        }
      }
    if (count == 0) continue;
    const double weight = count == 1 ? 4 : 1;
    wish.x += weight * (sum / count - (item.is_mirrored ? -pin.x : pin.x));
    wish.weight += weight;
  }
  if (wish.weight > 0)
    wish.x /= wish.weight;
  else
    wish.x = item.x;
  return wish;
}

/// Isotonic regression by pooling neighbours that would change places.
void settle_row(const FlowGrid& grid, std::size_t row, std::vector<GridItem>& items) {
  struct Pool {
    double sum = 0, weight = 0;
    std::size_t count = 0;
  };
  std::vector<Pool> pools;
  std::vector<Grid> offset(items.size(), 0);
  for (std::size_t i = 0; i < items.size(); ++i) {
    if (i > 0) offset[i] = offset[i - 1] + apart(items[i - 1], items[i]);
    const Wish wish = wish_of(grid, row, items[i]);
    const double weight = std::max(wish.weight, 0.01);
    pools.push_back({(wish.x - offset[i]) * weight, weight, 1});
    while (pools.size() > 1) {
      Pool& last = pools[pools.size() - 1];
      Pool& before = pools[pools.size() - 2];
      if (before.sum / before.weight <= last.sum / last.weight) break;
      before = {before.sum + last.sum, before.weight + last.weight, before.count + last.count};
      pools.pop_back();
    }
  }
  std::size_t i = 0;
  for (const Pool& pool : pools) {
    const auto base = static_cast<Grid>(std::lround(pool.sum / pool.weight / module)) * module;
    for (std::size_t n = 0; n < pool.count; ++n, ++i) items[i].x = base + offset[i];
  }
}

/// Length and bends of all channels, and how wide the whole is.
long straightness(const Flow& flow, const FlowGrid& grid) {
  long cost = 0;
  Grid least = 0, most = 0;
  for (const auto& row : grid.rows)
    for (const GridItem& item : row) {
      least = std::min(least, item.x - item.low);
      most = std::max(most, item.x + item.high);
    }
  for (std::size_t channel = 0; channel + 1 < grid.rows.size(); ++channel)
    for (int node = 0; node < flow.nodes; ++node) {
      Grid low = 0, high = 0;
      int count = 0;
      for (std::size_t row : {channel, channel + 1})
        for (const GridItem& item : grid.rows[row])
          for (const BlockPin& pin : item.pins) {
            if (pin.node != node || channel_of(row, pin.edge) != channel) continue;
            const Grid x = pin_x(item, pin);
            low = count == 0 ? x : std::min(low, x);
            high = count == 0 ? x : std::max(high, x);
            ++count;
          }
      if (count >= 2 && high > low) cost += high - low + bend_charge;
    }
  return cost + spread_charge * (most - least);
}

enum class Extent : std::uint8_t { one, rest_of_row };

bool may_step(const std::vector<GridItem>& row, std::size_t i, Grid step, Extent extent) {
  if (step < 0) return i == 0 || row[i].x + step - row[i - 1].x >= apart(row[i - 1], row[i]);
  if (extent == Extent::rest_of_row) return true;
  return i + 1 == row.size() || row[i + 1].x - row[i].x - step >= apart(row[i], row[i + 1]);
}

void step_by(std::vector<GridItem>& row, std::size_t i, Grid step, Extent extent) {
  const std::size_t last = extent == Extent::one ? i + 1 : row.size();
  for (std::size_t n = i; n < last; ++n) row[n].x += step;
}

bool straighten_once(const Flow& flow, FlowGrid& grid, long& best) {
  bool is_better = false;
  for (auto& row : grid.rows)
    for (std::size_t i = 0; i < row.size(); ++i)
      for (Extent extent : {Extent::one, Extent::rest_of_row})
        for (Grid n = -furthest_step; n <= furthest_step; ++n) {
          const Grid step = n * module;
          if (n == 0 || !may_step(row, i, step, extent)) continue;
          step_by(row, i, step, extent);
          const long cost = straightness(flow, grid);
          if (cost < best) {
            best = cost;
            is_better = true;
          } else {
            step_by(row, i, -step, extent);
          }
        }
  return is_better;
}

}  // namespace

void settle_across(const Flow&, FlowGrid& grid) {
  for (auto& row : grid.rows) {
    Grid x = 0;
    for (std::size_t i = 0; i < row.size(); ++i) {
      if (i > 0) x += apart(row[i - 1], row[i]);
      row[i].x = x;
    }
    const Grid middle = x / 2 / module * module;
    for (GridItem& item : row) item.x -= middle;
  }
  for (int sweep = 0; sweep < sweeps; ++sweep)
    for (std::size_t n = 0; n < grid.rows.size(); ++n) {
      const std::size_t row = sweep % 2 == 0 ? n : grid.rows.size() - 1 - n;
      settle_row(grid, row, grid.rows[row]);
    }
}

void place_across(const Flow& flow, FlowGrid& grid) {
  settle_across(flow, grid);
  long best = straightness(flow, grid);
  for (int round = 0; round < most_across_rounds; ++round)
    if (!straighten_once(flow, grid, best)) break;
}

}  // namespace loomfolio::inside
