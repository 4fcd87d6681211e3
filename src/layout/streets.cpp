// SPDX-License-Identifier: MIT
#include "layout/streets.h"

#include <algorithm>
#include <tuple>

namespace loomfolio::laying {
namespace {

/// Room for the runs that the pins of both sides will want, before anything is routed.
Grid alley_estimate(const Plan& plan, const std::vector<int>& side_pins, RowItem left, RowItem right) {
  int pins = 0;
  if (!is_border(left)) pins += side_pins[2 * left + 1];
  if (!is_border(right)) pins += side_pins[2 * right];
  return std::max(plan.spacing.part_gap, 2 * plan.spacing.clear + plan.spacing.pitch * (pins + 1));
}

/// Pins on the left and right side of each body.
std::vector<int> count_side_pins(const Plan& plan) {
  std::vector<int> count(2 * plan.bodies.size(), 0);
  for (int p = 0; p < static_cast<int>(plan.pins.size()); ++p) {
    const Side side = side_of(plan, p);
    if (!is_upright(side)) ++count[2 * plan.pins[p].body + (side == Side::right)];
  }
  return count;
}

void estimate_columns(const Plan& plan, Streets& s) {
  const std::vector<int> side_pins = count_side_pins(plan);
  s.body_x.assign(plan.bodies.size(), 0);
  Grid left = 0;
  for (int c = 0; c < plan.columns; ++c) {
    Grid widest = 0;
    std::vector<Grid> widths;
    for (const auto& row : plan.rows) {
      Grid x = 0;
      RowItem before = -1;
      for (int b : row[c]) {
        x += alley_estimate(plan, side_pins, before, b) + plan.bodies[b].width;
        before = b;
      }
      if (!row[c].empty()) x += alley_estimate(plan, side_pins, before, -1);
      widths.push_back(x);
      widest = std::max(widest, x);
    }
    for (std::size_t r = 0; r < plan.rows.size(); ++r) {
      const auto& bodies = plan.rows[r][c];
      const Grid extra = (widest - widths[r]) / (static_cast<Grid>(bodies.size()) + 1);
      Grid x = left;
      RowItem before = -1;
      for (int b : bodies) {
        x += alley_estimate(plan, side_pins, before, b) + extra;
        s.body_x[b] = x;
        x += plan.bodies[b].width;
        before = b;
      }
    }
    left += widest + (widest > 0 ? plan.spacing.band_gap : 0);
  }
}

void estimate_rows(const Plan& plan, Streets& s) {
  Grid y = 0;
  const Grid channel = 4 * plan.spacing.row_gap;
  for (const auto& row : plan.rows) {
    Grid height = 0;
    for (const auto& column : row)
      for (int b : column) height = std::max(height, plan.bodies[b].height + plan.bodies[b].drop);
    y += channel;
    s.row_y.push_back(y);
    s.row_height.push_back(height);
    y += height;
  }
}

/// Borders between columns, at the middle of what stands beside them.
std::vector<Grid> estimate_borders(const Plan& plan, const Streets& s) {
  std::vector<Grid> border(static_cast<std::size_t>(plan.columns), 0);
  Grid right = 0;
  for (int c = 0; c < plan.columns; ++c) {
    for (const auto& row : plan.rows)
      for (int b : row[c]) right = std::max(right, s.body_x[b] + plan.bodies[b].width + plan.spacing.part_gap);
    border[c] = right;
  }
  return border;
}

bool has_bodies(const Plan& plan, int column) {
  for (const auto& row : plan.rows)
    if (!row[column].empty()) return true;
  return false;
}

void add_alleys(const Plan& plan, Streets& s, const std::vector<Grid>& border) {
  const bool left_is_used = has_bodies(plan, 0), right_is_used = has_bodies(plan, plan.columns - 1);
  for (int r = 0; r < static_cast<int>(plan.rows.size()); ++r) {
    std::vector<RowItem> items;
    for (int c = 0; c < plan.columns; ++c) {
      items.insert(items.end(), plan.rows[r][c].begin(), plan.rows[r][c].end());
      if (c + 1 < plan.columns) items.push_back(-1 - c);
    }
    s.first_alley.push_back(static_cast<int>(s.alleys.size()));
    Grid left = 0;
    for (int i = 0; i <= static_cast<int>(items.size()); ++i) {
      Alley a{r, i};
      a.left = left;
      if (i > 0 && !is_border(items[i - 1])) a.left_body = items[i - 1];
      const bool is_last = i == static_cast<int>(items.size());
      if (is_last) a.right = border.back();
      else if (is_border(items[i])) a.right = border[-1 - items[i]];
      else a.right = s.body_x[items[i]], a.right_body = items[i];
      a.right = std::max(a.right, a.left);
      if (i == 0) a.is_usable = left_is_used && is_border(items[0]);
      if (is_last) a.is_usable = right_is_used && is_border(items.back());
      if (!is_last) left = is_border(items[i]) ? a.right : a.right + plan.bodies[items[i]].width;
      s.alleys.push_back(a);
    }
    s.items.push_back(std::move(items));
  }
}

void add_stops(const Plan& plan, Streets& s) {
  for (int a = 0; a < static_cast<int>(s.alleys.size()); ++a) {
    const Alley& alley = s.alleys[a];
    if (!alley.is_usable) continue;
    const Grid x = alley.left + (alley.right - alley.left) / 2;
    s.stops.push_back({alley.row, x, a, -1, true});
    s.stops.push_back({alley.row + 1, x, a, -1, false});
  }
  for (int p = 0; p < static_cast<int>(plan.pins.size()); ++p) {
    const Side side = side_of(plan, p);
    const int row = plan.bodies[plan.pins[p].body].row;
    const Grid x = s.body_x[plan.pins[p].body] + offset_of(plan, p).x;
    if (side == Side::top) s.stops.push_back({row, x, -1, p, true});
    if (side == Side::bottom) s.stops.push_back({row + 1, x, -1, p, false});
  }
  std::sort(s.stops.begin(), s.stops.end(), [](const Stop& a, const Stop& b) {
    return std::tie(a.channel, a.x, a.is_below, a.alley, a.pin) < std::tie(b.channel, b.x, b.is_below, b.alley, b.pin);
  });
  s.first_stop.assign(plan.rows.size() + 2, 0);
  s.stop_of_pin.assign(plan.pins.size(), -1);
  for (int i = 0; i < static_cast<int>(s.stops.size()); ++i) {
    const Stop& stop = s.stops[i];
    s.first_stop[stop.channel + 1] = i + 1;
    if (stop.pin >= 0) s.stop_of_pin[stop.pin] = i;
    else (stop.is_below ? s.alleys[stop.alley].stop_above : s.alleys[stop.alley].stop_below) = i;
  }
  for (std::size_t c = 1; c < s.first_stop.size(); ++c) s.first_stop[c] = std::max(s.first_stop[c], s.first_stop[c - 1]);
}

}  // namespace

Streets make_streets(const Plan& plan) {
  Streets s;
  estimate_columns(plan, s);
  estimate_rows(plan, s);
  add_alleys(plan, s, estimate_borders(plan, s));
  add_stops(plan, s);
  return s;
}

int alley_of(const Plan& plan, const Streets& streets, int pin) {
  const int body = plan.pins[pin].body, row = plan.bodies[body].row;
  const auto& items = streets.items[row];
  const int place = static_cast<int>(std::find(items.begin(), items.end(), body) - items.begin());
  return streets.first_alley[row] + place + (side_of(plan, pin) == Side::right ? 1 : 0);
}

}  // namespace loomfolio::laying
