// SPDX-License-Identifier: MIT
// Where a cavity stands on the face of a connector, by row and column: for who counts instead of comparing drawings.
#pragma once

#include <optional>
#include <string>

#include "model/kind.h"
#include "model/words.h"

namespace loomfolio {

/// Counted as drawn: rows from the top, columns from the left, from 1. A column counts where any row has a cavity.
struct CavityPlace {
  int row = 1, column = 1;
  int rows = 1;  ///< of the face
};

/// Of the kind's terminal of that index. Nothing for a terminal that is no cavity of a connector's wire or mating side,
/// for the only one of its face, and where the rows are set off against each other, so that there are no columns.
std::optional<CavityPlace> find_cavity_place(const Kind& kind, std::size_t terminal);

/// 'row 2, column 3'; 'number 3 from the left' in a single row; empty where there is no place to count.
std::string cavity_place_text(const Kind& kind, std::size_t terminal, const Words& words);

}  // namespace loomfolio
