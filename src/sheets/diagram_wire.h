// SPDX-License-Identifier: MIT
// The course of a wire as a path: rounded bends, hops over what it crosses. Only diagram_*.cpp include this.
#pragma once

#include <vector>

#include "layout/laid.h"
#include "sheets/sheet.h"

namespace loomfolio {

/// A hop as wide as the pens that meet there ask for.
struct DrawnHop {
  GridPoint at;
  Grid half = 100, rise = 100;
};

struct WireCourse {
  std::vector<GridPoint> points;
  std::vector<DrawnHop> hops;
  Grid pen = 100;
};

/// The wire's course with hops sized by its own pen and the pens it crosses.
WireCourse course_of(const Graph& graph, const Laid& laid, std::size_t wire);

/// The course as a path from `origin`.
std::vector<PathPiece> path_of(const WireCourse& course, Point origin);

/// What of such a path goes over other wires: a path for each hop.
std::vector<std::vector<PathPiece>> hops_along(const std::vector<PathPiece>& path, const WireCourse& course, Point origin);

}  // namespace loomfolio
