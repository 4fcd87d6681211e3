// SPDX-License-Identifier: MIT
// Draws a symbol in its own directions: heading down the page, its centre at (0, 0), in millimetres. The pencil turns
// and mirrors what it is told; letters stay upright.
#pragma once

#include <string>
#include <utility>
#include <vector>

#include "layout/inside_drawing.h"
#include "sheets/draw.h"

namespace loomfolio {

struct SymbolInk {
  Colour line = look::ink;
  Millimetres width{0.35};
  Colour fill = look::paper;
};

class Pencil {
 public:
  using Spot = std::pair<double, double>;

  Pencil(Items& items, Point centre, Heading heading, bool is_mirrored, const SymbolInk& ink)
      : items_(items), centre_(centre), heading_(heading), is_mirrored_(is_mirrored), ink_(ink) {}

  Point at(Spot spot) const;
  const SymbolInk& ink() const { return ink_; }
  Items& items() { return items_; }

  void line(const std::vector<Spot>& spots);
  void thick_line(Spot from, Spot to, Millimetres width);
  void dashed(Spot from, Spot to);
  void shape(const std::vector<Spot>& spots);  ///< closed, filled with paper
  void blot(const std::vector<Spot>& spots);   ///< closed, filled with ink
  void box(Spot low, Spot high);               ///< filled with paper
  void circle(Spot centre, double radius);     ///< filled with paper
  void disc(Spot centre, double radius);       ///< filled with ink
  /// Half a circle from one end of its diameter to the other, on the left hand of that way as seen heading down.
  void half_circle(Spot from, Spot to);
  void letters(Spot middle, const std::string& text, const TextStyle& style);

 private:
  Pen pen() const { return {ink_.line, ink_.width, {}, Cap::round}; }
  std::vector<Point> all(const std::vector<Spot>& spots) const;

  Items& items_;
  Point centre_;
  Heading heading_;
  bool is_mirrored_;
  SymbolInk ink_;
};

}  // namespace loomfolio
