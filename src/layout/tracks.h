// SPDX-License-Identifier: MIT
// From courses to exact places: the order and place of every run in its alley or channel, and of every body.
#pragma once

#include <vector>

#include "layout/streets.h"
#include "layout/strip.h"

namespace loomfolio::laying {

struct Tracks {
  std::vector<Strip> alleys;               ///< by alley; pins' tags are pins
  std::vector<Strip> channels;             ///< by channel; pins' tags say which end of the wire they lead to: 0 or 1
  std::vector<std::vector<Grid>> alley_x;  ///< by alley and piece
  std::vector<std::vector<Grid>> channel_y;
  std::vector<Grid> body_x, border_x, row_y, row_height;
};

/// Where a channel's run of one wire is joined: to a pin, or to the wire's run in an alley.
struct ChannelEnd {
  StripSide side = StripSide::low;   ///< low: from the row above
  int pin = -1, alley = -1;          ///< one of the two
  Grid x = 0;                        ///< about where, when an alley
};

/// Both ends of the channel's leg `index` of a route, the one towards the wire's first pin first.
std::pair<ChannelEnd, ChannelEnd> ends_of_leg(const Plan& plan, const Streets& streets, const Route& route, int wire, std::size_t index);

/// Orders the runs of every alley. `body_x` is where bodies are thought to stand.
void order_alleys(const Plan& plan, const Streets& streets, const Routes& routes, const std::vector<Grid>& body_x, Tracks& tracks);

/// Places bodies, borders and alley runs from left to right.
void place_across(const Plan& plan, const Streets& streets, const Routes& routes, Tracks& tracks);

/// Orders the runs of every channel, whose stubs now have exact places.
void order_channels(const Plan& plan, const Streets& streets, const Routes& routes, Tracks& tracks);

/// Places rows and channel runs from top to bottom.
void place_down(const Plan& plan, const Streets& streets, Tracks& tracks);

/// The piece of an alley's strip by which a wire leaves it upwards (`StripSide::low`) or downwards; -1 when there is none.
int open_piece(const Strip& strip, int wire, StripSide end);

}  // namespace loomfolio::laying
