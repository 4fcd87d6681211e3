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

/// Parts that stand elsewhere.
int count_moved(const Canvas& before, const Canvas& after);

/// Gives `is_new` wires their distances and parts their sizes; false when others cannot give way. `lean`, by part: how
/// far left and up it would rather grow; empty: all grow to the right and down.
bool push_aside(const Plan& plan, Canvas& canvas, const std::vector<char>& is_new, std::vector<GridPoint> lean = {});

/// Draws one more wire as things stand; else by pushing runs aside; else by drawing one other wire anew; else by
/// pushing parts too. False when nothing helps; then all is as it was.
bool work_in(const Plan& plan, Canvas& canvas, int wire);

/// Draws all wires of a box that have no course yet and whose other end is placed. Their cost together; INT64_MAX when
/// one finds no way.
long draw_wires_of(const Plan& plan, Canvas& canvas, int box, Squeeze squeeze);

}  // namespace loomfolio::laying
