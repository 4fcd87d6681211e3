// SPDX-License-Identifier: MIT
// From courses to exact places: the order and place of every run in its alley or channel, and of every body.
#pragma once

#include <vector>

#include "layout/route.h"
#include "layout/strip.h"

namespace loomfolio::laying {

struct Tracks {
  std::vector<Strip> alleys;               ///< by alley
  std::vector<Strip> channels;             ///< by channel
  std::vector<std::vector<Grid>> alley_x;  ///< by alley and piece
  std::vector<std::vector<Grid>> channel_y;
  std::vector<Grid> body_x, border_x, row_y, row_height;
};

/// Orders the runs of every alley. Pieces' sources are components.
void order_alleys(const Plan& plan, const Streets& streets, const Routes& routes, Tracks& tracks);

/// Places bodies, borders and alley runs from left to right.
void place_across(const Plan& plan, const Streets& streets, const Routes& routes, Tracks& tracks);

/// Orders the runs of every channel, whose stubs now have exact places.
void order_channels(const Plan& plan, const Streets& streets, const Routes& routes, Tracks& tracks);

/// Places rows and channel runs from top to bottom.
void place_down(const Plan& plan, const Streets& streets, Tracks& tracks);

/// The piece of an alley's strip by which a component leaves it upwards (`StripSide::low`) or downwards; -1 when there is none.
int open_piece(const Strip& strip, int component, StripSide end);

}  // namespace loomfolio::laying
