// SPDX-License-Identifier: MIT
// Places are in metres: from the front of the front tyre, and up from the ground. Proportions of a usual road machine, from
// memory.
#include "sheets/machine_outline.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace loomfolio {
namespace {

constexpr double usual_length = 2.1;  // metres
constexpr double beyond_last = 0.15;  // metres of machine behind the last mark
constexpr Colour body_paint{0xdd, 0xdd, 0xd8}, rim_paint{0x8c, 0x8c, 0x88};

struct OutlineSpot {
  double x = 0, y = 0;
};

class OutlinePen {
 public:
  OutlinePen(Items& items, const Rect& place) : items_(items), place_(place) {}

  Point at(OutlineSpot spot) const {
    const double scale = place_.width.number() / usual_length;
    return {place_.x + Millimetres(spot.x * scale), place_.bottom() - Millimetres(spot.y * scale)};
  }
  Millimetres length(double metres) const { return place_.width * (metres / usual_length); }

  void line(const std::vector<OutlineSpot>& spots, double width) {
    std::vector<Point> points;
    for (const OutlineSpot spot : spots) points.push_back(at(spot));
    add_polyline(items_, points, {rim_paint, length(width), {}, Cap::round});
  }
  void ring(OutlineSpot centre, double radius, double width) {
    add_circle(items_, at(centre), length(radius), {true, {rim_paint, length(width), {}, Cap::butt}}, {});
  }
  void disc(OutlineSpot centre, double radius) {
    add_circle(items_, at(centre), length(radius), {true, {rim_paint, look::line, {}, Cap::butt}}, {true, body_paint});
  }
  /// From spot to spot: each of three after the first is a curve's two controls and its end.
  void shape(const std::vector<OutlineSpot>& spots) {
    PathItem item;
    item.pieces.push_back(PathMove{at(spots.front())});
    for (std::size_t i = 1; i + 2 < spots.size(); i += 3)
      item.pieces.push_back(PathCurve{at(spots[i]), at(spots[i + 1]), at(spots[i + 2])});
    item.pieces.push_back(PathClose{});
    item.stroke = {true, {rim_paint, look::line, {}, Cap::round}};
    item.fill = {true, body_paint};
    items_.push_back(std::move(item));
  }
  void block(const std::vector<OutlineSpot>& spots) {
    std::vector<Point> points;
    for (const OutlineSpot spot : spots) points.push_back(at(spot));
    add_polygon(items_, points, body_paint, {rim_paint, look::line, {}, Cap::round});
  }

 private:
  Items& items_;
  Rect place_;
};

void draw_outline(OutlinePen& pen) {
  constexpr OutlineSpot front{0.33, 0.31}, rear{1.74, 0.31};
  for (const OutlineSpot wheel : {front, rear}) {
    pen.ring(wheel, 0.275, 0.07);
    pen.ring(wheel, 0.09, 0.025);
  }
  pen.line({{1.26, 0.42}, rear}, 0.045);                                         // swinging arm
  pen.line({{1.52, 0.80}, {1.66, 0.36}}, 0.035);                                 // spring leg
  pen.line({{0.66, 0.93}, {0.72, 0.80}, {1.20, 0.78}, {1.72, 0.80}}, 0.03);      // upper frame
  pen.line({{0.67, 0.88}, {0.86, 0.27}, {1.26, 0.27}, {1.20, 0.78}}, 0.03);      // lower frame
  pen.line({front, {0.63, 1.02}}, 0.05);                                         // fork
  pen.line({{0.62, 1.02}, {0.70, 1.10}, {0.86, 1.09}}, 0.03);                    // handlebar
  pen.line({{1.02, 0.62}, {0.90, 0.60}, {0.83, 0.40}, {0.93, 0.22}, {1.20, 0.21}, {1.42, 0.24}}, 0.03);  // exhaust
  pen.line({{1.42, 0.24}, {1.92, 0.33}}, 0.07);                                  // silencer
  pen.shape({{0.02, 0.42}, {0.10, 0.72}, {0.46, 0.76}, {0.60, 0.52}, {0.46, 0.70}, {0.14, 0.66}, {0.02, 0.42}});
  pen.shape({{1.50, 0.62}, {1.66, 0.76}, {1.92, 0.70}, {2.06, 0.40}, {1.96, 0.62}, {1.70, 0.70}, {1.50, 0.62}});
  pen.block({{0.92, 0.28}, {1.26, 0.28}, {1.28, 0.48}, {1.12, 0.50}, {0.90, 0.50}});
  pen.block({{0.94, 0.50}, {1.12, 0.50}, {1.09, 0.74}, {0.93, 0.74}});
  for (const double y : {0.56, 0.61, 0.66}) pen.line({{0.925, y}, {1.12, y}}, 0.012);
  pen.shape({{0.68, 0.88}, {0.76, 1.03}, {1.02, 1.01}, {1.16, 0.84}, {1.02, 0.79}, {0.80, 0.79}, {0.68, 0.88}});
  pen.shape({{1.14, 0.86}, {1.30, 0.94}, {1.62, 0.92}, {1.84, 0.92}, {1.80, 0.80}, {1.40, 0.78}, {1.14, 0.86}});
  pen.block({{1.28, 0.76}, {1.52, 0.77}, {1.46, 0.56}, {1.30, 0.56}});           // side cover
  pen.disc({0.50, 0.90}, 0.095);                                                 // headlamp
  pen.line({{1.72, 0.80}, {1.88, 0.76}}, 0.025);
  pen.block({{1.84, 0.83}, {1.94, 0.80}, {1.92, 0.72}, {1.83, 0.74}});           // tail lamp
}

}  // namespace

void add_machine_outline(Items& items, const Rect& place, const std::vector<OutlineMark>& marks) {
  double length = usual_length;
  for (const OutlineMark& mark : marks) length = std::max(length, mark.along.number() + beyond_last);
  OutlinePen pen(items, place);
  add_line(items, pen.at({-0.08, 0}), pen.at({usual_length + 0.08, 0}), {look::hairline_grey, look::line});
  draw_outline(pen);
  for (const OutlineMark& mark : marks) {
    const double x = std::max(0.0, mark.along.number()) / length * usual_length;
    const Point head = pen.at({x, 1.18}), foot = pen.at({x, 0});
    add_line(items, head, foot, {look::accent, look::line, {Millimetres(1.2), Millimetres(0.9)}, Cap::butt});
    add_line(items, foot, mark.to, {look::accent, look::line});
    add_circle(items, head, Millimetres(0.7), {false, {}}, {true, look::accent});
  }
}

}  // namespace loomfolio
