// SPDX-License-Identifier: MIT
// Where wires can go once the rows and their order are chosen: channels between rows, alleys between the parts of a row, and the
// places (stops) where alleys and terminals open onto a channel. Coordinates are first estimates; orders are exact.
#pragma once

#include <vector>

#include "layout/plan.h"

namespace loomfolio::laying {

/// What stands in a row, left to right: a body, or the border between column c and c + 1, written as -1 - c.
using RowItem = int;
inline bool is_border(RowItem item) { return item < 0; }

struct Alley {
  int row = 0, place = 0;         ///< left of item `place` of the row
  int left_body = -1, right_body = -1;
  Grid left = 0, right = 0;       ///< estimated
  bool is_usable = true;
  int stop_above = -1, stop_below = -1;  ///< on the channel above and below its row
};

/// A place where something opens onto a channel.
struct Stop {
  int channel = 0;
  Grid x = 0;
  int alley = -1, pin = -1;       ///< one of the two
  bool is_below = false;          ///< opens from the row below the channel
};

struct Streets {
  std::vector<std::vector<RowItem>> items;     ///< by row
  std::vector<int> first_alley;                ///< by row; row r has items[r].size() + 1 alleys
  std::vector<Alley> alleys;
  std::vector<Stop> stops;                     ///< sorted by channel, x
  std::vector<int> first_stop;                 ///< by channel, and one more
  std::vector<int> stop_of_pin;                ///< -1 for pins on left or right sides
  std::vector<Grid> body_x;                    ///< estimated
  std::vector<Grid> row_y, row_height;         ///< estimated
  int channels() const { return static_cast<int>(first_stop.size()) - 1; }
};

Streets make_streets(const Plan& plan);

/// The alley beside a pin on a left or right side.
int alley_of(const Plan& plan, const Streets& streets, int pin);

}  // namespace loomfolio::laying
