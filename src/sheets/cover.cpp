// SPDX-License-Identifier: MIT
#include "sheets/draw.h"
#include "sheets/frame.h"
#include "sheets/sheet_makers.h"

namespace loomfolio {

std::vector<Sheet> make_cover(const SheetContext& context) {
  const PageShape page = upright_page(context.input.text_paper);
  const Document& document = context.build().document;
  Sheet sheet;
  sheet.id = context.id_prefix + "cover";
  sheet.title = context.words()("cover.title");
  sheet.width = page.width;
  sheet.height = page.height;
  add_text(sheet.items, {page.body.x, page.body.y + Millimetres(8)}, document.title, look::title);
  return {sheet};
}

}  // namespace loomfolio
