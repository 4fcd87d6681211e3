// SPDX-License-Identifier: MIT
// What drawings of one build and of a situation's two states have in common on their sheets.
#pragma once

#include "base/quantity.h"

namespace loomfolio {

inline constexpr Millimetres drawing_title_room{15};   ///< from the body's upper edge
inline constexpr Millimetres legend_line_height{4.6};
inline constexpr double most_drawing_growth = 1.2;     ///< of a drawing that leaves its place half empty

}  // namespace loomfolio
