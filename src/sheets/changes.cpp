// SPDX-License-Identifier: MIT
// The revision history: of the document, so that all hook-ups share it.
#include "sheets/print_text.h"
#include "sheets/sheet_makers.h"
#include "sheets/table.h"

namespace loomfolio {

std::vector<Sheet> make_changes(const SheetContext& context) {
  const std::vector<Change>& changes = context.build().changes;
  if (changes.empty() || context.extent == Extent::own) return {};
  const Words& words = context.words();
  PageFlow flow(context, {"changes", words("changes.title"), words("changes.intro")});
  Table table;
  table.columns = {{words("changes.revision"), CellAlign::near, Wrapping::keeps, 0},
                   {words("changes.date"), CellAlign::near, Wrapping::keeps, 0},
                   {words("changes.what"), CellAlign::near, Wrapping::wraps, 1.2},
                   {words("changes.why"), CellAlign::near, Wrapping::wraps, 1}};
  for (const Change& change : changes)
    table.rows.push_back({{text_cell(change.revision, look::table_bold), text_cell(print_date(change.date, words)),
                           text_cell(change.what), text_cell(change.why)}});
  add_table(flow, table);
  return flow.take();
}

}  // namespace loomfolio
