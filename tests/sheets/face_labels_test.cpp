// SPDX-License-Identifier: MIT
// Labels around a face: none on another, none on the face, leaders that do not cross.
#include "sheets/face_labels.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>

using namespace loomfolio;

namespace {

/// A grid of cavities in the middle of a face, their labels all as wide.
FaceLabelRequest cavities(int columns, int rows, double pitch, double label_width) {
  FaceLabelRequest request;
  request.width = Millimetres(columns * pitch + 8);
  request.height = Millimetres(rows * pitch + 8);
  request.line_height = Millimetres(3.4);
  for (int row = 0; row < rows; ++row)
    for (int column = 0; column < columns; ++column) {
      request.terminals.push_back({Millimetres(4 + pitch * (column + 0.5)), Millimetres(4 + pitch * (row + 0.5))});
      request.one_line_widths.push_back(Millimetres(label_width));
      request.stacked_widths.push_back(Millimetres(label_width / 2));
      request.stacked_lines.push_back(2);
      request.reaches.push_back(Millimetres(1.9));
    }
  return request;
}

double left(const PlacedFaceLabel& l) { return (l.centre.x - l.width / 2).number(); }
double top(const PlacedFaceLabel& l) { return (l.centre.y - l.height / 2).number(); }

bool overlap(const PlacedFaceLabel& a, const PlacedFaceLabel& b) {
  const double x = std::min(left(a) + a.width.number(), left(b) + b.width.number()) - std::max(left(a), left(b));
  const double y = std::min(top(a) + a.height.number(), top(b) + b.height.number()) - std::max(top(a), top(b));
  return x > 0.01 && y > 0.01;
}

double turn(Point a, Point b, Point c) {
  return (b.x - a.x).number() * (c.y - a.y).number() - (b.y - a.y).number() * (c.x - a.x).number();
}

bool cross(Point a, Point b, Point c, Point d) {
  return turn(a, b, c) * turn(a, b, d) < -1e-9 && turn(c, d, a) * turn(c, d, b) < -1e-9;
}

/// Whether a leader crosses another or runs over another's terminal.
bool cross(const PlacedFaceLabel& a, const PlacedFaceLabel& b) {
  for (std::size_t i = 1; i < a.leader.size(); ++i) {
    for (std::size_t k = 1; k < b.leader.size(); ++k)
      if (cross(a.leader[i - 1], a.leader[i], b.leader[k - 1], b.leader[k])) return true;
    const Point p = a.leader[i - 1], q = a.leader[i], t = b.leader.front();
    const double length = std::hypot((q.x - p.x).number(), (q.y - p.y).number());
    const double along = ((t.x - p.x).number() * (q.x - p.x).number() + (t.y - p.y).number() * (q.y - p.y).number());
    if (along > 0 && along < length * length && std::abs(turn(p, q, t)) / length < 0.5) return true;
  }
  return false;
}

/// Upright, level or at 45 degrees.
bool is_true(Point a, Point b) {
  const double x = std::abs((b.x - a.x).number()), y = std::abs((b.y - a.y).number());
  return x < 1e-6 || y < 1e-6 || std::abs(x - y) < 1e-6;
}

}  // namespace

TEST_CASE("labels of usual connectors neither touch nor cross") {
  for (const auto& [columns, rows] :
       {std::pair(1, 1), {2, 1}, {2, 2}, {3, 1}, {3, 2}, {4, 2}, {6, 2}, {1, 4}, {2, 5}}) {
    CAPTURE(columns);
    CAPTURE(rows);
    const FaceLabelRequest request = cavities(columns, rows, 6.5, 15);
    const std::vector<PlacedFaceLabel> labels = place_face_labels(request);
    REQUIRE(labels.size() == request.terminals.size());
    for (std::size_t i = 0; i < labels.size(); ++i) {
      CHECK(labels[i].label == i);
      const bool is_beside =
          left(labels[i]) >= request.width.number() || left(labels[i]) + labels[i].width.number() <= 0;
      const bool is_above_below =
          top(labels[i]) >= request.height.number() || top(labels[i]) + labels[i].height.number() <= 0;
      CHECK((is_beside || is_above_below));
      for (std::size_t p = 1; p < labels[i].leader.size(); ++p)
        CHECK(is_true(labels[i].leader[p - 1], labels[i].leader[p]));
      for (std::size_t k = i + 1; k < labels.size(); ++k) {
        CHECK_FALSE(overlap(labels[i], labels[k]));
        CHECK_FALSE(cross(labels[i], labels[k]));
      }
    }
  }
}

TEST_CASE("a leader goes round a lid rather than over it") {
  FaceLabelRequest request = cavities(1, 1, 6, 15);  // a face of 14 by 14 mm, its terminal in the middle
  const auto crosses = [&](const Rect& lid) {
    request.features = {lid};
    const PlacedFaceLabel label = place_face_labels(request).front();
    for (std::size_t i = 1; i < label.leader.size(); ++i) {
      const Point a = label.leader[i - 1], b = label.leader[i];
      const double x = (a.x + b.x).number() / 2, y = (a.y + b.y).number() / 2;  // each piece is short or square to it
      if (x > lid.x.number() && x < lid.right().number() && y > lid.y.number() && y < lid.bottom().number())
        return true;
    }
    return false;
  };
  const Millimetres zero(0), five(5), fourteen(14);
  CHECK_FALSE(crosses({zero, zero, five, fourteen}));            // at the left
  CHECK_FALSE(crosses({Millimetres(9), zero, five, fourteen}));  // at the right
  CHECK_FALSE(crosses({zero, zero, fourteen, five}));            // above
  CHECK_FALSE(crosses({zero, Millimetres(9), fourteen, five}));  // below
}

TEST_CASE("a leader keeps off the nut of a stud in front of it") {
  FaceLabelRequest request;  // two studs, one behind the other from either side, nuts of 10 mm
  request.width = Millimetres(46);
  request.height = Millimetres(46);
  request.line_height = Millimetres(3.4);
  for (const double x : {11.0, 35.0}) {
    request.terminals.push_back({Millimetres(x), Millimetres(23)});
    request.one_line_widths.push_back(Millimetres(8));
    request.stacked_widths.push_back(Millimetres(6));
    request.stacked_lines.push_back(1);
    request.reaches.push_back(Millimetres(5.8));
  }
  request.features = {{Millimetres(40), Millimetres(0), Millimetres(6), Millimetres(46)}};  // a lid beside the second
  for (const auto arrangement : {LabelArrangement::beside, LabelArrangement::above_below, LabelArrangement::shortest})
    for (const PlacedFaceLabel& label : plan_face_labels(request, arrangement).labels) {
      const Point other = request.terminals[1 - label.label];
      for (const Point& p : label.leader) {
        CAPTURE(p.x.number());
        CAPTURE(p.y.number());
        CHECK(std::hypot((p.x - other.x).number(), (p.y - other.y).number()) > 5.8);
      }
    }
}
