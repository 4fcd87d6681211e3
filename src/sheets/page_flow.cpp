// SPDX-License-Identifier: MIT
#include "sheets/page_flow.h"

#include <iterator>
#include <utility>

namespace loomfolio {
namespace {

constexpr Millimetres title_baseline(6.4), title_height(10), continued_baseline(2.6), continued_height(7), intro_gap(5);
/// Between two runs on one page; and what must be left for the second to begin there.
constexpr Millimetres run_gap(11), run_rule(5), least_run(70);

}  // namespace

PageFlow::PageFlow(const SheetContext& context, FlowStart start)
    : context_(context),
      start_(std::move(start)),
      below_(context.start),
      page_(upright_page(context.input.text_paper)) {
  if (below_.bottom - below_.top - run_gap < least_run) below_ = {};
  start_page();
}

TypeSetting PageFlow::setting() const { return {context_.measure(), context_.words().is_right_to_left()}; }

Millimetres PageFlow::full_room() const { return bottom_ - page_.body.y - continued_height; }

void PageFlow::start_page() {
  const std::size_t number = sheets_.size() + 1;
  Sheet sheet;
  sheet.id = context_.id_prefix + start_.id + (number > 1 ? "-" + std::to_string(number) : "");
  sheet.title = start_.title;
  if (number > 1)
    sheet.title = context_.words()("page.numbered", {{"title", start_.title}, {"number", std::to_string(number)}});
  sheet.width = page_.width;
  sheet.height = page_.height;
  if (number == 1 && below_.top.number() > 0) sheet.begins = below_.top + run_gap;
  sheets_.push_back(std::move(sheet));
  draw_title();
  top_ = y_;
  draw_foot();
}

void PageFlow::draw_foot() {
  bottom_ = begins_low() ? below_.bottom : page_.body.bottom();
  if (start_.foot.items.empty()) return;
  place_block(items(), start_.foot, {page_.body.x, bottom_ - start_.foot.height});
  bottom_ -= start_.foot.height + look::paragraph_gap;
}

void PageFlow::draw_title() {
  const bool is_first = sheets_.size() == 1;
  y_ = begins_low() ? sheets_.back().begins : page_.body.y;
  if (is_first && start_.title_line == TitleLine::none) return;
  const bool is_right_to_left = context_.words().is_right_to_left();
  Rect body = page_.body;
  body.y = y_;
  if (begins_low()) {
    items().push_back(AnchorItem{sheets_.back().id, {body.x, y_ - run_rule}});
    items().push_back(TagOpenItem{"Artifact", {}});
    add_line(items(), {body.x, y_ - run_rule}, {body.right(), y_ - run_rule}, {look::ink, look::heavy_line});
    items().push_back(TagCloseItem{});
  }
  const Millimetres near = is_right_to_left ? body.right() : body.x, far = is_right_to_left ? body.x : body.right();
  const Align near_align = is_right_to_left ? Align::right : Align::left;
  const Align far_align = is_right_to_left ? Align::left : Align::right;
  const Millimetres baseline = body.y + (is_first ? title_baseline : continued_baseline);

  // On a page that goes on, readers hear the text go on: the head that stands there for the eye is none of it.
  items().push_back(TagOpenItem{is_first ? "H1" : "Artifact", {}});
  loomfolio::add_text(items(), {near, baseline}, start_.title, is_first ? look::title : look::running_head,
                      is_first ? look::ink : look::grey, near_align);
  items().push_back(TagCloseItem{});
  std::string beside = context_.group;
  if (!is_first) {
    if (!beside.empty()) beside += ", ";
    beside += context_.words()("page.continued");
  }
  if (!beside.empty()) {
    const TextStyle& title_style = is_first ? look::title : look::running_head;
    const Millimetres room =
        body.width - context_.measure().measure(start_.title, title_style).width - Millimetres(4);
    const FittedText fitted = fit_text(beside, look::group_label, room, context_.measure());
    items().push_back(TagOpenItem{is_first ? "P" : "Artifact", {}});
    loomfolio::add_text(items(), {far, baseline}, fitted.text, fitted.style, look::grey, far_align);
    items().push_back(TagCloseItem{});
  }
  y_ = body.y + (is_first ? title_height : continued_height);
  if (!is_first || start_.intro.empty()) return;
  // Lines of more than about 90 characters tire the eye; the intro keeps to four of the six columns.
  Block intro = set_text(start_.intro, look::text, body.width * 0.72, setting());
  if (is_right_to_left)
    for (Item& item : intro.items) move_item(item, {body.width - intro.width, Millimetres(0)});
  const Millimetres height = intro.height;
  place_block(items(), std::move(intro), {body.x, y_});
  y_ += height + intro_gap;
}

void PageFlow::next_page() {
  // A run that began below another, and whose first block finds no room there, begins anew on a page of its own.
  if (begins_low() && is_at_top()) {
    sheets_.clear();
    below_ = {};
  }
  start_page();
}

void PageFlow::new_page() {
  if (!carries()) {
    held_.reset();
    next_page();
    return;
  }
  const auto first = items().begin() + static_cast<std::ptrdiff_t>(held_->item);
  Items carried(std::make_move_iterator(first), std::make_move_iterator(items().end()));
  items().erase(first, items().end());
  const Millimetres from = held_->y + held_->gap, height = y_ - from;
  y_ = held_->y;
  held_.reset();
  next_page();
  for (Item& item : carried) {
    const auto* anchor = std::get_if<AnchorItem>(&item);
    if (anchor == nullptr || anchor->at.y.number() > 0) move_item(item, {{}, y_ - from});  // else the page's own top
    items().push_back(std::move(item));
  }
  y_ += height;
}

void PageFlow::keep(Millimetres height) {
  if (room() < height && may_turn()) new_page();
}

void PageFlow::keep_whole(Millimetres height, Millimetres gap) {
  if (height <= full_room()) keep(height + gap);
}

std::vector<Sheet> PageFlow::take() {
  sheets_.back().free = {y_, bottom_};
  return std::move(sheets_);
}

void PageFlow::place(Block block, Millimetres gap) {
  if (may_turn() && room() < (is_at_top() ? Millimetres(0) : gap) + block.height) new_page();
  if (!is_at_top()) y_ += gap;
  const Millimetres height = block.height;
  place_block(items(), std::move(block), {page_.body.x, y_});
  y_ += height;
}

void PageFlow::add(Block block, Millimetres gap) {
  place(std::move(block), gap);
  held_.reset();
}

void PageFlow::add_text(const std::string& text, const TextStyle& style, Millimetres gap) {
  add(set_text(text, style, width(), setting()), gap);
}

void PageFlow::add_lead(Block block, Millimetres gap) {
  const Millimetres before = is_at_top() ? Millimetres(0) : gap;
  if (may_turn() && room() < before + block.height) new_page();
  if (!held_) held_ = Held{items().size(), y_, is_at_top() ? Millimetres(0) : gap};
  place(std::move(block), gap);
}

void PageFlow::add_lead(const std::string& text, Millimetres gap) {
  add_lead(set_text(text, look::text, width(), setting()), gap);
}

void PageFlow::add_heading(const std::string& text) {
  held_.reset();
  add_lead(set_paragraph({{{text, look::heading, look::ink, {}}}, Align::left, "H2"}, width(), setting()),
           look::heading_gap);
}

}  // namespace loomfolio
