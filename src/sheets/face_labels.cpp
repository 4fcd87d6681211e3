// SPDX-License-Identifier: MIT
// Two arrangements are tried, labels at left and right and labels above and below, and the one with the shorter leaders
// that cross less of the face is taken. Each leader runs in a lane square to its side; of two terminals one behind the
// other, the inner one's goes over to a lane beside, at 45 degrees:
//
//      86 -------- o           (inner)
//      85 -- o
//
// Outside the face it goes over, at 45 degrees again, to its label. All leaders of a side turn at the same distance
// from the face and labels keep the order of their lanes, so no two cross. Labels that would touch are pushed apart in
// clusters about their mean, which keeps each as near its terminal as room allows.
#include "sheets/face_labels.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace loomfolio {
namespace {

constexpr Millimetres label_apart(2.6);
constexpr double turn_out = 0.8, last_out = 0.9;  // straight pieces outside the face, before and behind the turn
constexpr double lane_step = 0.4, most_lane = 4.4, lane_clear = 0.9, lanes_apart = 0.7;
constexpr double feature_cost = 20;
constexpr double least_reach = 1.7;  ///< drawn: a leader so near to another terminal runs through its cavity
constexpr int cavity_weight = 2;       ///< in features: worse than over a latch, since it may be read as that cavity's

struct LabelWish {
  std::size_t label = 0;
  double start = 0;  ///< of the terminal, along the side
  double depth = 0;  ///< distance from the side
  double along = 0;  ///< its lane, at which its label is wished
  double size = 0;   ///< along the side
};

/// A box along a side, with its depths.
struct SideBox {
  double along0 = 0, along1 = 0, depth0 = 0, depth1 = 0;
};

/// Pushes apart sorted wishes: clusters of touching ones share the mean of what they wish.
std::vector<double> spread(const std::vector<LabelWish>& wishes) {
  struct Cluster {
    std::size_t first = 0, count = 0;
    double length = 0, centre_sum = 0;  ///< sum of the wished middles of the cluster as a whole
    double start() const { return centre_sum / static_cast<double>(count) - length / 2; }
  };
  std::vector<Cluster> clusters;
  for (std::size_t i = 0; i < wishes.size(); ++i) {
    clusters.push_back({i, 1, wishes[i].size, wishes[i].along});
    while (clusters.size() > 1) {
      Cluster& before = clusters[clusters.size() - 2];
      const Cluster& after = clusters.back();
      if (before.start() + before.length <= after.start() + 1e-9) break;
      // The wish of each member, carried to the middle of the joined cluster.
      const double joined = before.length + after.length;
      before.centre_sum += static_cast<double>(before.count) * (joined / 2 - before.length / 2) + after.centre_sum +
                           static_cast<double>(after.count) * (joined / 2 - (before.length + after.length / 2));
      before.count += after.count;
      before.length = joined;
      clusters.pop_back();
    }
  }
  std::vector<double> middles;
  for (const Cluster& cluster : clusters) {
    double at = cluster.start();
    for (std::size_t i = cluster.first; i < cluster.first + cluster.count; ++i) {
      middles.push_back(at + wishes[i].size / 2);
      at += wishes[i].size;
    }
  }
  return middles;
}

class Placer {
 public:
  Placer(const FaceLabelRequest& request, LabelArrangement arrangement)
      : request_(request), arrangement_(arrangement) {}

  std::vector<PlacedFaceLabel> place() {
    std::vector<std::size_t> near, far;
    for (std::size_t i = 0; i < request_.terminals.size(); ++i) {
      const double near_cost = cost_to_side(i, sides().first), far_cost = cost_to_side(i, sides().second);
      const bool is_near = near_cost < far_cost - 0.6 || (near_cost < far_cost + 0.6 && near.size() <= far.size());
      (is_near ? near : far).push_back(i);
    }
    put_side(near, sides().first);
    put_side(far, sides().second);
    std::sort(placed_.begin(), placed_.end(), [](const auto& a, const auto& b) { return a.label < b.label; });
    return placed_;
  }

  double cost() const { return cost_; }

 private:
  std::pair<LabelSide, LabelSide> sides() const {
    return is_beside() ? std::pair(LabelSide::left, LabelSide::right) : std::pair(LabelSide::top, LabelSide::bottom);
  }
  bool is_beside() const { return arrangement_ != LabelArrangement::above_below; }
  double across() const { return (is_beside() ? request_.width : request_.height).number(); }
  static bool is_far(LabelSide side) { return side == LabelSide::right || side == LabelSide::bottom; }

  double along_of(Point p) const { return (is_beside() ? p.y : p.x).number(); }
  double depth_of(Point p, LabelSide side) const {
    const double from_near = (is_beside() ? p.x : p.y).number();
    return is_far(side) ? across() - from_near : from_near;
  }
  Point point_at(double along, double depth, LabelSide side) const {
    const Millimetres from_near(is_far(side) ? across() - depth : depth);
    return is_beside() ? Point{from_near, Millimetres(along)}
                                               : Point{Millimetres(along), from_near};
  }
  SideBox box_of(const Rect& rect, LabelSide side) const {
    const Point a{rect.x, rect.y}, b{rect.right(), rect.bottom()};
    return {std::min(along_of(a), along_of(b)), std::max(along_of(a), along_of(b)),
            std::min(depth_of(a, side), depth_of(b, side)), std::max(depth_of(a, side), depth_of(b, side))};
  }

  /// Features that a lane crosses on its way out from that depth.
  int crossed_by(double lane, double depth, LabelSide side) const {
    int count = 0;
    for (const Rect& feature : request_.features) {
      const SideBox box = box_of(feature, side);
      const bool is_within = depth > box.depth0 && depth < box.depth1;  // its own blade or cavity
      if (!is_within && lane > box.along0 - 0.3 && lane < box.along1 + 0.3 && box.depth1 <= depth) ++count;
    }
    for (std::size_t k = 0; k < request_.terminals.size(); ++k) {
      const Point p = request_.terminals[k];
      const double reach = std::max(least_reach, request_.reaches[k].number());
      if (depth_of(p, side) < depth - 0.2 && std::abs(along_of(p) - lane) < reach) count += cavity_weight;
    }
    return count;
  }

  double cost_to_side(std::size_t i, LabelSide side) const {
    const Point p = request_.terminals[i];
    return depth_of(p, side) + feature_cost * crossed_by(along_of(p), depth_of(p, side), side);
  }

  bool is_lane_free(double lane, double depth, std::size_t own, LabelSide side, const std::vector<LabelWish>& taken) const {
    for (std::size_t k = 0; k < request_.terminals.size(); ++k) {
      if (k == own) continue;
      const Point p = request_.terminals[k];
      if (depth_of(p, side) < depth + 0.2 && std::abs(along_of(p) - lane) < lane_clear) return false;
    }
    return std::none_of(taken.begin(), taken.end(),
                        [&](const LabelWish& wish) { return std::abs(wish.along - lane) < lanes_apart; });
  }

  /// Whether the slanting piece to a lane, `off` beside the terminal, keeps clear of the other terminals.
  bool is_slant_free(std::size_t own, double way, double off, LabelSide side) const {
    const double start = along_of(request_.terminals[own]), depth = depth_of(request_.terminals[own], side);
    for (std::size_t k = 0; k < request_.terminals.size(); ++k) {
      if (k == own) continue;
      const double along = (along_of(request_.terminals[k]) - start) * way,
                   inward = depth - depth_of(request_.terminals[k], side);
      const double at = std::clamp((along + inward) / 2, 0.0, off);  // foot on the slant
      if (std::hypot(along - at, inward - at) < lane_clear) return false;
    }
    return true;
  }

  /// The free lane nearest the terminal that crosses least; lanes away from the face's middle first.
  double choose_lane(std::size_t i, LabelSide side, const std::vector<LabelWish>& taken) const {
    const double start = along_of(request_.terminals[i]), depth = depth_of(request_.terminals[i], side);
    const double length = (is_beside() ? request_.height : request_.width).number();
    const double outward = start < length / 2 ? -1 : 1;
    double best = start, least = 1e9;
    for (double off = 0; off <= std::min(most_lane, depth); off += lane_step)
      for (const double way : {outward, -outward}) {
        const double lane = start + way * off;
        if (!is_lane_free(lane, depth - off, i, side, taken) || !is_slant_free(i, way, off, side)) continue;
        const double cost = off + feature_cost * crossed_by(lane, depth - off, side);
        if (cost >= least - 1e-9) continue;
        least = cost;
        best = lane;
      }
    return best;
  }

  double size_of(std::size_t i) const {
    return is_beside() ? request_.line_height.number()
                                               : (request_.stacked_widths[i] + label_apart).number();
  }

  void put_side(std::vector<std::size_t>& terminals, LabelSide side) {
    std::stable_sort(terminals.begin(), terminals.end(), [&](std::size_t a, std::size_t b) {
      return depth_of(request_.terminals[a], side) < depth_of(request_.terminals[b], side) - 0.2;
    });
    std::vector<LabelWish> wishes;
    for (const std::size_t i : terminals) {
      const Point p = request_.terminals[i];
      wishes.push_back({i, along_of(p), depth_of(p, side), choose_lane(i, side, wishes), size_of(i)});
    }
    std::sort(wishes.begin(), wishes.end(), [](const LabelWish& a, const LabelWish& b) { return a.along < b.along; });
    const std::vector<double> middles = spread(wishes);
    double furthest = 0;
    for (std::size_t i = 0; i < wishes.size(); ++i)
      furthest = std::max(furthest, std::abs(middles[i] - wishes[i].along));
    for (std::size_t i = 0; i < wishes.size(); ++i) put(wishes[i], middles[i], turn_out + furthest + last_out, side);
  }

  void put(const LabelWish& wish, double along, double out, LabelSide side) {
    PlacedFaceLabel label;
    label.label = wish.label;
    label.side = side;
    const auto add = [&](double at, double depth) {
      const Point p = point_at(at, depth, side);
      if (label.leader.empty() || !is_near_to(label.leader.back(), p)) label.leader.push_back(p);
    };
    add(wish.start, wish.depth);
    add(wish.along, wish.depth - std::abs(wish.along - wish.start));
    add(wish.along, -turn_out);
    add(along, -turn_out - std::abs(along - wish.along));
    add(along, -out);
    cost_ += wish.depth + out + feature_cost * crossed_by(wish.along, wish.depth, side);
    set_size(label, point_at(along, -out, side));
    placed_.push_back(std::move(label));
  }

  static bool is_near_to(Point a, Point b) {
    return std::abs((a.x - b.x).number()) < 1e-6 && std::abs((a.y - b.y).number()) < 1e-6;
  }

  void set_size(PlacedFaceLabel& label, Point edge) const {
    label.width = (is_beside() ? request_.one_line_widths : request_.stacked_widths)[label.label];
    label.height = request_.line_height * (is_beside() ? 1 : request_.stacked_lines[label.label]);
    const Millimetres gap(0.6);
    label.centre = edge;
    if (label.side == LabelSide::left) label.centre.x -= gap + label.width / 2;
    if (label.side == LabelSide::right) label.centre.x += gap + label.width / 2;
    if (label.side == LabelSide::top) label.centre.y -= label.height / 2;
    if (label.side == LabelSide::bottom) label.centre.y += label.height / 2;
  }

  const FaceLabelRequest& request_;
  LabelArrangement arrangement_;
  std::vector<PlacedFaceLabel> placed_;
  double cost_ = 0;
};

}  // namespace

std::vector<PlacedFaceLabel> place_face_labels(const FaceLabelRequest& request) {
  return plan_face_labels(request, LabelArrangement::shortest).labels;
}

FaceLabelPlan plan_face_labels(const FaceLabelRequest& request, LabelArrangement arrangement) {
  if (arrangement == LabelArrangement::shortest) {
    FaceLabelPlan beside = plan_face_labels(request, LabelArrangement::beside);
    FaceLabelPlan above = plan_face_labels(request, LabelArrangement::above_below);
    return beside.cost <= above.cost ? beside : above;
  }
  Placer placer(request, arrangement);
  FaceLabelPlan plan{placer.place(), 0};
  plan.cost = placer.cost();
  return plan;
}

}  // namespace loomfolio
