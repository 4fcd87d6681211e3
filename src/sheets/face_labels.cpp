// SPDX-License-Identifier: MIT
// Two arrangements are tried, labels at left and right and labels above and below, and the one with the shorter, less
// crossed leaders is taken. Within a side, labels keep the order of their terminals; of two terminals one behind the
// other, the inner one's leader goes round on the side away from the face's middle:
//
//        86 --.              (inner, upper half: label above)
//        85 -- o   o
//
// Labels that would touch are pushed apart in clusters about their mean, which keeps each as near its terminal as room
// allows.
#include "sheets/face_labels.h"

#include <algorithm>
#include <cmath>

namespace loomfolio {
namespace {

constexpr Millimetres elbow_out(2.2), edge_out(4.2), label_apart(1.2);
constexpr double crossing_cost = 15;

enum class Arrangement { beside, above_below };

struct Wish {
  std::size_t label = 0;
  double along = 0;  ///< wished middle along the side
  double depth = 0;  ///< distance from the side
  double size = 0;   ///< along the side
};

/// Pushes apart sorted wishes: clusters of touching ones share the mean of what they wish.
std::vector<double> spread(const std::vector<Wish>& wishes) {
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
  Placer(const FaceLabelRequest& request, Arrangement arrangement) : request_(request), arrangement_(arrangement) {}

  std::vector<PlacedFaceLabel> place() {
    std::vector<Wish> near, far;
    for (std::size_t i = 0; i < request_.terminals.size(); ++i) {
      const Wish wish = wish_of(i);
      const double middle = across() / 2;
      const bool is_near = wish.depth < middle - 0.3 || (wish.depth < middle + 0.3 && near.size() <= far.size());
      (is_near ? near : far).push_back(wish);
    }
    for (Wish& wish : far) wish.depth = across() - wish.depth;
    put_side(near, arrangement_ == Arrangement::beside ? LabelSide::left : LabelSide::top);
    put_side(far, arrangement_ == Arrangement::beside ? LabelSide::right : LabelSide::bottom);
    std::sort(placed_.begin(), placed_.end(), [](const auto& a, const auto& b) { return a.label < b.label; });
    return placed_;
  }

 private:
  double across() const { return (arrangement_ == Arrangement::beside ? request_.width : request_.height).number(); }
  double length() const { return (arrangement_ == Arrangement::beside ? request_.height : request_.width).number(); }

  Wish wish_of(std::size_t i) const {
    const Point& p = request_.terminals[i];
    if (arrangement_ == Arrangement::beside) return {i, p.y.number(), p.x.number(), request_.line_height.number()};
    return {i, p.x.number(), p.y.number(), (request_.two_line_widths[i] + label_apart).number()};
  }

  void put_side(std::vector<Wish>& wishes, LabelSide side) {
    const double middle = length() / 2;
    std::sort(wishes.begin(), wishes.end(), [&](const Wish& a, const Wish& b) {
      if (std::abs(a.along - b.along) > 1) return a.along < b.along;
      const bool inner_first = (a.along + b.along) / 2 < middle;
      if (a.depth != b.depth) return inner_first ? a.depth > b.depth : a.depth < b.depth;
      return a.label < b.label;
    });
    const std::vector<double> middles = spread(wishes);
    for (std::size_t i = 0; i < wishes.size(); ++i) put(wishes[i], middles[i], side);
  }

  void put(const Wish& wish, double along, LabelSide side) {
    PlacedFaceLabel label;
    label.label = wish.label;
    label.side = side;
    label.terminal = request_.terminals[wish.label];
    const Millimetres at(along);
    switch (side) {
      case LabelSide::left:
        label.elbow = {-elbow_out, at};
        label.edge = {-edge_out, at};
        break;
      case LabelSide::right:
        label.elbow = {request_.width + elbow_out, at};
        label.edge = {request_.width + edge_out, at};
        break;
      case LabelSide::top:
        label.elbow = {at, -elbow_out};
        label.edge = {at, -edge_out};
        break;
      case LabelSide::bottom:
        label.elbow = {at, request_.height + elbow_out};
        label.edge = {at, request_.height + edge_out};
        break;
    }
    set_size(label);
    placed_.push_back(label);
  }

  void set_size(PlacedFaceLabel& label) const {
    const bool is_beside = arrangement_ == Arrangement::beside;
    label.width = (is_beside ? request_.one_line_widths : request_.two_line_widths)[label.label];
    label.height = request_.line_height * (is_beside ? 1 : 2);
    const Millimetres gap(0.6);
    label.centre = label.edge;
    if (label.side == LabelSide::left) label.centre.x -= gap + label.width / 2;
    if (label.side == LabelSide::right) label.centre.x += gap + label.width / 2;
    if (label.side == LabelSide::top) label.centre.y -= label.height / 2;
    if (label.side == LabelSide::bottom) label.centre.y += label.height / 2;
  }

  const FaceLabelRequest& request_;
  Arrangement arrangement_;
  std::vector<PlacedFaceLabel> placed_;
};

double length_between(Point a, Point b) { return std::hypot((b.x - a.x).number(), (b.y - a.y).number()); }

double turn(Point a, Point b, Point c) {
  return (b.x - a.x).number() * (c.y - a.y).number() - (b.y - a.y).number() * (c.x - a.x).number();
}

bool cross(Point a, Point b, Point c, Point d) {
  return turn(a, b, c) * turn(a, b, d) < 0 && turn(c, d, a) * turn(c, d, b) < 0;
}

double cost_of(const std::vector<PlacedFaceLabel>& labels) {
  double cost = 0;
  for (std::size_t i = 0; i < labels.size(); ++i) {
    cost += length_between(labels[i].terminal, labels[i].elbow);
    for (std::size_t k = i + 1; k < labels.size(); ++k)
      if (cross(labels[i].terminal, labels[i].elbow, labels[k].terminal, labels[k].elbow)) cost += crossing_cost;
  }
  return cost;
}

}  // namespace

std::vector<PlacedFaceLabel> place_face_labels(const FaceLabelRequest& request) {
  std::vector<PlacedFaceLabel> beside = Placer(request, Arrangement::beside).place();
  std::vector<PlacedFaceLabel> above_below = Placer(request, Arrangement::above_below).place();
  return cost_of(beside) <= cost_of(above_below) ? beside : above_below;
}

}  // namespace loomfolio
