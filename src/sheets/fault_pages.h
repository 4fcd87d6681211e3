// SPDX-License-Identifier: MIT
// The fault pages, and how other pages call a chart.
#pragma once

#include <string>
#include <vector>

#include "sheets/fault_plan.h"
#include "sheets/folio.h"

namespace loomfolio {

/// 'F3' for the chart of index 2 in FaultPlan::charts; also the anchor of that chart on the sheets "faults".
std::string fault_page_number(std::size_t index, const Words& words);

/// Sheets "faults": the list of what a person may see, the charts, the tables. None when the plan has no chart.
std::vector<Sheet> make_fault_finding(const SheetContext& context, const FaultPlan& plan);

}  // namespace loomfolio
