// SPDX-License-Identifier: MIT
// Brackets below a row of columns, one a pair of zones that wires run between. Short ones hang high and long ones deep:
//
//     +-----+  +-----+  +-----+
//     | bar |  |frame|  |seat |
//     +-+-+-+  +--+--+  +-+-+-+
//       | +--12---+       | |
//       +--------7--------+ |          ends that go right leave a column's right half, the deepest first,
//                                      so that brackets from one column never cross each other
#pragma once

#include <vector>

#include "model/build.h"

namespace loomfolio {

struct OverviewBracket {
  std::size_t left = 0, right = 0;  ///< columns
  int wires = 0;
  int level = 0;  ///< 0 hangs highest
  Millimetres left_x, right_x;
};

/// Of the build's wires, with levels: no bracket stands on one of its own level. `zones`: the zone of each column, by index;
/// every zone with a wire's end is among them.
std::vector<OverviewBracket> make_overview_brackets(const Build& build, const std::vector<std::size_t>& zones);

/// Sets the ends around the middle of each column, in an order in which those of one column do not cross.
void place_bracket_ends(std::vector<OverviewBracket>& brackets, const std::vector<Millimetres>& middles);

}  // namespace loomfolio
