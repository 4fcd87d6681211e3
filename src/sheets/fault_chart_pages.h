// SPDX-License-Identifier: MIT
// How many questions of a chart are asked, and where it goes on on a second page.
#pragma once

#include <vector>

#include "sheets/fault_pages.h"

namespace loomfolio {

/// No page holds more questions, and no chart more than two pages.
inline constexpr std::size_t most_page_questions = 16, most_chart_questions = 2 * most_page_questions;
/// Ends of up to that many things to mend are looked through one by one; larger ones are worth a second page.
inline constexpr std::size_t most_looked_through = 4;

struct ChartRoom {
  Millimetres first, next;  ///< left for boxes on its first page and on one that it goes on
};

/// The chart's boxes, and which stand on which page.
struct PagedChart {
  std::vector<DrawnBox> boxes;
  std::vector<ChartSpan> pages;
};

/// As many questions as fit on one page. Where that leaves an end of more than `most_looked_through` things though a
/// measurement would part them, as many on two pages as it takes.
PagedChart page_chart(const FaultPlan& plan, const FaultWords& say, const FaultChart& chart, ChartRoom room, Millimetres width,
                      const ChartStyle& style);

/// Of the ends that more measurements would part, the most things to mend that stand in one.
std::size_t largest_cut_end(const FaultPlan& plan, const std::vector<ChartBox>& boxes);

}  // namespace loomfolio
