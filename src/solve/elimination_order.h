// SPDX-License-Identifier: MIT
// In which order the rows of a sparse symmetric matrix are eliminated. For matrix.cpp only.
#pragma once

#include <vector>

#include "solve/matrix.h"

namespace loomfolio {

/// order[old] = new, for `size` rows with these places.
std::vector<int> find_elimination_order(int size, const std::vector<MatrixEntry>& entries);

}  // namespace loomfolio
