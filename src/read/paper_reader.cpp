// SPDX-License-Identifier: MIT
#include "read/paper_reader.h"

#include "read/table_reader.h"

namespace loomfolio {

PlacedPaper read_paper(const TomlValue& tree, Diagnostics& findings) {
  constexpr QuantityRule size_rule{Dimension::paper_length, {100, 1500}};
  constexpr QuantityRule margin_rule{Dimension::paper_length, {3, 60}};
  TableReader table(tree, "the paper", findings);
  Paper paper;
  paper.id = table.id("id", Need::must);
  const auto width = table.quantity<Millimetres>("width", size_rule, Need::must);
  const auto height = table.quantity<Millimetres>("height", size_rule, Need::must);
  if (width && height) {
    paper.width = *width;
    paper.height = *height;
    if (*width >= *height)
      table.report(DiagnosticId::paper_not_upright, table.origin().key("width"),
                   "the paper is wider than high; sizes are given upright");
  }
  table.quantity_into(paper.binding, "binding", margin_rule);
  table.quantity_into(paper.margin, "margin", margin_rule);
  table.quantity_into(paper.frame_margin, "frame_margin", margin_rule);
  paper.larger = table.id("larger", Need::may);
  table.refuse_unknown_keys();
  return {paper, table.origin()};
}

}  // namespace loomfolio
