// SPDX-License-Identifier: MIT
// A motorcycle from its left side, front at the left, as a sign for where along a machine a zone lies: a shape of no machine.
#pragma once

#include <vector>

#include "sheets/draw.h"

namespace loomfolio {

/// Where a zone lies on the outline, and the point below it that its line leads to.
struct OutlineMark {
  Metres along;  ///< from the front of the machine
  Point to;
};

/// Height over width of the outline with its ground.
inline constexpr double outline_shape = 1.22 / 2.1;

/// The outline as wide as it is and standing on the foot of `place`, under the marks' lines. Marks farther back than a usual
/// machine is long stretch the scale along it.
void add_machine_outline(Items& items, const Rect& place, const std::vector<OutlineMark>& marks);

}  // namespace loomfolio
