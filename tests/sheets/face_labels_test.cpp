// SPDX-License-Identifier: MIT
// Labels around a face: none on another, none on the face, leaders that do not cross.
#include "sheets/face_labels.h"

#include <doctest/doctest.h>

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
      request.two_line_widths.push_back(Millimetres(label_width / 2));
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

bool cross(const PlacedFaceLabel& a, const PlacedFaceLabel& b) {
  return turn(a.terminal, a.elbow, b.terminal) * turn(a.terminal, a.elbow, b.elbow) < -1e-9 &&
         turn(b.terminal, b.elbow, a.terminal) * turn(b.terminal, b.elbow, a.elbow) < -1e-9;
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
      for (std::size_t k = i + 1; k < labels.size(); ++k) {
        CHECK_FALSE(overlap(labels[i], labels[k]));
        CHECK_FALSE(cross(labels[i], labels[k]));
      }
    }
  }
}
