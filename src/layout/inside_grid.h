// SPDX-License-Identifier: MIT
// Rows of items and the channels of rails between them. Only inside_*.cpp include this.
#pragma once

#include <utility>
#include <vector>

#include "layout/inside_flow.h"

namespace loomfolio::inside {

enum class ItemType : std::uint8_t { terminal, block, lane };

/// Something with a place in a row: a terminal in the first or last row, a block, or the lane of a node that passes by.
struct GridItem {
  ItemType type = ItemType::lane;
  int index = -1;  ///< into Flow::terminals or Flow::blocks; of a lane: its node
  bool is_mirrored = false;
  Grid low = 0, high = 0;  ///< room across, from its centre
  std::vector<BlockPin> pins;
  Grid x = 0;  ///< its centre
};

/// A terminal on the low or high side, and the channel it opens into.
struct SideTerminal {
  int index = -1;  ///< into Flow::terminals
  int channel = 0;
};

/// rows[0] start terminals, rows[1 .. n] blocks and lanes, rows[n + 1] end terminals; channel c lies between rows c and
/// c + 1.
struct FlowGrid {
  std::vector<std::vector<GridItem>> rows;
  std::vector<SideTerminal> sides;  ///< in the kind's order
};

FlowGrid make_grid(const Flow& flow);

/// Gives every item its x, quickly: for comparing orders.
void settle_across(const Flow& flow, FlowGrid& grid);
/// Gives every item its x: leads straight where they can be.
void place_across(const Flow& flow, FlowGrid& grid);

/// A node's lines in one channel.
struct Rail {
  int node = -1;
  std::vector<Grid> from_start, from_end;  ///< x of the pins in the row above and in the row below
  bool reaches_low = false, reaches_high = false;
  int side_terminal = -1;  ///< index into FlowGrid::sides of the terminal it serves, -1: none
  Grid least = 0, most = 0;
  bool is_straight = false;  ///< one line from pin to pin, no rail
  int track = 0;             ///< from 0, at the start side of the channel
};

struct Channel {
  std::vector<Rail> rails;
  int tracks = 0;
  int crossings = 0;
};

std::vector<Channel> route_channels(const Flow& flow, const FlowGrid& grid);

/// What the search makes small.
long cost_of(const Flow& flow, const FlowGrid& grid, const std::vector<Channel>& channels);

/// Orders rows and turns blocks until no single change is better.
void search_orders(const Flow& flow, FlowGrid& grid);

}  // namespace loomfolio::inside
