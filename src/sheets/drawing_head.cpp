// SPDX-License-Identifier: MIT
#include "sheets/drawing_head.h"

#include "sheets/look.h"

namespace loomfolio {

void add_drawing_head(Items& items, const SheetContext& context, const Rect& body, const std::string& title) {
  const Millimetres baseline = body.y + Millimetres(6);
  items.push_back(TagOpenItem{"H1", {}});
  add_text(items, {body.x, baseline}, title, look::title);
  items.push_back(TagCloseItem{});
  if (context.group.empty()) return;
  const Millimetres room = body.width - context.measure().measure(title, look::title).width - Millimetres(4);
  const FittedText group = fit_text(context.group, look::heading, room, context.measure());
  items.push_back(TagOpenItem{"P", {}});
  add_text(items, {body.right(), baseline}, group.text, group.style, look::ink, Align::right);
  items.push_back(TagCloseItem{});
}

}  // namespace loomfolio
