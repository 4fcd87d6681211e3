// SPDX-License-Identifier: MIT
// A fault chart as a picture: boxes with questions down the near side, a reading on each arrow, what to mend at the far
// side.
#pragma once

#include <string>
#include <utility>
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

/// Paragraphs as set, each once: a chart that is tried in several lengths says much the same in all of them.
class SetParagraphs {
 public:
  explicit SetParagraphs(const TypeSetting& setting) : setting_(setting) {}
  Block set(const Paragraph& paragraph, Millimetres width);

 private:
  TypeSetting setting_;
  std::vector<std::pair<Paragraph, Block>> known_;
};

/// The boxes from top to bottom, numbered from 1. An exit to the box that follows is an arrow down; others name the
/// box. `texts` are of the same setting as `style`, and may hold what an earlier try for the chart said.
Block draw_fault_chart(const std::vector<DrawnBox>& boxes, Millimetres width, const ChartStyle& style, SetParagraphs& texts);

}  // namespace loomfolio
