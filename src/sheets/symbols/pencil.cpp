// SPDX-License-Identifier: MIT
#include "sheets/symbols/pencil.h"

namespace loomfolio {

Point Pencil::at(Spot spot) const {
  const double x = is_mirrored_ ? -spot.first : spot.first, y = spot.second;
  double dx = x, dy = y;
  switch (heading_) {
    case Heading::down:
      break;
    case Heading::up:
      dy = -y;
      break;
    case Heading::right:
      dx = y;
      dy = x;
      break;
    case Heading::left:
      dx = -y;
      dy = x;
      break;
  }
  return {centre_.x + Millimetres(dx), centre_.y + Millimetres(dy)};
}

std::vector<Point> Pencil::all(const std::vector<Spot>& spots) const {
  std::vector<Point> points;
  points.reserve(spots.size());
  for (const Spot& spot : spots) points.push_back(at(spot));
  return points;
}

void Pencil::line(const std::vector<Spot>& spots) { add_polyline(items_, all(spots), pen()); }

void Pencil::thick_line(Spot from, Spot to, Millimetres width) {
  add_line(items_, at(from), at(to), {ink_.line, width, {}, Cap::butt});
}

void Pencil::dashed(Spot from, Spot to) {
  add_line(items_, at(from), at(to), {ink_.line, look::line, {Millimetres(0.9), Millimetres(0.6)}, Cap::butt});
}

void Pencil::shape(const std::vector<Spot>& spots) { add_polygon(items_, all(spots), ink_.fill, pen()); }
void Pencil::blot(const std::vector<Spot>& spots) {
  add_polygon(items_, all(spots), ink_.line, {ink_.line, Millimetres(0.1)});
}

void Pencil::box(Spot low, Spot high) { shape({low, {high.first, low.second}, high, {low.first, high.second}}); }

void Pencil::circle(Spot centre, double radius) {
  add_circle(items_, at(centre), Millimetres(radius), {true, pen()}, {true, ink_.fill});
}

void Pencil::disc(Spot centre, double radius) {
  add_circle(items_, at(centre), Millimetres(radius), {false, {}}, {true, ink_.line});
}

void Pencil::half_circle(Spot from, Spot to) {
  // Two cubic curves; 0.5523 is the usual reach of a quarter circle.
  constexpr double quarter = 0.5522847498;
  const double cx = (from.first + to.first) / 2, cy = (from.second + to.second) / 2;
  const double rx = (to.first - from.first) / 2, ry = (to.second - from.second) / 2;
  const double sx = ry, sy = -rx;  // sideways: left of the way from `from` to `to`
  const Spot top{cx + sx, cy + sy};
  const auto along = [&](Spot base, double k, double m) {
    return Spot{base.first + k * rx + m * sx, base.second + k * ry + m * sy};
  };
  PathItem path;
  path.pieces = {PathMove{at(from)}, PathCurve{at(along(from, 0, quarter)), at(along(top, -quarter, 0)), at(top)},
                 PathCurve{at(along(top, quarter, 0)), at(along(to, 0, quarter)), at(to)}};
  path.stroke = {true, pen()};
  items_.push_back(std::move(path));
}

void Pencil::letters(Spot middle, const std::string& text, const TextStyle& style) {
  const Point p = at(middle);
  add_text(items_, {p.x, baseline_at_middle(p.y, style)}, text, style, ink_.line, Align::centre);
}

}  // namespace loomfolio
