// SPDX-License-Identifier: MIT
// One more wire through a finished drawing in which nothing may move. Only keep*.cpp and thread.cpp include this.
#pragma once

#include <optional>
#include <vector>

#include "layout/laid.h"
#include "layout/segments.h"
#include "layout/weights.h"

namespace loomfolio::laying {

/// Where a wire begins or ends: at a terminal, leaving to that side.
struct ThreadEnd {
  GridPoint at;
  Side side = Side::top;
  int box = -1, terminal = -1;
};

/// Whether the wire may run too near what is drawn: `make_room` then pushes that aside.
enum class Squeeze : std::uint8_t { never, allowed };

/// What stands in the way, and the wire to draw.
struct ThreadRequest {
  const Graph& graph;
  const std::vector<GridBox>& boxes;     ///< those placed; others are empty
  const std::vector<Segment>& segments;  ///< of the wires drawn so far
  const std::vector<Course>& courses;    ///< by wire: those, others are empty
  const std::vector<int>& figure;        ///< by wire: wires that share a terminal
  int wire = -1;
  ThreadEnd from, to;
  Squeeze squeeze = Squeeze::never;
};

struct Threaded {
  std::vector<GridPoint> points;
  long cost = 0;
};

/// The cheapest course that keeps every distance, or with `Squeeze::allowed` the order of what stands beside it;
/// nothing when there is none.
std::optional<Threaded> thread_wire(const ThreadRequest& request, const Spacing& spacing, const RouteWeights& weights);

}  // namespace loomfolio::laying
