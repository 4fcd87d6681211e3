// SPDX-License-Identifier: MIT
// What the layout engine gives: every box, course and label at a place, in whole hundredths of a millimetre.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "layout/graph.h"

namespace loomfolio {

struct PlacedBox {
  GridBox box;
  bool is_mirrored = false;  ///< terminals' x counted from the right edge
};

struct Hop {
  GridPoint at;    ///< where a horizontal wire passes over a vertical one
  Grid half = 100; ///< half its width; joined hops form one flat bridge
};

/// How high the arch of a hop rises, to the middle of its pen: it clears the pen that it goes over.
constexpr Grid rise_of_hop(Grid own_pen, Grid pen_under) {
  constexpr Grid least = 100, clear = 45;
  return std::max(least, (pen_under + own_pen) / 2 + clear);
}

/// One wire as drawn: vertices from its first terminal to its second, horizontal and vertical in turn. Wires of one net may share
/// stretches of line.
struct Course {
  std::vector<GridPoint> points;
  std::vector<Hop> hops;
};

struct PlacedLabel {
  int wire = -1;
  GridBox box;
  bool is_upright = false;   ///< reads from the right edge of the sheet
  bool at_from_end = true;   ///< which end it belongs to
};

/// A charge against a wire, by its name in RouteWeights.
struct Charge {
  int wire = -1;
  std::string reason;
  long cost = 0;
};

/// What the engine chose for a joint, or for a box with a terminal that several wires reach, each at a place of its own.
struct SettledJoint {
  int box = -1;
  Grid width = 0, height = 0;
  std::vector<GraphTerminal> terminals;
};

struct LayoutWarning {
  std::string wire;
  std::string message;
};

struct Laid {
  Grid width = 0, height = 0;
  std::vector<PlacedBox> boxes;      ///< by box
  std::vector<SettledJoint> joints;  ///< joints and boxes with wide terminals, by box
  std::vector<GridBox> bands;        ///< by zone
  std::vector<Course> courses;       ///< by wire
  std::vector<GridPoint> dots;       ///< where three directions of one net meet
  std::vector<PlacedLabel> labels;
  std::vector<Charge> charges;
  std::vector<LayoutWarning> warnings;
};

struct LayoutRoom {
  Grid width = 0, height = 0;
};

struct LayoutOptions {
  const Laid* earlier = nullptr;        ///< a former placement to stay near, boxes matched by name
  const Graph* earlier_graph = nullptr;
  /// What a fresh drawing should stay within; nothing: any size will do. Of drawings about as good, one that does is taken. Once one is
  /// found that is far too large, no better one is looked for.
  std::optional<LayoutRoom> room = std::nullopt;
};

/// The whole engine. Same graph, same result. Never fails: what could not be drawn well is in `warnings`.
Laid lay_out(const Graph& graph, const LayoutOptions& options = {});

/// The same for each of several graphs, side by side on as many processors as there are.
std::vector<Laid> lay_out_each(const std::vector<Graph>& graphs, const LayoutOptions& options = {});

/// The boxes by row and column that a drawing would begin with. Graphs that differ in name and wished shape alone and begin alike get the
/// same drawing.
using FirstRows = std::vector<std::vector<std::vector<int>>>;
FirstRows first_rows(const Graph& graph);

/// The earlier drawing with a small edit worked in: what is known stays where it was. The same graph gives the very same drawing.
/// Nothing when too much has changed; then a fresh drawing is due.
std::optional<Laid> lay_out_near(const Graph& graph, const Laid& earlier, const Graph& earlier_graph);

/// The graph with its joints and wide terminals as they were laid out.
Graph with_settled_joints(const Graph& graph, const Laid& laid);

}  // namespace loomfolio
