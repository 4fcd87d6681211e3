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

/// What is placed as one: a box, or a box with the earth symbols that hang on it, or a stack of references.
struct Body {
  std::vector<BodyMember> members;
  Grid width = 0, height = 0;
  int column = 0;            ///< zones left to right; column 0 and the last are for references
  int wished_rank = -1;
  bool may_mirror = false;
  // Set by placing:
  int row = -1;
  bool is_mirrored = false;
  Grid drop = 0;             ///< its top, below the top of its row
};

/// A terminal that at least one wire reaches.
struct Pin {
  int box = -1, terminal = -1, body = -1, component = -1;
  Side side = Side::top;     ///< unmirrored
  GridPoint at;              ///< from the body's top left, unmirrored
};

/// Wires joined by shared terminals: drawn as one figure.
struct Component {
  std::vector<int> pins, wires;
  Grid half_pen = 0, label_height = 0;
};

struct Plan {
  const Graph* graph = nullptr;
  Spacing spacing;
  RouteWeights weights;
  std::vector<Body> bodies;
  std::vector<Pin> pins;
  std::vector<Component> components;
  std::vector<int> pin_of_wire_from, pin_of_wire_to;
  int columns = 0;
  /// bodies of a row and column, left to right: rows[row][column]
  std::vector<std::vector<std::vector<int>>> rows;
};

Side side_of(const Plan& plan, int pin);          ///< with the body's mirroring
GridPoint offset_of(const Plan& plan, int pin);   ///< from the body's top left, with the body's mirroring
inline bool is_upright(Side side) { return side == Side::top || side == Side::bottom; }

/// Bodies, pins and components of a graph; nothing is placed yet.
Plan make_plan(const Graph& graph);

/// Distance that two parallel wires of these components keep at least.
Grid distance_between(const Plan& plan, int component_a, int component_b);

}  // namespace loomfolio::laying
