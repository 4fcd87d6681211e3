// SPDX-License-Identifier: MIT
// Pass: rows. The wished rank or the role says how far below the supply a body belongs; each column is then cut into rows of about
// equal width in that order, so that down means away from the supply and the sheet fills evenly.
#include <algorithm>
#include <tuple>

#include "layout/place.h"

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
  const double wish = static_cast<double>(plan.graph->wished_width) / std::max<Grid>(1, plan.graph->wished_height);
  for (int rows = 1; rows <= 24; ++rows) {
    const auto [width, height] = shape(plan, rows);
    const double ratio = static_cast<double>(width) / static_cast<double>(std::max<long>(1, height));
    const double misfit = ratio > wish ? ratio / wish : wish / ratio;
    if (misfit < best_misfit) best_misfit = misfit, best = rows;
  }
  return best;
}

/// Cuts a column, in order of rank, into rows of about equal width.
void fill_column(Plan& plan, int column, int rows) {
  std::vector<std::tuple<int, std::string, int>> order;
  long total = 0;
  for (int b = 0; b < static_cast<int>(plan.bodies.size()); ++b) {
    const Body& body = plan.bodies[b];
    if (body.column != column) continue;
    order.push_back({rank_of(plan, body), plan.graph->boxes[body.members[0].box].name, b});
    total += body.width + usual_alley;
  }
  std::sort(order.begin(), order.end());
  long before = 0;
  for (const auto& [rank, name, b] : order) {
    const long width = plan.bodies[b].width + usual_alley;
    const int row = static_cast<int>(std::min<long>(rows - 1, (before + width / 2) * rows / std::max<long>(1, total)));
    before += width;
    plan.bodies[b].row = row;
    plan.rows[row][column].push_back(b);
  }
}

}  // namespace

void rank_bodies(Plan& plan) {
  const int rows = choose_row_count(plan);
  plan.rows.assign(static_cast<std::size_t>(rows), std::vector<std::vector<int>>(static_cast<std::size_t>(plan.columns)));
  for (int c = 0; c < plan.columns; ++c) fill_column(plan, c, rows);
}

}  // namespace loomfolio::laying
