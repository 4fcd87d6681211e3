// SPDX-License-Identifier: MIT
// The figures of the crimps' pages: a row of steps, a row of good and bad ones.
#pragma once

#include <vector>

#include "sheets/fitting_uses.h"
#include "sheets/page_flow.h"

namespace loomfolio {

/// '6 mm (0.24 in)': one number, told twice.
std::string both_units(Millimetres length, const Words& words);

/// The steps of a fitting that is used as said, three in a row: a figure with its number, the sentence under it.
std::vector<Block> step_rows(const PageFlow& flow, FittingShape shape, const std::vector<FittingUse>& uses);

/// Good and bad ones side by side, three in a row, with a tick or a cross; none where there is nothing to judge.
std::vector<Block> example_rows(const PageFlow& flow, FittingShape shape, const Wire& wire);

/// What is otherwise where several wires share one fitting, and how that goes wrong; none where none do.
std::vector<Block> shared_rows(const PageFlow& flow, FittingShape shape, const std::vector<FittingUse>& uses);

}  // namespace loomfolio
