// SPDX-License-Identifier: MIT
// The reading order as a price: a diagram reads downwards from the supply to earth. The supply and its fuses want to
// stand on top, earths at the foot, and of two that a wire joins the one nearer to the supply higher. Splices,
// connectors and references stand where their wires want them. Where rows are upright, each is part of a zone, and
// height in it counts.
#include <algorithm>

#include "layout/place.h"
#include "layout/rough.h"
#include "layout/wishes.h"

namespace loomfolio::laying {
namespace {

// Two of a pair that stand so near to one above the other are drawn in line.
constexpr int most_rows_between = 2;
constexpr Grid most_off_line = 1500;

}  // namespace

/// For a wire between two bodies, one of them in that row.
long Rough::tie_charge(int body, int row, int other) const {
  if (other == body || depth_[body] < 0 || depth_[other] < 0 || depth_[body] == depth_[other]) return 0;
  const int below = depth_[body] < depth_[other] ? row - pose_[other].row : pose_[other].row - row;
  return plan_.weights.rank_turned * static_cast<long>(std::clamp(below, 0, 2));
}

/// How far the supply and its fuses hang below the top of the sheet, and earths stand above its foot, where rows are
/// upright.
long Rough::height_charge(int body, Grid y) const {
  const BoxRole role = plan_.graph->boxes[plan_.bodies[body].members[0].box].role;
  const long per_mm = plan_.weights.upward;
  if (role == BoxRole::supply) return per_mm * y / grid_per_mm;
  if (role == BoxRole::fuse) return per_mm * y / grid_per_mm / 2;
  if (role == BoxRole::earth) return per_mm * std::max(0, column_right_[0] - y) / grid_per_mm / 2;
  return 0;
}

/// For the body's own place and the wires that reach it.
long Rough::place_charge(int body, int row, Grid x) const {
  if (plan_.flow == Flow::across) return height_charge(body, x);
  if (depth_[body] < 0) return 0;
  const auto last = static_cast<int>(plan_.rows.size()) - 1;
  long sum = 0;
  const BoxRole role = plan_.graph->boxes[plan_.bodies[body].members[0].box].role;
  if (role == BoxRole::supply) sum += 2L * plan_.weights.rank_turned * row;
  if (role == BoxRole::fuse) sum += static_cast<long>(plan_.weights.rank_turned) * row;
  if (role == BoxRole::earth) sum += static_cast<long>(plan_.weights.rank_turned) * (last - row);
  for (const int w : wires_of_body_[body]) {
    const int a = plan_.pins[from_pin(w)].body, b = plan_.pins[to_pin(w)].body;
    sum += tie_charge(body, row, a == body ? b : a);
  }
  return sum;
}

GridBox Rough::box_at(int body, const Pose& pose) const {
  const Grid y = row_y_[pose.row];
  return {pose.x, y, pose.x + plan_.bodies[body].width, y + plan_.bodies[body].height};
}

/// For what the author keeps apart from it.
long Rough::apart_charge_at(int body, const Pose& pose) const {
  long sum = 0;
  for (const int other : plan_.graph->boxes[plan_.bodies[body].members[0].box].apart)
    sum += apart_charge(plan_, box_at(body, pose), box_at(other, pose_[other]));
  return sum;
}

/// The body that makes a pair with it and could stand in its row; -1: none.
int Rough::partner_of(int body) const {
  const int partner = plan_.graph->boxes[plan_.bodies[body].members[0].box].partner;
  if (partner < 0) return -1;
  const bool may_share = plan_.flow == Flow::down || plan_.bodies[partner].zone_column == plan_.bodies[body].zone_column;
  return may_share ? partner : -1;
}

/// For what a pair that stands there lacks: one row, side by side, mirrored; or one column, where the two look alike.
long Rough::pair_charge_at(int body, const Pose& pose) const {
  const int partner = partner_of(body);
  if (partner < 0) return 0;
  const Pose& other = pose_[partner];
  if (other.row != pose.row) {
    const bool is_stacked = plan_.bodies[partner].zone_column == plan_.bodies[body].zone_column &&
                            std::abs(other.row - pose.row) <= most_rows_between && std::abs(other.x - pose.x) <= most_off_line;
    return is_stacked ? plan_.weights.pair_stacked : plan_.weights.pair_parted;
  }
  const Grid low = std::min(pose.x, other.x), high = std::max(pose.x, other.x);
  const auto between = std::count_if(row_bodies_[pose.row].begin(), row_bodies_[pose.row].end(), [&](int b) {
    return b != body && b != partner && pose_[b].x > low && pose_[b].x < high;
  });
  const bool is_beside = plan_.flow == Flow::down && plan_.bodies[body].may_mirror &&
                         plan_.bodies[partner].column == plan_.bodies[body].column;
  const bool is_alike = (pose.is_mirrored == other.is_mirrored) != is_beside;
  return plan_.weights.pair_between * static_cast<long>(std::min<std::ptrdiff_t>(between, 2)) +
         (is_alike ? 0 : plan_.weights.pair_unlike);
}

/// Each wire, and each two that are kept apart or make a pair, once.
long Rough::total_place_charge() const {
  long sum = 0;
  for (std::size_t b = 0; b < pose_.size(); ++b) sum += place_charge(static_cast<int>(b), pose_[b].row, pose_[b].x);
  for (std::size_t b = 0; b < pose_.size(); ++b)
    sum += (apart_charge_at(static_cast<int>(b), pose_[b]) + pair_charge_at(static_cast<int>(b), pose_[b])) / 2;
  if (plan_.flow == Flow::across) return sum;
  for (std::size_t w = 0; w < course_.size(); ++w) {
    const int a = plan_.pins[from_pin(static_cast<int>(w))].body, b = plan_.pins[to_pin(static_cast<int>(w))].body;
    sum -= tie_charge(a, pose_[a].row, b);
  }
  return sum;
}

}  // namespace loomfolio::laying
