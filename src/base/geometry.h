// SPDX-License-Identifier: MIT
// Places on paper. Origin top left, x to the right, y down. Layout counts in whole hundredths of a millimetre (`Grid`),
// so that sums are exact and output is the same on every machine; sheets speak Millimetres. Two places that differ by
// less than one Grid are the same place.
#pragma once

#include <algorithm>
#include <cmath>
#include <cstdint>

#include "base/quantity.h"

namespace loomfolio {

using Grid = std::int32_t;                ///< hundredths of a millimetre on paper
constexpr Grid grid_per_mm = 100;

constexpr Millimetres to_mm(Grid g) { return Millimetres(g / 100.0); }
inline Grid to_grid(Millimetres m) { return static_cast<Grid>(std::lround(m.number() * 100)); }
inline Grid to_grid_up(Millimetres m) { return static_cast<Grid>(std::ceil(m.number() * 100 - 1e-6)); }

struct GridPoint {
  Grid x = 0, y = 0;
  friend constexpr auto operator<=>(GridPoint, GridPoint) = default;
};

/// A rectangle with x0 <= x1 and y0 <= y1; the edges belong to it.
struct GridBox {
  Grid x0 = 0, y0 = 0, x1 = 0, y1 = 0;
  constexpr Grid width() const { return x1 - x0; }
  constexpr Grid height() const { return y1 - y0; }
  constexpr GridBox grown(Grid by) const { return {x0 - by, y0 - by, x1 + by, y1 + by}; }
  constexpr bool holds(GridPoint p) const { return p.x >= x0 && p.x <= x1 && p.y >= y0 && p.y <= y1; }
  /// True when the insides overlap; touching edges do not count.
  constexpr bool overlaps(GridBox o) const { return x0 < o.x1 && o.x0 < x1 && y0 < o.y1 && o.y0 < y1; }
  friend constexpr auto operator<=>(GridBox, GridBox) = default;
};

struct Point {
  Millimetres x, y;
  friend constexpr Point operator+(Point a, Point b) { return {a.x + b.x, a.y + b.y}; }
  friend constexpr Point operator-(Point a, Point b) { return {a.x - b.x, a.y - b.y}; }
};

struct Rect {
  Millimetres x, y, width, height;
  constexpr Millimetres right() const { return x + width; }
  constexpr Millimetres bottom() const { return y + height; }
};

constexpr Point to_mm(GridPoint p) { return {to_mm(p.x), to_mm(p.y)}; }
constexpr Rect to_mm(GridBox b) { return {to_mm(b.x0), to_mm(b.y0), to_mm(b.width()), to_mm(b.height())}; }

/// A side of a box; also the direction in which a wire leaves a terminal on that side.
enum class Side : std::uint8_t { top, right, bottom, left };

}  // namespace loomfolio
