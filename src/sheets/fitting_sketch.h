// SPDX-License-Identifier: MIT
// A pencil for fittings and wire ends: places in mm of the thing itself, x from the figure's left, y from the wire's
// axis; drawn `scale` times true size.
#pragma once

#include <string>
#include <utility>
#include <vector>

#include "model/build.h"
#include "sheets/draw.h"
#include "sheets/fitting_paint.h"

namespace loomfolio {

enum class Wings : std::uint8_t { open, closed };
enum class Strands : std::uint8_t { straight, gathered };

/// The wires that meet in a splice, by side; at most three a side are drawn.
struct SpliceWires {
  std::vector<const Wire*> left, right;
};

class FittingSketch {
 public:
  /// A figure of that size on paper; `wire` gives colours.
  FittingSketch(Millimetres width, Millimetres height, double scale, const Wire& wire);

  /// Where wires leave the figure at its right.
  double reach() const;

  void box(double x, double half, double length, Colour fill, double corner = 0);
  /// Top and bottom apart from the axis: y0 < y1.
  void slab(double x, double y0, double length, double y1, Colour fill, double corner = 0);
  void line(double x0, double y0, double x1, double y1, bool is_thin = true);
  void disc(double x, double y, double radius, Colour fill);
  void shape(const std::vector<std::pair<double, double>>& points, Colour fill);
  /// The insulated wire, in its colour, of that outside diameter; `y` of its middle.
  void wire(double x0, double x1, double diameter = 2.4, double y = 0);
  void strands(double x0, double x1, double half = 0.6);
  /// One strand on its way, thick and with a dark edge: where it is not where it belongs.
  void strand(const std::vector<std::pair<double, double>>& points);
  /// Two of them twisted round each other.
  void twist(double x0, double x1);
  /// Which wires a splice joins; without, one a side.
  void set_splice(SpliceWires splice) { splice_ = std::move(splice); }
  /// The splice's wires of one side: insulated from the figure's edge to `inner`, bare from there to `tip`, where gathered
  /// strands lie on the axis.
  void splice_side(Side side, double edge, double inner, double tip, Strands strands = Strands::gathered);
  /// Half the height of the side that is higher.
  double splice_half() const;
  /// Conductor wings 3 mm long, insulation wings 2.4 mm; open ones stand up.
  void conductor_wings(double x, Wings wings);
  void insulation_wings(double x, Wings wings, double half = 1.5);
  /// Ribs at the far side of the neck, or turned round.
  void seal(double x, bool is_reversed = false);
  /// The mating part of a sealed or unsealed contact, 7.4 mm long, with its locking tongue on top.
  void contact_body(double x);
  void blade_body(double x);
  void ring(double x);
  void arrow(double x0, double y0, double x1, double y1);
  /// A magnifying glass over that place: look closely.
  void lens(double x, double y, double radius);
  /// A bold ring round what is wrong.
  void point_out(double x, double y, double radius);
  /// Between two small ticks below the thing.
  void dimension(double x0, double x1, double y, const std::string& text);
  void label(double x, double y, const std::string& text, Align align = Align::centre);

  Block take();

 private:
  Point at(double x, double y) const;
  Millimetres size(double mm) const { return Millimetres(mm * scale_); }

  double scale_;
  const Wire& wire_;
  SpliceWires splice_;
  Block block_;
};

}  // namespace loomfolio
