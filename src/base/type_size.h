// SPDX-License-Identifier: MIT
#pragma once

namespace loomfolio {

/// A point of type is a 72nd of an inch.
inline constexpr double mm_per_point = 25.4 / 72;

}  // namespace loomfolio
