// SPDX-License-Identifier: MIT
// The tests in each situation: what works and what must not, with the limits of each reading and the page to go to.
#pragma once

#include "sheets/fault_pages.h"
#include "sheets/page_flow.h"

namespace loomfolio {

/// All situations of all hook-ups, one after another; hook-ups that set one alike share its table.
void add_situation_tests(PageFlow& flow, const ChartBook& faults);

}  // namespace loomfolio
