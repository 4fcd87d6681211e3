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

Side side_of(const Plan& plan, int pin);          ///< with the body's mirroring
GridPoint offset_of(const Plan& plan, int pin);   ///< from the body's top left, with the body's mirroring
inline bool is_upright(Side side) { return side == Side::top || side == Side::bottom; }

/// Bodies and pins of a graph, turned when the flow is across; nothing is placed yet.
Plan make_plan(const Graph& graph, Flow flow);

/// Over the diagonal: x for y, top for left.
GridPoint turned(GridPoint p);
Side turned(Side side);

/// Distance that two parallel wires keep at least.
Grid distance_between(const Plan& plan, int wire_a, int wire_b);

}  // namespace loomfolio::laying
