// SPDX-License-Identifier: MIT
// A drawing that new wires are worked into. Only keep*.cpp include this.
#pragma once

#include <vector>

#include "layout/laid.h"
#include "layout/plan.h"
#include "layout/segments.h"
#include "layout/thread.h"

namespace loomfolio::laying {

/// What is drawn so far.
struct Canvas {
  Laid laid;
  std::vector<GridBox> boxes;  ///< empty: not placed yet
  std::vector<Segment> segments;
  bool is_placed(int box) const { return boxes[box].width() > 0; }
};

std::vector<Segment> segments_of(int wire, const Course& course);

ThreadEnd thread_end(const Graph& graph, const Canvas& canvas, int box, int terminal);

/// Draws one more wire; false when it finds no way, or when nothing can give way to it.
bool draw_wire(const Plan& plan, Canvas& canvas, int wire, Squeeze squeeze);

/// Gives `is_new` wires their distances and parts their sizes; false when others cannot give way.
bool push_aside(const Plan& plan, Canvas& canvas, const std::vector<char>& is_new);

/// Draws all wires of a box that have no course yet and whose other end is placed. Their cost together; INT64_MAX when
/// one finds no way.
long draw_wires_of(const Plan& plan, Canvas& canvas, int box, Squeeze squeeze);

}  // namespace loomfolio::laying
