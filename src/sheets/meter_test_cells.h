// SPDX-License-Identifier: MIT
// What the rows of the meter tests have in common.
#pragma once

#include <string>
#include <vector>

#include "sheets/folio.h"
#include "sheets/table.h"

namespace loomfolio {

/// A box to tick, as high as the row's letters.
Cell test_tick_cell();

/// A line to write a reading on.
Cell reading_blank_cell();

/// 'Key switch: on; Start button: on', or that all is at rest.
std::string list_settings(const Build& build, const Words& words, const std::vector<Setting>& settings);

}  // namespace loomfolio
