// SPDX-License-Identifier: MIT
// Pass: rows. The wished rank or the role says how far below the supply a body belongs; each column is then cut into rows of about
// equal width in that order, so that down means away from the supply and the sheet fills evenly.
#include <algorithm>
#include <tuple>

#include "layout/place.h"
#include "layout/wishes.h"

namespace loomfolio::laying {
namespace {

int rank_of_role(BoxRole role) {
  switch (role) {
    case BoxRole::supply: return 0;
    case BoxRole::fuse: return 10;
    case BoxRole::control: return 20;
    case BoxRole::switching: return 20;
    case BoxRole::relay: return 20;
    case BoxRole::connector: return 25;
    case BoxRole::splice: return 25;
    case BoxRole::reference: return 25;
    case BoxRole::load: return 30;
    case BoxRole::sensor: return 30;
    case BoxRole::earth: return 40;
  }
  return 30;
}

int rank_of(const Plan& plan, const Body& body) {
  if (body.wished_rank >= 0) return 10 * body.wished_rank;
  return rank_of_role(plan.graph->boxes[body.members[0].box].role);
}

constexpr Grid usual_alley = 2500, usual_channel = 4000;

/// Width and height of the sheet when it has so many rows.
std::pair<long, long> shape(const Plan& plan, int rows) {
  std::vector<long> width(static_cast<std::size_t>(plan.columns), 0);
  std::vector<long> widest(width.size(), 0);
  long height = 0;
  for (const Body& b : plan.bodies) {
    width[b.column] += b.width + usual_alley;
    widest[b.column] = std::max<long>(widest[b.column], b.width + usual_alley);
    height = std::max<long>(height, b.height);
  }
  long total = 0;
  for (std::size_t c = 0; c < width.size(); ++c) total += std::max(width[c] / rows, widest[c]);
  return {total, rows * (height * 2 / 3 + usual_channel)};
}

int choose_row_count(const Plan& plan) {
  int best = 1;
  double best_misfit = 1e300;
  double wish = static_cast<double>(plan.graph->wished_width) / std::max<Grid>(1, plan.graph->wished_height);
  if (plan.flow == Flow::across) wish = 1 / wish;
  for (int rows = 1; rows <= 40; ++rows) {
    const auto [width, height] = shape(plan, rows);
    const double ratio = static_cast<double>(width) / static_cast<double>(std::max<long>(1, height));
    const double misfit = ratio > wish ? ratio / wish : wish / ratio;
    if (misfit < best_misfit) best_misfit = misfit, best = rows;
  }
  return best;
}

/// Cuts bodies, in order of rank, into rows of about equal width.
void fill_rows(Plan& plan, const std::vector<int>& bodies, int first_row, int rows) {
  std::vector<std::tuple<int, std::string, int>> order;
  long total = 0;
  for (int b : bodies) {
    order.push_back({rank_of(plan, plan.bodies[b]), plan.graph->boxes[plan.bodies[b].members[0].box].name, b});
    total += plan.bodies[b].width + usual_alley;
  }
  std::sort(order.begin(), order.end());
  long before = 0;
  for (const auto& [rank, name, b] : order) {
    const long width = plan.bodies[b].width + usual_alley;
    const int row = first_row + static_cast<int>(std::min<long>(rows - 1, (before + width / 2) * rows / std::max<long>(1, total)));
    before += width;
    plan.bodies[b].row = row;
    plan.rows[row][plan.bodies[b].column].push_back(b);
  }
}

void rank_down(Plan& plan, const std::vector<std::vector<int>>& bodies) {
  const int rows = choose_row_count(plan);
  plan.rows.assign(static_cast<std::size_t>(rows), std::vector<std::vector<int>>(static_cast<std::size_t>(plan.columns)));
  for (const auto& column : bodies) fill_rows(plan, column, 0, rows);
}

/// Each zone gets rows of its own, in proportion to its bodies.
void rank_across(Plan& plan, const std::vector<std::vector<int>>& bodies) {
  const int wished = choose_row_count(plan);
  long total = 0;
  std::vector<long> width;
  for (const auto& column : bodies) {
    width.push_back(0);
    for (int b : column) width.back() += plan.bodies[b].width + usual_alley;
    total += width.back();
  }
  for (int c = 0; c < plan.zone_columns; ++c) {
    if (bodies[c].empty()) continue;
    const bool is_edge = c == 0 || c == plan.zone_columns - 1;
    const int rows = is_edge ? 1 : std::max(1, static_cast<int>((width[c] * wished + total / 2) / total));
    const int first = static_cast<int>(plan.rows.size());
    for (int r = 0; r < rows; ++r) plan.rows.push_back({{}}), plan.zone_of_row.push_back(c);
    fill_rows(plan, bodies[c], first, rows);
  }
}

}  // namespace

int depth_of(const Plan& plan, int body) { return rank_of(plan, plan.bodies[body]); }

void rank_bodies(Plan& plan) {
  std::vector<std::vector<int>> bodies(static_cast<std::size_t>(plan.zone_columns));
  for (int b = 0; b < static_cast<int>(plan.bodies.size()); ++b) bodies[plan.bodies[b].zone_column].push_back(b);
  if (plan.flow == Flow::down) rank_down(plan, bodies);
  else rank_across(plan, bodies);
  obey_pins(plan);
}

}  // namespace loomfolio::laying
