// SPDX-License-Identifier: MIT
// A fault chart as a picture: boxes with questions down the near side, a reading on each arrow, what to mend at the far
// side.
#pragma once

#include <string>
#include <vector>

#include "sheets/draw.h"
#include "sheets/text_flow.h"

namespace loomfolio {

/// Leads on to another box when `next` is at least 0, else to an end.
struct DrawnExit {
  std::string reading;
  int next = -1;
  std::vector<Paragraph> end;
};
struct DrawnBox {
  std::vector<Paragraph> question;  ///< empty: no question, only its one end
  std::vector<DrawnExit> exits;
  int below = -1;  ///< the exit whose arrow leads down to the next box
};

struct ChartStyle {
  std::string go_to;  ///< with {number}: 'go to 7'
  TypeSetting setting;
};

/// Boxes that stand on one page: from the first to before the last.
struct ChartSpan {
  std::size_t first = 0, last = 0;
};

/// The boxes from top to bottom, numbered from 1 in the whole chart. An exit to the box that follows is an arrow down; others
/// name the box, and so does one to a box on the next page.
Block draw_fault_chart(const std::vector<DrawnBox>& boxes, ChartSpan span, Millimetres width, const ChartStyle& style);

/// How high each box stands with its ends, and how much less or more as the last of its page.
struct ChartRow {
  Millimetres height, last_height;
  bool leads_down = false;
};
std::vector<ChartRow> measure_fault_chart(const std::vector<DrawnBox>& boxes, Millimetres width, const ChartStyle& style);
Millimetres chart_height(const std::vector<ChartRow>& rows, ChartSpan span);

}  // namespace loomfolio
