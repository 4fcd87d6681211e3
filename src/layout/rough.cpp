// SPDX-License-Identifier: MIT
// The places and the trying of moves; courses are in rough_course.cpp.
#include "layout/rough.h"

#include <algorithm>
#include <utility>

#include "layout/place.h"
#include "layout/wishes.h"

namespace loomfolio::laying {
namespace {

constexpr Grid first_channel = 3000;
constexpr int relax_rounds = 4;

}  // namespace

Rough::Rough(Plan& plan) : plan_(plan) {
  pose_.resize(plan.bodies.size());
  wires_of_body_.resize(plan.bodies.size());
  course_.resize(plan.graph->wires.size());
  is_kept_.assign(course_.size(), 0);
  for (int w = 0; w < static_cast<int>(course_.size()); ++w) {
    const int a = plan.pins[from_pin(w)].body, b = plan.pins[to_pin(w)].body;
    wires_of_body_[a].push_back(w);
    if (a != b) wires_of_body_[b].push_back(w);
  }
  std::vector<int> side_pins(plan.bodies.size(), 0);
  for (const Pin& p : plan.pins) side_pins[p.body] += !is_upright(p.side);
  for (std::size_t b = 0; b < plan.bodies.size(); ++b)
    gap_after_.push_back(std::max(plan.spacing.part_gap, 2 * plan.spacing.clear + plan.spacing.pitch * side_pins[b]));
  gather_reaches();
  for (int b = 0; b < static_cast<int>(plan.bodies.size()); ++b) {
    const BoxRole role = plan.graph->boxes[plan.bodies[b].members[0].box].role;
    const bool is_neutral = role == BoxRole::splice || role == BoxRole::connector || role == BoxRole::reference;
    depth_.push_back(is_neutral ? -1 : depth_of(plan, b));
  }
  strips_.resize(2 * plan.rows.size() + 1 + plan.bodies.size());
  const auto runs =
      static_cast<Grid>(course_.size() / (plan.rows.size() + 1));  // about one a wire, and half of them side by side
  channel_y_.assign(plan.rows.size() + 1, 2 * plan.spacing.clear + plan.spacing.pitch * runs / 2);
  estimate_places();
  rebuild();
}

void Rough::gather_reaches() {
  const Grid clear = plan_.spacing.clear;
  for (std::size_t i = 0; i < plan_.pins.size(); ++i) {
    const Pin& pin = plan_.pins[i];
    int above = 0, below = 0;
    for (const Pin& q : plan_.pins)
      if (q.body == pin.body && q.side == pin.side && q.at.y != pin.at.y) ++(q.at.y < pin.at.y ? above : below);
    for (const bool is_mirrored : {false, true}) {
      const Side side = side_when(plan_, static_cast<int>(i), is_mirrored);
      const GridPoint at = offset_when(plan_, static_cast<int>(i), is_mirrored);
      const Grid off = side == Side::left ? -clear : side == Side::right ? clear : 0;
      const bool is_turned = is_mirrored && plan_.flow == Flow::across;
      reaches_.push_back({side, at.x + off, at.y, is_turned ? below : above, is_turned ? above : below});
    }
  }
}

int Rough::channel_strip(int channel) const { return channel; }

std::vector<Grid> Rough::body_x() const {
  std::vector<Grid> x;
  for (const Pose& p : pose_) x.push_back(p.x);
  return x;
}

/// Bodies of a row and column with equal gaps between them.
void Rough::spread(int row, int column, Grid left, Grid right) {
  const auto& bodies = plan_.rows[row][column];
  Grid used = 0;
  for (int b : bodies) used += plan_.bodies[b].width + gap_after_[b];
  const Grid extra = (right - left - used) / (static_cast<Grid>(bodies.size()) + 1);
  Grid x = left + extra;
  for (int b : bodies) {
    x += gap_after_[b] / 2;
    pose_[b].x = x;
    x += plan_.bodies[b].width + gap_after_[b] / 2 + extra;
  }
}

void Rough::estimate_places() {
  column_left_.clear();
  column_right_.clear();
  Grid left = 0;
  for (int c = 0; c < plan_.columns; ++c) {
    Grid widest = 0;
    for (const auto& row : plan_.rows) {
      Grid width = 0;
      for (int b : row[c]) width += plan_.bodies[b].width + gap_after_[b];
      widest = std::max(widest, width);
    }
    column_left_.push_back(left);
    column_right_.push_back(left + widest);
    for (int r = 0; r < static_cast<int>(plan_.rows.size()); ++r) spread(r, c, left, left + widest);
    left += widest + (widest > 0 ? plan_.spacing.band_gap : 0);
  }
}

void Rough::sort_rows() {
  row_bodies_.assign(plan_.rows.size(), {});
  row_height_.assign(plan_.rows.size(), 0);
  row_y_.assign(plan_.rows.size(), 0);
  channel_top_.assign(channel_y_.size(), 0);
  Grid y = 0;
  for (std::size_t r = 0; r < plan_.rows.size(); ++r) {
    for (const auto& column : plan_.rows[r])
      for (int b : column) {
        row_bodies_[r].push_back(b);
        row_height_[r] = std::max(row_height_[r], plan_.bodies[b].height);
        pose_[b].row = static_cast<int>(r);
        pose_[b].is_mirrored = plan_.bodies[b].is_mirrored;
      }
    y += channel_y_[r];
    row_y_[r] = y;
    y += row_height_[r];
    channel_top_[r + 1] = y;
  }
}

/// Where the wires of a body would have its left edge, on average.
Grid Rough::wish_of(int body) const {
  long sum = 0;
  for (int w : wires_of_body_[body]) {
    EndPoint own = end_point(from_pin(w)), other = end_point(to_pin(w));
    if (own.body != body) std::swap(own, other);
    sum += other.x - (own.x - pose_[body].x);
  }
  return wires_of_body_[body].empty() ? pose_[body].x
                                      : static_cast<Grid>(sum / static_cast<long>(wires_of_body_[body].size()));
}

/// Moves the bodies of each row towards their wishes, in their order and apart: neighbours that collide form a block
/// that stands at the mean of its wishes.
void Rough::relax() {
  for (int round = 0; round < relax_rounds; ++round)
    for (std::size_t r = 0; r < plan_.rows.size(); ++r)
      for (int c = 0; c < plan_.columns; ++c) {
        const auto& bodies = plan_.rows[r][c];
        blocks_.clear();
        offsets_.assign(1, 0);
        for (int b : bodies) {
          blocks_.push_back({wish_of(b) - offsets_.back(), 1});
          while (blocks_.size() > 1) {
            Block &last = blocks_.back(), &before = blocks_[blocks_.size() - 2];
            if (before.sum * last.count <= last.sum * before.count) break;
            before.sum += last.sum;
            before.count += last.count;
            blocks_.pop_back();
          }
          offsets_.push_back(offsets_.back() + plan_.bodies[b].width + gap_after_[b]);
        }
        const Grid least = column_left_[c], most = std::max(least, column_right_[c] - offsets_.back());
        std::size_t i = 0;
        for (const Block& block : blocks_)
          for (int n = 0; n < block.count; ++n, ++i)
            pose_[bodies[i]].x = std::clamp(static_cast<Grid>(block.sum / block.count), least, most) + offsets_[i];
      }
}

void Rough::find_courses() {
  for (auto& strip : strips_) strip.clear();
  for (Course& c : course_) c.clear();
  total_ = total_place_charge();
  for (int w = 0; w < static_cast<int>(course_.size()); ++w) add_best(w);
}

void Rough::take_places(const Tracks& tracks) {
  for (std::size_t b = 0; b < pose_.size(); ++b) pose_[b].x = tracks.body_x[b];
  for (std::size_t r = 0; r < plan_.rows.size(); ++r) {
    const Grid above = r == 0 ? tracks.row_y[0] - first_channel : tracks.row_y[r - 1] + tracks.row_height[r - 1];
    channel_y_[r] = tracks.row_y[r] - above;
  }
  sort_rows();
  find_courses();
}

void Rough::rebuild() {
  estimate_places();
  sort_rows();
  relax();
  find_courses();
}

bool Rough::add_below(int wire, const EndPoint& a, const EndPoint& b, long limit) {
  Course& course = course_[wire];
  if (!find_best(a, b, limit, course)) return false;
  total_ += course.own + plan_.weights.crossing * course.crossings;
  for (const auto& [strip, run] : course.runs) strips_[strip].add(wire, run);
  return true;
}

/// Takes its runs off the strips; the total stays.
void Rough::take_out(int wire) {
  for (const auto& [strip, run] : course_[wire].runs) strips_[strip].remove_last_of(wire);
}

void Rough::remove(int wire) {
  take_out(wire);
  total_ -= course_[wire].own + plan_.weights.crossing * count_crossings_of(course_[wire], INT64_MAX);
}

/// Gives up at `stop_at`.
long Rough::count_crossings_of(const Course& course, long stop_at) const {
  long n = 0;
  for (const auto& [strip, run] : course.runs) {
    n += strips_[strip].count_crossings(run);
    if (n >= stop_at) return n;
  }
  return n;
}

Rough::Pose Rough::pose_at(Spot spot) const {
  const int body = lifted_;
  const int column = plan_.bodies[body].column;
  const std::vector<int>& bodies = plan_.rows[spot.row][column];
  const int before = spot.place == 0 ? -1 : body_at(bodies, spot.place - 1, body), behind = body_at(bodies, spot.place, body);
  const Grid left = before < 0 ? column_left_[column] : pose_[before].x + plan_.bodies[before].width;
  const Grid right = behind < 0 ? std::max(left + plan_.bodies[body].width, column_right_[column]) : pose_[behind].x;
  const Grid room = right - left - plan_.bodies[body].width;
  // Beside the neighbour when there is room to spare, else in the middle of the gap.
  Grid x = left + room / 2;
  if (room > 2 * gap_after_[body])
    x = std::clamp(lifted_wish_, left + gap_after_[body], right - gap_after_[body] - plan_.bodies[body].width);
  return {spot.row, x, pose_[body].is_mirrored};
}

std::vector<Spot> Rough::near_spots(std::size_t most) {
  const int body = lifted_;
  long sum_y = 0;
  for (int w : wires_of_body_[body]) {
    const EndPoint a = end_point(from_pin(w)), b = end_point(to_pin(w));
    sum_y += row_middle(a.body == body ? b.row : a.row);
  }
  const auto count = static_cast<long>(wires_of_body_[body].size());
  const Grid wish_x = lifted_wish_,
             wish_y = count == 0 ? row_middle(pose_[body].row) : static_cast<Grid>(sum_y / count);
  const int column = plan_.bodies[body].column;
  offered_.clear();
  for (int r = 0; r < static_cast<int>(plan_.rows.size()); ++r) {
    if (plan_.flow == Flow::across && plan_.zone_of_row[r] != plan_.bodies[body].zone_column) continue;
    int place = 0;
    Grid before = column_left_[column];
    const auto offer = [&](Grid x) {
      if (!may_stand(plan_, body, r, place)) return;
      offered_.push_back({std::abs(x - wish_x) + std::abs(row_middle(r) - wish_y), r, place});
    };
    for (int b : plan_.rows[r][column]) {
      if (b == body) continue;
      offer((before + pose_[b].x) / 2);
      before = pose_[b].x + plan_.bodies[b].width;
      ++place;
    }
    offer((before + std::max(before, column_right_[column])) / 2);
  }
  std::sort(offered_.begin(), offered_.end());
  const int partner = partner_of(body);
  std::vector<Spot> spots;
  spots.reserve(std::min(most, offered_.size()));
  for (std::size_t i = 0; i < offered_.size(); ++i) {
    const auto& [distance, row, place] = offered_[i];
    const bool is_with_partner = partner >= 0 && row == pose_[partner].row;
    if (i < most || is_with_partner) spots.push_back({row, place});
  }
  return spots;
}

long Rough::charge_of(int body) const {
  long sum = place_charge_at(body, pose_[body]);
  for (int w : wires_of_body_[body])
    sum += course_[w].own + plan_.weights.crossing * count_crossings_of(course_[w], INT64_MAX);
  return sum;
}

}  // namespace loomfolio::laying
