// SPDX-License-Identifier: MIT
// Where wires can go once rows and their order are chosen: channels above, between and below the rows, and alleys between the bodies
// of a row and beyond its ends. Channel k lies above row k.
#pragma once

#include <vector>

#include "layout/plan.h"

namespace loomfolio::laying {

struct Alley {
  int row = -1;
  int left_body = -1, right_body = -1;   ///< -1: none, the row ends here
};

struct Streets {
  std::vector<std::vector<int>> row_bodies;   ///< by row: left to right through all columns
  std::vector<Alley> alleys;                  ///< by alley; the number is alley_right_of
};

Streets make_streets(const Plan& plan);

/// The alley to the right of a body, or the first of its row when there is none.
inline int alley_right_of(const Plan& plan, int row, int left_body) {
  return left_body >= 0 ? left_body : static_cast<int>(plan.bodies.size()) + row;
}

/// One stretch of a course: in an alley or in a channel.
struct Leg {
  bool in_alley = false;
  int street = -1;       ///< alley or channel
  Grid x = 0;            ///< in an alley: about where it runs
  friend bool operator==(const Leg&, const Leg&) = default;
};

/// A wire's course from its first pin to its second: alleys and channels in turn.
using Route = std::vector<Leg>;
using Routes = std::vector<Route>;   ///< by wire

}  // namespace loomfolio::laying
