// SPDX-License-Identifier: MIT
// Which hook-up is yours: one row a variant, leading to its first sheet. Only where there is a choice.
#include <algorithm>

#include "sheets/page_flow.h"
#include "sheets/reference.h"
#include "sheets/sheet_makers.h"
#include "sheets/table.h"

namespace loomfolio {
namespace {

/// Leads to the first sheet of the hook-up.
Cell link_cell(const SheetContext& context, const Build& build) {
  const std::string target = build.variant + "/";
  const std::string text = context.words()("chooser.sheet", {{"sheet", sheet_mark(target)}});
  return {{{{{text, look::text_bold, look::accent, {target, {}}}}, Align::left, {}}}};
}

Row variant_row(const SheetContext& context, const Build& build) {
  Cell name = text_cell(build.variant_label.empty() ? build.variant : build.variant_label, look::text_bold);
  return {{name, text_cell(build.variant_when, look::text), link_cell(context, build)}};
}

}  // namespace

std::vector<Sheet> make_chooser(const SheetContext& context) {
  const FolioInput& input = context.input;
  if (input.builds.size() < 2 || !input.options.variant.empty()) return {};
  const Words& words = context.words();
  PageFlow flow(context, {"chooser", words("chooser.title"), words("chooser.intro")});
  Table table;
  table.columns = {{words("chooser.hook_up"), CellAlign::near, Wrapping::wraps, 1},
                   {words("chooser.when"), CellAlign::near, Wrapping::wraps, 2},
                   {words("chooser.go_to"), CellAlign::near, Wrapping::keeps, 0}};
  for (const SolvedBuild& solved : input.builds) table.rows.push_back(variant_row(context, solved.build));
  add_table(flow, table);
  flow.add_text(words("chooser.unsure"), look::text, look::block_gap);
  return flow.take();
}

}  // namespace loomfolio
