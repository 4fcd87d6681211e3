// SPDX-License-Identifier: MIT
// Each fitting is drawn about the wire's axis: mating part, conductor crimp, window with bare strands, insulation
// crimp, wire.
#include "sheets/fitting_picture.h"

#include <algorithm>
#include <utility>

#include "sheets/fitting_paint.h"
#include "sheets/names.h"
#include "sheets/wire_look.h"

namespace loomfolio {
namespace {

using namespace fitting_paint;

constexpr Millimetres picture_height(9);

/// Draws in mm with y counted from the wire's axis.
class PictureSketch {
 public:
  explicit PictureSketch(Items& items) : items_(items) {}
  void box(double x, double half, double length, Colour fill, double corner = 0) {
    add_boxed_rect(items_, {Millimetres(x), axis() - Millimetres(half), Millimetres(length), Millimetres(half * 2)},
                   fill, outline, Millimetres(corner));
  }
  void line(double x0, double y0, double x1, double y1, const Pen& pen) {
    add_line(items_, {Millimetres(x0), axis() + Millimetres(y0)}, {Millimetres(x1), axis() + Millimetres(y1)}, pen);
  }
  void disc(double x, double radius, Colour fill) {
    add_circle(items_, {Millimetres(x), axis()}, Millimetres(radius), {true, outline}, {true, fill});
  }
  void shape(std::vector<std::pair<double, double>> points, Colour fill) {
    std::vector<Point> placed;
    for (const auto& [x, y] : points) placed.push_back({Millimetres(x), axis() + Millimetres(y)});
    add_polygon(items_, placed, fill, outline);
  }
  /// Bare strands between two places.
  void strands(double x0, double x1) {
    for (const double y : {-0.45, 0.0, 0.45}) line(x0, y, x1, y, {copper, Millimetres(0.4)});
  }
  /// Conductor crimp, window and insulation crimp of an open barrel, 8 mm long.
  void open_barrel(double x) {
    strands(x - 0.4, x + 4.6);
    box(x, 1.0, 3, metal, 0.5);
    line(x + 1.5, -1.0, x + 1.5, 1.0, detail);
    box(x + 4.6, 1.5, 2.4, metal, 0.7);
    line(x + 5.8, -1.5, x + 5.8, 1.5, detail);
  }

 private:
  static Millimetres axis() { return picture_height / 2; }
  Items& items_;
};

/// Where the wire's insulation begins, mm.
double draw_fitting(PictureSketch& sketch, FittingShape shape) {
  switch (shape) {
    case FittingShape::blade:
      sketch.box(0.2, 3.0, 6.4, metal, 0.6);
      sketch.box(0.2, 2.1, 6.4, look::paper, 0.3);
      sketch.line(0.8, -2.5, 6.2, -2.5, detail);
      sketch.line(0.8, 2.5, 6.2, 2.5, detail);
      sketch.shape({{6.6, -1.6}, {8, -0.8}, {8, 0.8}, {6.6, 1.6}}, metal);
      sketch.open_barrel(8);
      return 13.2;
    case FittingShape::ring:
      sketch.shape({{7.4, -1.7}, {10, -1.1}, {10, 1.1}, {7.4, 1.7}}, metal);
      sketch.disc(4.4, 4.1, metal);
      sketch.disc(4.4, 2.0, look::paper);
      sketch.box(9.4, 1.4, 5, metal, 0.4);
      sketch.box(11.2, 0.7, 1.2, dark_metal, 0.3);
      return 14;
    case FittingShape::sealed:
      sketch.box(0.2, 1.3, 7.4, metal, 0.3);
      sketch.line(1.6, -0.5, 4.4, -0.5, detail);
      sketch.shape({{4.6, -1.3}, {6.4, -2.1}, {6.6, -1.3}}, metal);
      sketch.open_barrel(7.8);
      for (const double x : {15.4, 16.9, 18.4}) sketch.box(x, 2.5, 1, rubber, 0.4);
      sketch.box(13.4, 1.9, 6.6, rubber, 0.5);
      for (const double x : {15.4, 16.9, 18.4}) sketch.box(x, 2.5, 1, rubber, 0.4);
      return 20;
    case FittingShape::contact:
      sketch.box(0.2, 1.4, 7.4, metal, 0.3);
      sketch.line(1.6, -0.5, 4.4, -0.5, detail);
      sketch.shape({{4.6, -1.4}, {6.4, -2.2}, {6.6, -1.4}}, metal);
      sketch.open_barrel(7.8);
      return 13;
    case FittingShape::bullet:
      sketch.box(0.2, 1.6, 6.2, metal, 1.5);
      sketch.box(4.6, 1.6, 1.2, dark_metal, 0.2);
      sketch.open_barrel(6.6);
      return 11.8;
    case FittingShape::splice:
      sketch.box(0.2, 2.6, 13, look::band_dark, 1.6);
      sketch.strands(1, 11.5);
      sketch.box(2, 1.8, 8, metal, 0.5);
      sketch.box(3.4, 1.0, 1.2, dark_metal, 0.3);
      sketch.box(7.2, 1.0, 1.2, dark_metal, 0.3);
      return 11.5;
    case FittingShape::lead:
      sketch.box(0.2, 0.8, 5, look::band_dark, 0);
      sketch.box(4.4, 2.2, 9.2, look::band, 0.8);
      sketch.box(6, 1.4, 3.2, metal, 1.2);
      sketch.box(9.6, 1.4, 2.6, metal, 0.4);
      return 12.4;
    case FittingShape::bare:
      sketch.strands(0.2, 6);
      return 6;
    case FittingShape::cap:
      sketch.box(0.2, 3.4, 9, dark_metal, 2);
      sketch.box(8.6, 2.2, 4, dark_metal, 0.8);
      return 12.6;
  }
  return 0;
}

}  // namespace

FittingShape fitting_shape(const Build& build, TerminalId id) {
  const KindTerminal* terminal = kind_terminal_of(build, id);
  if (terminal == nullptr)
    return build.terminal(id).owner == OwnerType::earth ? FittingShape::ring : FittingShape::splice;
  switch (terminal->form) {
    case TerminalForm::blade:
      return FittingShape::blade;
    case TerminalForm::stud:
      return FittingShape::ring;
    case TerminalForm::sealed:
      return FittingShape::sealed;
    case TerminalForm::cavity:
      return FittingShape::contact;
    case TerminalForm::bullet:
      return FittingShape::bullet;
    case TerminalForm::splice:
      return FittingShape::splice;
    case TerminalForm::lead:
      return FittingShape::lead;
    case TerminalForm::screw:
      return FittingShape::bare;
    case TerminalForm::push_on:
      return FittingShape::cap;
    case TerminalForm::body:
      return FittingShape::ring;
  }
  return FittingShape::ring;
}

Block splice_picture(const std::vector<const Wire*>& left, const std::vector<const Wire*>& right, Millimetres width) {
  constexpr Millimetres pitch(2.0), half(6.5), fan(4);
  const std::size_t most = std::min<std::size_t>(6, std::max(left.size(), right.size()));
  Block block{width, std::max(picture_height, pitch * static_cast<double>(most) + Millimetres(1)), {}};
  const Point centre{width / 2, block.height / 2};
  const auto draw_side = [&](const std::vector<const Wire*>& wires, double sign) {
    const std::size_t count = std::min<std::size_t>(wires.size(), 6);
    for (std::size_t i = 0; i < count; ++i) {
      const double place = static_cast<double>(i) - (static_cast<double>(count) - 1) / 2;
      const Millimetres inner = centre.x + (half - Millimetres(2)) * sign, out = inner + (fan + Millimetres(2)) * sign;
      const Millimetres end = sign > 0 ? width : Millimetres(0);
      const Millimetres near_y = centre.y + Millimetres(place * 0.7), far_y = centre.y + pitch * place;
      add_wire(block.items, std::vector<Point>{{inner, near_y}, {out, far_y}, {end, far_y}}, wires[i]->colour,
               wire_width(wires[i]->area));
    }
  };
  draw_side(left, -1);
  draw_side(right, 1);
  add_boxed_rect(block.items, {centre.x - half, centre.y - Millimetres(2.6), half * 2, Millimetres(5.2)},
                 look::band_dark, outline, Millimetres(1.6));
  add_boxed_rect(block.items,
                 {centre.x - Millimetres(4), centre.y - Millimetres(1.8), Millimetres(8), Millimetres(3.6)}, metal,
                 outline, Millimetres(0.5));
  for (const double x : {-2.6, 1.4})
    add_boxed_rect(block.items,
                   {centre.x + Millimetres(x), centre.y - Millimetres(1), Millimetres(1.2), Millimetres(2)}, dark_metal,
                   outline, Millimetres(0.3));
  return block;
}

Block fitting_picture(FittingShape shape, const Wire& wire, Millimetres width) {
  // The wire is drawn first, the fitting over its end; how far the insulation reaches into it is known only from the
  // fitting.
  Items fitting;
  PictureSketch sketch(fitting);
  const Millimetres start(draw_fitting(sketch, shape));
  Block block{width, picture_height, {}};
  add_wire(block.items, std::vector<Point>{{start, picture_height / 2}, {width, picture_height / 2}}, wire.colour,
           wire_width(wire.area) + look::swatch_extra);
  place_block(block.items, Block{width, picture_height, std::move(fitting)}, {});
  return block;
}

}  // namespace loomfolio
