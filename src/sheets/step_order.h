// SPDX-License-Identifier: MIT
// Which part is joined next, where the order is free.
#pragma once

#include <cstddef>
#include <vector>

#include "base/quantity.h"

namespace loomfolio {

/// By the heights of what may come next, in its order: 0 when the first fits into the room; else the tallest that does;
/// 0 when none does, or there is none.
std::size_t choose_next(const std::vector<Millimetres>& heights, Millimetres room);

}  // namespace loomfolio
