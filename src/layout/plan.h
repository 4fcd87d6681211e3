// SPDX-License-Identifier: MIT
// What the passes of the engine hand on: bodies in rows, the terminals that wires reach, and which of those belong together.
#pragma once

#include <vector>

#include "layout/graph.h"
#include "layout/weights.h"

namespace loomfolio::laying {

/// A box as it stands inside a body, from the body's top left when not mirrored.
struct BodyMember {
  int box = -1;
  GridPoint at;
};

/// Which end of the rows, or of its own row, a body must stand at.
enum class PinnedEnd : std::uint8_t { none, first, last };

/// What is placed as one: a box, or a box with the earth symbols that hang on it, or a stack of references.
struct Body {
  std::vector<BodyMember> members;
  Grid width = 0, height = 0;
  int column = 0;            ///< zones left to right; column 0 and the last are for references; flow across: always 0
  int zone_column = 0;       ///< the same with either flow
  int wished_rank = -1;
  bool may_mirror = false;
  PinnedEnd row_pin = PinnedEnd::none;    ///< the first or last row of its zone
  PinnedEnd place_pin = PinnedEnd::none;  ///< the first or last place of its row and column
  bool is_joint = false;     ///< its pins take the sides they are wanted on
  // Set by placing:
  int row = -1;
  bool is_mirrored = false;
  Grid drop = 0;             ///< its top, below the top of its row
};

/// A place for a body: in a row, before which body of its column.
struct Spot {
  int row = 0, place = 0;
};

/// One end of a wire at a terminal. Wires that share a terminal have pins at one place.
struct Pin {
  int wire = -1, box = -1, terminal = -1, body = -1;
  Side side = Side::top;     ///< unmirrored
  GridPoint at;              ///< from the body's top left, unmirrored
};

/// Which way the current runs. Down: rows lie across the sheet, each through all zones. Across: the engine works on the sheet turned
/// over its diagonal, where rows are columns of the sheet and each belongs to one zone; it fits parts wired at their left and right.
enum class Flow : std::uint8_t { down, across };

struct Plan {
  const Graph* graph = nullptr;   ///< as given, never turned
  Flow flow = Flow::down;
  Spacing spacing;
  RouteWeights weights;
  std::vector<Body> bodies;
  std::vector<Pin> pins;          ///< two a wire: from_pin(w), to_pin(w)
  std::vector<int> figure;        ///< by wire: wires joined by shared terminals are one figure; the number is its first wire
  int columns = 0, zone_columns = 0;
  /// bodies of a row and column, left to right: rows[row][column]
  std::vector<std::vector<std::vector<int>>> rows;
  std::vector<int> zone_of_row;   ///< flow across: the column that a row belongs to
};

inline int from_pin(int wire) { return 2 * wire; }
inline int to_pin(int wire) { return 2 * wire + 1; }
inline int wires_of(const Plan& plan) { return static_cast<int>(plan.figure.size()); }
inline Grid half_pen(const Plan& plan, int wire) { return (plan.graph->wires[wire].pen + 1) / 2; }

inline bool is_upright(Side side) { return side == Side::top || side == Side::bottom; }
inline Side opposite(Side side) {
  switch (side) {
    case Side::top: return Side::bottom;
    case Side::bottom: return Side::top;
    case Side::left: return Side::right;
    case Side::right: return Side::left;
  }
  return side;
}

/// The side that the pin is on, and its place from the body's top left, were the body mirrored or not.
inline Side side_when(const Plan& plan, int pin, bool is_mirrored) {
  const Side side = plan.pins[pin].side;
  const bool is_exchanged = is_mirrored && is_upright(side) == (plan.flow == Flow::across);
  return is_exchanged ? opposite(side) : side;
}
inline GridPoint offset_when(const Plan& plan, int pin, bool is_mirrored) {
  const Pin& p = plan.pins[pin];
  if (!is_mirrored) return p.at;
  const Body& body = plan.bodies[p.body];
  return plan.flow == Flow::down ? GridPoint{body.width - p.at.x, p.at.y} : GridPoint{p.at.x, body.height - p.at.y};
}
/// The same as the body stands.
inline Side side_of(const Plan& plan, int pin) { return side_when(plan, pin, plan.bodies[plan.pins[pin].body].is_mirrored); }
inline GridPoint offset_of(const Plan& plan, int pin) { return offset_when(plan, pin, plan.bodies[plan.pins[pin].body].is_mirrored); }

/// The body at that place of a row's column, counted as if `without` were not there; -1: none.
inline int body_at(const std::vector<int>& column, int place, int without) {
  for (const int b : column)
    if (b != without && place-- == 0) return b;
  return -1;
}

/// Bodies and pins of a graph, turned when the flow is across; nothing is placed yet.
Plan make_plan(const Graph& graph, Flow flow);

/// Over the diagonal: x for y, top for left.
GridPoint turned(GridPoint p);
Side turned(Side side);

/// Distance that two parallel wires keep at least.
Grid distance_between(const Plan& plan, int wire_a, int wire_b);

}  // namespace loomfolio::laying
