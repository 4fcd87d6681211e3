// SPDX-License-Identifier: MIT
// Nodes, rows and branches are counted in int, places of a vector are not.
#pragma once

#include <cstddef>

namespace loomfolio {

/// Not negative.
inline std::size_t at(int index) { return static_cast<std::size_t>(index); }

}  // namespace loomfolio
