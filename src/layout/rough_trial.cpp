// SPDX-License-Identifier: MIT
// The idea. To try a body elsewhere, it is lifted once with its wires; each trial then only adds those wires at another
// place, counts, and takes them off again. What has no wire to the body stays as it is, also when the body is put down
// elsewhere for good: so the drawing grows a little untrue with each move, until it is made anew.
#include <algorithm>
#include <utility>

#include "layout/rough.h"

namespace loomfolio::laying {

/// Takes the wires of a body off that are still on.
void Rough::keep_wires(int body) {
  for (int w : wires_of_body_[body]) {
    if (is_kept_[w]) continue;
    remove(w);
    is_kept_[w] = 1;
    if (kept_.size() == kept_count_) kept_.emplace_back();
    kept_[kept_count_].wire = w;
    std::swap(kept_[kept_count_++].course, course_[w]);
  }
}

/// Puts kept wires from that one on back as they were; the total is the caller's.
void Rough::restore_wires(std::size_t from) {
  for (std::size_t i = from; i < kept_count_; ++i) {
    const int w = kept_[i].wire;
    std::swap(course_[w], kept_[i].course);
    is_kept_[w] = 0;
    for (const auto& [strip, run] : course_[w].runs) strips_[strip].add(w, run);
  }
  kept_count_ = from;
}

void Rough::leave(int body) { std::erase(row_bodies_[pose_[body].row], body); }

void Rough::stand(int body, const Pose& pose) {
  pose_[body] = pose;
  auto& bodies = row_bodies_[pose.row];
  const Grid middle = pose.x + plan_.bodies[body].width / 2;
  const auto at = std::upper_bound(bodies.begin(), bodies.end(), middle,
                                   [&](Grid m, int b) { return m < pose_[b].x + plan_.bodies[b].width / 2; });
  bodies.insert(at, body);
}

void Rough::lift(int body) {
  total_before_ = total_;
  lifted_ = body;
  lifted_wish_ = wish_of(body);
  keep_wires(body);
}

void Rough::put_back() {
  restore_wires(0);
  total_ = total_before_;
  lifted_ = -1;
}

/// What the kept wires cost where the bodies now stand, against before. Those not yet drawn count with the least they
/// can come to, so that most trials end before anything is drawn; and a wire is drawn only as far as what is left up to
/// `bound` allows.
long Rough::try_kept(long charge, long bound) {
  const long off = total_;
  total_ += charge;
  long to_come = 0;
  for (std::size_t i = 0; i < kept_count_; ++i) {
    Kept& kept = kept_[i];
    kept.from = end_point(from_pin(kept.wire)), kept.to = end_point(to_pin(kept.wire));
    to_come += kept.least = least_cost(kept.from, kept.to);
  }
  std::size_t added = 0;
  long change = total_ + to_come - total_before_;
  while (added < kept_count_ && change < bound) {
    to_come -= kept_[added].least;
    const long left = bound - (total_ + to_come - total_before_);
    if (!add_below(kept_[added].wire, kept_[added].from, kept_[added].to, left)) {
      change = bound;
      break;
    }
    ++added;
    change = total_ + to_come - total_before_;
  }
  for (std::size_t i = 0; i < added; ++i) take_out(kept_[i].wire);
  total_ = off;
  return change;
}

long Rough::try_pose(const Pose& pose, long charge, long bound) {
  const Pose home = pose_[lifted_];
  leave(lifted_);
  stand(lifted_, pose);
  const long change = try_kept(charge, bound);
  leave(lifted_);
  stand(lifted_, home);
  return change;
}

/// Room that is missing at the spot: it would push the row's bodies and their wires apart.
long Rough::crowding_of(int body, Spot spot) const {
  if (plan_.bodies[body].row == spot.row) return 0;
  const int column = plan_.bodies[body].column;
  Grid used = plan_.bodies[body].width + gap_after_[body];
  for (int b : plan_.rows[spot.row][column]) used += plan_.bodies[b].width + gap_after_[b];
  return plan_.weights.crowding * static_cast<long>(std::max(0, used - (column_right_[column] - column_left_[column])));
}

long Rough::try_move(Spot spot, long bound) {
  const Pose pose = pose_at(spot);
  const long turned = place_charge_at(lifted_, pose) - place_charge_at(lifted_, pose_[lifted_]);
  return try_pose(pose, crowding_of(lifted_, spot) + turned, bound);
}

long Rough::try_mirror(long bound) {
  Pose pose = pose_[lifted_];
  pose.is_mirrored = !pose.is_mirrored;
  return try_pose(pose, pair_charge_at(lifted_, pose) - pair_charge_at(lifted_, pose_[lifted_]), bound);
}

std::pair<Rough::Pose, Rough::Pose> Rough::swapped_poses(int other) const {
  Pose own = pose_[other], theirs = pose_[lifted_];
  const Grid widening = (plan_.bodies[other].width - plan_.bodies[lifted_].width) / 2;
  own.x += widening;
  theirs.x -= widening;
  own.is_mirrored = pose_[lifted_].is_mirrored;
  theirs.is_mirrored = pose_[other].is_mirrored;
  return {own, theirs};
}

long Rough::try_swap(int other, long bound) {
  const long off = total_;
  const std::size_t own_wires = kept_count_;
  keep_wires(other);
  const Pose home = pose_[lifted_], other_home = pose_[other];
  const auto [pose, other_pose] = swapped_poses(other);
  const long turned = place_charge_at(lifted_, pose) + place_charge_at(other, other_pose) -
                      place_charge_at(lifted_, home) - place_charge_at(other, other_home);
  leave(lifted_), leave(other);
  stand(lifted_, pose), stand(other, other_pose);
  const long change = try_kept(turned, bound);
  leave(lifted_), leave(other);
  stand(lifted_, home), stand(other, other_home);
  restore_wires(own_wires);
  total_ = off;
  return change;
}

void Rough::move(Spot spot) {
  const Pose pose = pose_at(spot);
  const int body = std::exchange(lifted_, -1), column = plan_.bodies[body].column;
  leave(body);
  stand(body, pose);
  std::erase(plan_.rows[plan_.bodies[body].row][column], body);
  auto& row = plan_.rows[spot.row][column];
  row.insert(row.begin() + spot.place, body);
  plan_.bodies[body].row = spot.row;
  add_kept();
}

void Rough::swap(int other) {
  keep_wires(other);
  const auto [pose, other_pose] = swapped_poses(other);
  const int body = std::exchange(lifted_, -1), column = plan_.bodies[body].column;
  leave(body), leave(other);
  stand(body, pose), stand(other, other_pose);
  auto& own = plan_.rows[plan_.bodies[body].row][column];
  auto& theirs = plan_.rows[plan_.bodies[other].row][column];
  std::iter_swap(std::find(own.begin(), own.end(), body), std::find(theirs.begin(), theirs.end(), other));
  std::swap(plan_.bodies[body].row, plan_.bodies[other].row);
  add_kept();
}

void Rough::mirror() {
  const int body = std::exchange(lifted_, -1);
  pose_[body].is_mirrored = plan_.bodies[body].is_mirrored = !plan_.bodies[body].is_mirrored;
  add_kept();
}

void Rough::add_kept() {
  for (std::size_t i = 0; i < kept_count_; ++i) {
    is_kept_[kept_[i].wire] = 0;
    add_best(kept_[i].wire);
  }
  kept_count_ = 0;
}

}  // namespace loomfolio::laying
