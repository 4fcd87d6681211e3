// SPDX-License-Identifier: MIT
// Numbers that the parts of WhatIf share. For what_if*.cpp only.
#pragma once

#include <cstddef>

namespace loomfolio::what_if_limits {

inline constexpr double open_leak = 1e-9;   // S: what is left of an opened branch
inline constexpr double least_line = 1e-6;  // S: no line in the matrix is flatter
inline constexpr double least_near = 5e-6;  // ohm: less is a machine's battery seen from another's fuse box
inline constexpr std::size_t most_ports = 48;  // changed places from which solving the whole circuit anew takes no longer

}  // namespace loomfolio::what_if_limits
