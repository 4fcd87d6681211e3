// SPDX-License-Identifier: MIT
// The little drawing inside a part while it is being laid out. Only inside_*.cpp include this.
//
// Everything flows one way: from the START side to the END side of the box. Most parts flow down the page (start =
// top); parts whose terminals stand mostly left and right flow across it (start = left), and are laid out as if they
// flowed down, then swapped over the diagonal. So in here x is across the flow and y along it, LOW is the side of small
// x, HIGH that of large x.
//
// clang-format off
//        start  o     o        row 0      start terminals
//               |  +--+        channel 0  rails
//              [ ]   / ]       row 1      blocks: an element with its texts, a pole, a table
//               +--+--+        channel 1
//        end       o           row 2      end terminals
// clang-format on
#pragma once

#include <string>
#include <vector>

#include "layout/inside_drawing.h"

namespace loomfolio::inside {

enum class FlowSide : std::uint8_t { start, high, end, low };
enum class Edge : std::uint8_t { start, end };

struct FlowTerminal {
  int terminal = -1;
  int node = -1;
  FlowSide side = FlowSide::start;
  int taps = 1;
  bool is_open = false;
  Grid name_x = 0, name_y = 0;  ///< room of its name across and along the flow
};

struct BlockPin {
  int node = -1;
  Grid x = 0;  ///< from the block's centre
  Edge edge = Edge::start;
};

/// A text of a block; `x`, `y` is its low-start corner from the block's centre.
struct BlockText {
  TextRole role = TextRole::element;
  std::string text;
  TextStyle style;
  Grid x = 0, y = 0, width_x = 0, width_y = 0;
  Grid anchor_x = 0;  ///< x of the pin it belongs to: kept when the block is mirrored
};

/// What moves together: coils with their contacts, poles of one switch.
struct Gang {
  int gang = -1;
  bool drives = false;  ///< the coil
};

/// One element with its texts. Extents are from its centre and hold its texts; pins stand on the start and end edges of
/// its symbol, at -length/2 and +length/2.
struct Block {
  std::vector<PlacedSymbol> symbols;  ///< none or one; places from the block's centre, in flow directions
  std::vector<SwitchTable> tables;    ///< none or one
  std::vector<InnerLine> lines;       ///< its own leads
  std::vector<BlockPin> pins;
  std::vector<BlockText> texts;
  Grid low = 0, high = 0;             ///< room across
  Grid start = 0, end = 0;            ///< where its pins stand along: from the centre, both positive
  Grid text_start = 0, text_end = 0;  ///< room along, with texts
  Gang gang;
  Grid drive_x = 0;        ///< where the dashed link meets it, on the low side; mirrored for the high side
  bool is_bridge = false;  ///< all its pins on one edge
  bool is_linked = false;  ///< a dashed link may pass through its middle
  int row = 0;
};

/// A part of the flow: blocks, terminals and the nodes that join them.
struct Flow {
  bool is_transposed = false;
  int nodes = 0;
  std::vector<FlowTerminal> terminals;  ///< in the kind's order
  std::vector<Block> blocks;
  int rows = 1;  ///< rows of blocks, at least 1
};

/// One inside of the part with its nodes joined over plain links, and which of its nodes are drawn.
struct Shown {
  int inside = -1;
  std::vector<int> nodes;  ///< by Inside::nodes; -1: not drawn
};

/// What a request means: shown terminals and insides.
struct Plan {
  const InsideRequest* request = nullptr;
  const Part* part = nullptr;
  const Kind* kind = nullptr;
  int nodes = 0;             ///< terminals first, then inner points
  std::vector<int> ends;     ///< by terminal: wire ends; -1 not shown
  std::vector<int> node_of;  ///< by raw node: the node that stands for it after plain links are joined
  std::vector<Shown> shown;
};

Plan plan_inside(const InsideRequest& request);
Flow make_flow(const Plan& plan);

/// Sets rows of the blocks, turns each so that it flows from start to end.
void rank_blocks(Flow& flow);

/// Room of a text across and along the flow.
struct FlowSize {
  Grid x = 0, y = 0;
};
FlowSize size_in_flow(const Plan& plan, const std::string& text, const TextStyle& style, bool is_transposed);

/// Places rows, rails and links; the result is in flow directions and has no part name yet.
PartDrawing place_flow(const Flow& flow);

/// Swaps x and y: from flow to page for parts that flow across.
void transpose(PartDrawing& drawing);

/// Opens room for the names of terminals and sets them, and the part's name and value where they crowd nothing.
void put_terminal_names(const Plan& plan, PartDrawing& drawing);
void put_part_name(const Plan& plan, PartDrawing& drawing);

/// Parts drawn in a manner of their own.
PartDrawing draw_connector(const Plan& plan);
PartDrawing draw_control_unit(const Plan& plan);

inline constexpr Grid text_gap = 70;    ///< between a text and what it belongs to
inline constexpr Grid ring_room = 130;  ///< what a terminal's ring takes beside its name
constexpr Grid up_to_module(Grid g) { return (g + module - 1) / module * module; }

/// Whether the part's value stands at a fuse inside it: the rating of one that has a name, which one would else take for the part's own,
/// or the ratings that the fitter may choose from.
bool is_value_of_fuse(const Part& part);

}  // namespace loomfolio::inside
