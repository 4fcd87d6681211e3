// SPDX-License-Identifier: MIT
#include "sheets/fitting_sketch.h"

#include <algorithm>
#include <cmath>

#include "sheets/wire_look.h"

namespace loomfolio {
namespace {

constexpr std::size_t most_at_side = 3;
constexpr double figure_reach = 27;  // what a figure shows of the thing at most

/// More wires at one side are drawn slimmer.
double diameter_of(std::size_t count) { return count < 2 ? 2.4 : count == 2 ? 2.0 : 1.7; }

std::size_t drawn_at(const std::vector<const Wire*>& wires) {
  return std::clamp<std::size_t>(wires.size(), 1, most_at_side);
}

}  // namespace

using namespace fitting_paint;

FittingSketch::FittingSketch(Millimetres width, Millimetres height, double scale, const Wire& wire)
    : scale_(scale), wire_(wire), block_{width, height, {}} {}

double FittingSketch::reach() const { return std::min(figure_reach, block_.width.number() / scale_); }

Point FittingSketch::at(double x, double y) const { return {size(x), block_.height / 2 + size(y)}; }

void FittingSketch::box(double x, double half, double length, Colour fill, double corner) {
  slab(x, -half, length, half, fill, corner);
}

void FittingSketch::slab(double x, double y0, double length, double y1, Colour fill, double corner) {
  const Point top = at(x, y0);
  add_boxed_rect(block_.items, {top.x, top.y, size(length), size(y1 - y0)}, fill, outline, size(corner));
}

void FittingSketch::line(double x0, double y0, double x1, double y1, bool is_thin) {
  add_line(block_.items, at(x0, y0), at(x1, y1), is_thin ? detail : outline);
}

void FittingSketch::disc(double x, double y, double radius, Colour fill) {
  add_circle(block_.items, at(x, y), size(radius), {true, outline}, {true, fill});
}

void FittingSketch::shape(const std::vector<std::pair<double, double>>& points, Colour fill) {
  std::vector<Point> placed;
  for (const auto& [x, y] : points) placed.push_back(at(x, y));
  add_polygon(block_.items, placed, fill, outline);
}

void FittingSketch::wire(double x0, double x1, double diameter, double y) {
  add_wire(block_.items, std::vector<Point>{at(x0, y), at(x1, y)}, wire_.colour, size(diameter));
}

void FittingSketch::strands(double x0, double x1, double half) {
  for (const double share : {-1.0, -0.33, 0.33, 1.0})
    add_line(block_.items, at(x0, half * share), at(x1, half * share), {copper, size(half * 0.6)});
}

void FittingSketch::strand(const std::vector<std::pair<double, double>>& points) {
  std::vector<Point> placed;
  for (const auto& [x, y] : points) placed.push_back(at(x, y));
  add_polyline(block_.items, placed, {look::ink, Millimetres(1.3), {}, Cap::round});
  add_polyline(block_.items, placed, {copper, Millimetres(0.75), {}, Cap::round});
}

void FittingSketch::twist(double x0, double x1) {
  constexpr double pitch = 1.6, half = 0.75;
  std::vector<std::pair<double, double>> one, other;
  double y = half;
  for (double x = x0; x <= x1 + 0.01; x += pitch, y = -y) {
    one.emplace_back(x, y);
    other.emplace_back(x, -y);
  }
  strand(one);
  strand(other);
}

double FittingSketch::splice_half() const {
  const auto half = [](std::size_t count) { return diameter_of(count) * static_cast<double>(count) / 2; };
  return std::max(half(drawn_at(splice_.left)), half(drawn_at(splice_.right)));
}

void FittingSketch::splice_side(Side side, double edge, double inner, double tip, Strands strands) {
  constexpr double gathered = 0.3;  // the strands' share of their distance from the axis, in the barrel
  const std::vector<const Wire*>& wires = side == Side::left ? splice_.left : splice_.right;
  const std::size_t count = drawn_at(wires);
  const double diameter = diameter_of(count), turn = inner + (tip > inner ? 1.0 : -1.0);
  for (std::size_t i = 0; i < count; ++i) {
    const double y = (static_cast<double>(i) - (static_cast<double>(count) - 1) / 2) * diameter;
    for (const double share : {-0.25, -0.08, 0.08, 0.25}) {
      if (inner == tip) break;
      const double from = y + diameter * share, to = strands == Strands::straight ? from : y * gathered + diameter * share;
      add_polyline(block_.items, {at(inner, from), at(turn, to), at(tip, to)}, {copper, size(diameter * 0.15)});
    }
    const Wire& drawn = i < wires.size() ? *wires[i] : wire_;
    add_wire(block_.items, std::vector<Point>{at(edge, y), at(inner, y)}, drawn.colour, size(diameter));
  }
}

void FittingSketch::conductor_wings(double x, Wings wings) {
  if (wings == Wings::closed) {
    box(x, 1.0, 3, metal, 0.5);
    line(x + 1.5, -1.0, x + 1.5, 1.0);
    return;
  }
  shape({{x, 1.2}, {x, -2.2}, {x + 0.5, -2.6}, {x + 2.5, -2.6}, {x + 3, -2.2}, {x + 3, 1.2}}, metal);
}

void FittingSketch::insulation_wings(double x, Wings wings, double half) {
  if (wings == Wings::closed) {
    box(x, half, 2.4, metal, 0.7);
    line(x + 1.2, -half, x + 1.2, half);
    return;
  }
  const double top = -half - 1.7;
  shape({{x, half + 0.2}, {x, top + 0.5}, {x + 0.4, top}, {x + 2, top}, {x + 2.4, top + 0.5}, {x + 2.4, half + 0.2}},
        metal);
}

void FittingSketch::seal(double x, bool is_reversed) {
  const double neck = is_reversed ? x + 4.6 : x, ribs = is_reversed ? x : x + 2;
  box(neck, 1.9, 2.2, rubber, 0.3);
  box(ribs, 2.1, 4.6, rubber, 0.4);
  for (const double rib : {0.3, 1.8, 3.3}) box(ribs + rib, 2.7, 1, rubber, 0.4);
}

void FittingSketch::contact_body(double x) {
  box(x, 1.3, 7.4, metal, 0.3);
  line(x + 1.4, -0.5, x + 4.2, -0.5);
  shape({{x + 4.4, -1.3}, {x + 6.2, -2.1}, {x + 6.4, -1.3}}, metal);
}

void FittingSketch::blade_body(double x) {
  box(x, 3.0, 6.4, metal, 0.6);
  box(x, 2.1, 6.4, look::paper, 0.3);
  line(x + 0.6, -2.5, x + 6, -2.5);
  line(x + 0.6, 2.5, x + 6, 2.5);
  shape({{x + 6.4, -1.6}, {x + 7.8, -0.8}, {x + 7.8, 0.8}, {x + 6.4, 1.6}}, metal);
}

void FittingSketch::ring(double x) {
  shape({{x + 7.2, -1.7}, {x + 9.8, -1.1}, {x + 9.8, 1.1}, {x + 7.2, 1.7}}, metal);
  disc(x + 4.2, 0, 4.1, metal);
  disc(x + 4.2, 0, 2.0, look::paper);
  box(x + 9.2, 1.4, 5, metal, 0.4);
}

void FittingSketch::arrow(double x0, double y0, double x1, double y1) {
  const Point from = at(x0, y0), to = at(x1, y1);
  const double dx = (to.x - from.x).number(), dy = (to.y - from.y).number(), length = std::hypot(dx, dy);
  if (length < 0.1) return;
  const double ux = dx / length, uy = dy / length, head = 2.2;
  const Point neck{to.x - Millimetres(ux * head), to.y - Millimetres(uy * head)};
  add_line(block_.items, from, neck, {look::ink, Millimetres(0.8)});
  const Millimetres side_x(-uy * 1.2), side_y(ux * 1.2);
  add_polygon(block_.items, {to, {neck.x + side_x, neck.y + side_y}, {neck.x - side_x, neck.y - side_y}}, look::ink,
              {look::ink, Millimetres(0)});
}

void FittingSketch::lens(double x, double y, double radius) {
  add_circle(block_.items, at(x, y), size(radius), {true, {look::ink, Millimetres(0.7)}}, {});
  const double edge = radius * 0.7071;
  const double reach = edge + 2.2;
  add_line(block_.items, at(x + edge, y + edge), at(x + reach, y + reach), {look::ink, Millimetres(1.6)});
}

void FittingSketch::point_out(double x, double y, double radius) {
  for (const Pen& pen : {Pen{look::paper, Millimetres(1.6)}, Pen{look::ink, Millimetres(0.9)}})
    add_circle(block_.items, at(x, y), size(radius), {true, pen}, {});
}

void FittingSketch::dimension(double x0, double x1, double y, const std::string& text) {
  for (const double x : {x0, x1}) line(x, y - 0.9, x, y + 0.4);
  line(x0, y, x1, y);
  const Point start = at(x0, y);
  add_text(block_.items, {start.x, start.y + Millimetres(3.9)}, text, look::table_bold);
}

void FittingSketch::label(double x, double y, const std::string& text, Align align) {
  add_text(block_.items, at(x, y), text, look::table_bold, look::ink, align);
}

Block FittingSketch::take() { return std::move(block_); }

}  // namespace loomfolio
