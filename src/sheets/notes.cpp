// SPDX-License-Identifier: MIT
// Lines to write on: what was measured, changed or asked.
#include <utility>

#include "sheets/page_flow.h"
#include "sheets/sheet_makers.h"

namespace loomfolio {

std::vector<Sheet> make_notes(const SheetContext& context) {
  constexpr Millimetres line_apart(9);
  PageFlow flow(context, {"notes", context.words()("notes.title"), context.words()("notes.intro")});
  while (flow.room() > line_apart) {
    Block line{flow.width(), line_apart, {TagOpenItem{"Artifact", {}}}};
    add_line(line.items, {{}, line_apart}, {flow.width(), line_apart}, {look::hairline_grey, look::line});
    line.items.push_back(TagCloseItem{});
    flow.add(std::move(line), {});
  }
  return flow.take();
}

}  // namespace loomfolio
