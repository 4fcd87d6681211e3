// SPDX-License-Identifier: MIT
// Pass: order. From the first filling, single bodies move to other places of their column, pairs change places and bodies turn over
// where they may, taking only what makes the estimate fall, until a round finds nothing.
#include <algorithm>

#include "layout/place.h"
#include "layout/wishes.h"

namespace loomfolio::laying {
namespace {

constexpr Grid guessed_alley = 2000, guessed_channel = 3500;

class Arranging {
 public:
  explicit Arranging(Plan& plan) : plan_(plan), estimate_(plan), cost_(estimate_.cost(plan)) {}
  bool run_round();

 private:
  bool keep_if_better(long before) {
    const long now = estimate_.cost(plan_, before);
    if (now >= before) return false;
    cost_ = now;
    return true;
  }
  Spot spot_of(int body) const;
  std::vector<int>& row_of(int row, int column) { return plan_.rows[row][column]; }
  void put(int body, Spot spot);
  void take(int body);
  bool try_moves(int body);
  bool try_swaps(int body);
  bool try_mirror(int body);

  Plan& plan_;
  PlacementEstimate estimate_;
  long cost_;
};

Spot Arranging::spot_of(int body) const {
  const auto& bodies = plan_.rows[plan_.bodies[body].row][plan_.bodies[body].column];
  return {plan_.bodies[body].row, static_cast<int>(std::find(bodies.begin(), bodies.end(), body) - bodies.begin())};
}

void Arranging::take(int body) {
  auto& bodies = row_of(plan_.bodies[body].row, plan_.bodies[body].column);
  bodies.erase(std::find(bodies.begin(), bodies.end(), body));
}

void Arranging::put(int body, Spot spot) {
  auto& bodies = row_of(spot.row, plan_.bodies[body].column);
  bodies.insert(bodies.begin() + spot.place, body);
  plan_.bodies[body].row = spot.row;
}

bool Arranging::try_moves(int body) {
  const Spot home = spot_of(body);
  const int column = plan_.bodies[body].column, zone = plan_.bodies[body].zone_column;
  take(body);
  Spot best = home;
  long best_cost = cost_;
  for (int r = 0; r < static_cast<int>(plan_.rows.size()); ++r) {
    if (plan_.flow == Flow::across && plan_.zone_of_row[r] != zone) continue;
    for (int i = 0; i <= static_cast<int>(row_of(r, column).size()); ++i) {
      if (!may_stand(plan_, body, r, i)) continue;
      put(body, {r, i});
      const long now = estimate_.cost(plan_, best_cost);
      if (now < best_cost) best_cost = now, best = {r, i};
      take(body);
    }
  }
  put(body, best);
  const bool helped = best_cost < cost_;
  cost_ = best_cost;
  return helped;
}

bool Arranging::try_swaps(int body) {
  bool helped = false;
  const int column = plan_.bodies[body].column;
  for (int other = body + 1; other < static_cast<int>(plan_.bodies.size()); ++other) {
    if (plan_.bodies[other].zone_column != plan_.bodies[body].zone_column) continue;
    if (!may_swap(plan_, body, other)) continue;
    const Spot a = spot_of(body), b = spot_of(other);
    const auto swap = [&](int first, int second) {
      std::swap(row_of(a.row, column)[a.place], row_of(b.row, column)[b.place]);
      plan_.bodies[first].row = b.row;
      plan_.bodies[second].row = a.row;
    };
    swap(body, other);
    if (keep_if_better(cost_)) helped = true;
    else std::swap(row_of(a.row, column)[a.place], row_of(b.row, column)[b.place]), plan_.bodies[body].row = a.row,
         plan_.bodies[other].row = b.row;
  }
  return helped;
}

bool Arranging::try_mirror(int body) {
  if (!plan_.bodies[body].may_mirror) return false;
  plan_.bodies[body].is_mirrored = !plan_.bodies[body].is_mirrored;
  if (keep_if_better(cost_)) return true;
  plan_.bodies[body].is_mirrored = !plan_.bodies[body].is_mirrored;
  return false;
}

bool Arranging::run_round() {
  bool helped = false;
  for (int b = 0; b < static_cast<int>(plan_.bodies.size()); ++b) {
    helped |= try_moves(b);
    helped |= try_swaps(b);
    helped |= try_mirror(b);
  }
  return helped;
}

}  // namespace

PlacementEstimate::PlacementEstimate(const Plan& plan) {
  for (std::size_t w = 0; w < plan.graph->wires.size(); ++w)
    ties_.push_back({from_pin(static_cast<int>(w)), to_pin(static_cast<int>(w))});
  x_.resize(plan.bodies.size());
  y_.resize(plan.bodies.size());
}

void PlacementEstimate::place(const Plan& plan) {
  Grid left = 0;
  for (int c = 0; c < plan.columns; ++c) {
    Grid widest = 0;
    for (const auto& row : plan.rows) {
      Grid x = 0;
      for (int b : row[c]) x += plan.bodies[b].width + guessed_alley;
      widest = std::max(widest, x);
    }
    for (const auto& row : plan.rows) {
      Grid used = 0;
      for (int b : row[c]) used += plan.bodies[b].width + guessed_alley;
      const Grid extra = (widest - used) / static_cast<Grid>(row[c].size() + 1);
      Grid x = left + extra + guessed_alley / 2;
      for (int b : row[c]) x_[b] = x, x += plan.bodies[b].width + guessed_alley + extra;
    }
    left += widest + (widest > 0 ? guessed_alley / 2 : 0);
  }
  Grid y = 0;
  for (const auto& row : plan.rows) {
    Grid height = 0;
    for (const auto& column : row)
      for (int b : column) y_[b] = y, height = std::max(height, plan.bodies[b].height);
    y += height + guessed_channel;
  }
}

long PlacementEstimate::cost_of(const Plan& plan, const Tie& tie) const {
  const Body& a = plan.bodies[plan.pins[tie.pin_a].body];
  const Body& b = plan.bodies[plan.pins[tie.pin_b].body];
  const Side sa = side_of(plan, tie.pin_a), sb = side_of(plan, tie.pin_b);
  const GridPoint oa = offset_of(plan, tie.pin_a), ob = offset_of(plan, tie.pin_b);
  const bool a_is_free = a.is_joint, b_is_free = b.is_joint;
  const auto out = [](Side s) { return s == Side::right ? guessed_alley / 3 : s == Side::left ? -guessed_alley / 3 : 0; };
  const Grid xa = x_[plan.pins[tie.pin_a].body] + oa.x + out(sa), xb = x_[plan.pins[tie.pin_b].body] + ob.x + out(sb);
  const Grid ya = y_[plan.pins[tie.pin_a].body] + oa.y, yb = y_[plan.pins[tie.pin_b].body] + ob.y;
  const Grid dx = std::abs(xa - xb);
  int bends = (is_upright(sa) || a_is_free ? 0 : 1) + (is_upright(sb) || b_is_free ? 0 : 1);
  if (dx > guessed_alley / 4) bends += 2;
  Grid detour = 0;
  const auto wrong_way = [&](Side s, int row, int other) {
    return (s == Side::top && other > row) || (s == Side::bottom && other < row);
  };
  if (!a_is_free && wrong_way(sa, a.row, b.row)) bends += 2, detour += guessed_channel + a.height;
  if (!b_is_free && wrong_way(sb, b.row, a.row)) bends += 2, detour += guessed_channel + b.height;
  if (!a_is_free && !b_is_free && a.row == b.row && is_upright(sa) && is_upright(sb) && sa != sb) bends += 2, detour += guessed_channel + a.height;
  return static_cast<long>(dx) + std::abs(ya - yb) + 2 * detour + static_cast<long>(bends) * plan.weights.bend;
}

long PlacementEstimate::cost(const Plan& plan, long bound) {
  place(plan);
  long sum = 0;
  for (auto tie = ties_.begin(); tie != ties_.end() && sum < bound; ++tie) sum += cost_of(plan, *tie);
  return sum;
}

void arrange(Plan& plan) {
  Arranging arranging(plan);
  for (int round = 0; round < 6 && arranging.run_round(); ++round) {}
}

}  // namespace loomfolio::laying
