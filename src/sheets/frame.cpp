// SPDX-License-Identifier: MIT
#include "sheets/frame.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <iterator>

#include "base/text.h"
#include "sheets/draw.h"
#include "sheets/look.h"
#include "sheets/print_text.h"
#include "sheets/right_to_left.h"
#include "sheets/text_flow.h"

namespace loomfolio {
namespace {

/// Letters of the grid's rows; I and O are left out, as they read like 1 and 0 (common practice, also ISO 5457).
constexpr std::string_view row_letters = "ABCDEFGHJKLMNPQRSTUVWXYZ";

int even_fields(Millimetres length) {
  return std::max(2, 2 * static_cast<int>(std::lround(length / look::grid_field / 2)));
}

Rect strip_at_foot(const Rect& frame) {
  return {frame.x, frame.bottom() - look::strip_height, frame.width, look::strip_height};
}

struct StripField {
  double share;  ///< of the strip's width
  std::string_view head;
  std::string value;
};

void draw_field(Items& items, const Rect& field, const StripField& content, const Words& words,
                const TextMeasure& measure) {
  const Millimetres pad(2), room = field.width - pad * 2;
  add_text(items, {field.x + pad, field.y + Millimetres(3.4)}, words(content.head), look::strip_head, look::grey);
  const FittedText value = fit_text(content.value, look::strip_value, room, measure);
  if (value.text != content.value) {
    Block lines =
        set_paragraph({{{content.value, look::strip_value_small, look::ink, {}}}, Align::left, {}}, room, {measure});
    if (lines.height <= look::line_step(look::strip_value_small) * 2.01)
      return place_block(items, std::move(lines), {field.x + pad, field.y + Millimetres(3.7)});
  }
  add_text(items, {field.x + pad, field.y + Millimetres(8)}, value.text, value.style);
}

void draw_strip(Items& items, const PageShape& page, const TitleStrip& strip, const Words& words,
                const TextMeasure& measure) {
  const std::string revision = strip.revision + (strip.date.empty() ? "" : "   " + print_date(strip.date, words));
  const std::array<StripField, 6> fields{{
      {0.25, strip.scope == Scope::kit ? "strip.kit" : "strip.machine", strip.title},
      {0.13, "strip.job", strip.job},
      {0.22, "strip.revision", revision},
      {0.17, "strip.checked_by", strip.is_draft ? words("strip.draft") : strip.checked_by},
      {0.12, "strip.fingerprint", short_fingerprint(strip.fingerprint)},
      {0.11, "strip.sheet",
       words("strip.sheet_of", {{"sheet", std::to_string(strip.sheet)}, {"of", std::to_string(strip.of)}})},
  }};
  const Pen edge{look::ink, page.columns > 0 ? look::part_line : look::heavy_line};
  const Rect& box = page.strip;
  add_line(items, {box.x, box.y}, {box.right(), box.y}, edge);
  Millimetres x = box.x;
  for (const StripField& field : fields) {
    const Millimetres width = box.width * field.share;
    if (x > box.x) add_line(items, {x, box.y}, {x, box.bottom()}, {look::grey, look::thin_line});
    draw_field(items, {x, box.y, width, box.height}, field, words, measure);
    x += width;
  }
}

void draw_grid(Items& items, const PageShape& page) {
  const Rect& f = page.frame;
  const Pen tick{look::ink, look::line};
  const Millimetres column = f.width / page.columns, row = f.height / page.rows;
  for (int i = 0; i < page.columns; ++i) {
    const Millimetres x = f.x + column * i;
    if (i > 0) add_line(items, {x, f.y}, {x, f.y + look::grid_tick}, tick);
    add_text(items, {x + column / 2, f.y - Millimetres(1.2)}, std::to_string(i + 1), look::least, look::grey,
             Align::centre);
  }
  for (int i = 0; i < page.rows; ++i) {
    const Millimetres y = f.y + row * i;
    if (i > 0) add_line(items, {f.x, y}, {f.x + look::grid_tick, y}, tick);
    const std::string letter(1, row_letters[static_cast<std::size_t>(i) % row_letters.size()]);
    add_text(items, {f.x - Millimetres(2.5), y + row / 2 + Millimetres(0.9)}, letter, look::least, look::grey,
             Align::centre);
  }
}

}  // namespace

PageShape upright_page(const Paper& paper) {
  PageShape page;
  page.width = paper.width;
  page.height = paper.height;
  page.frame = {paper.binding, paper.margin, paper.width - paper.binding - paper.margin,
                paper.height - paper.margin * 2};
  page.strip = strip_at_foot(page.frame);
  page.body = {page.frame.x, page.frame.y, page.frame.width, page.strip.y - look::strip_gap - page.frame.y};
  return page;
}

PageShape across_page(const Paper& paper) {
  PageShape page;
  page.width = paper.height;
  page.height = paper.width;
  const Millimetres m = paper.frame_margin;
  page.frame = {paper.binding, m, page.width - paper.binding - m, page.height - m * 2};
  page.strip = strip_at_foot(page.frame);
  const Millimetres pad = look::frame_padding;
  page.body = {page.frame.x + pad, page.frame.y + pad, page.frame.width - pad * 2,
               page.strip.y - page.frame.y - pad * 2};
  page.columns = even_fields(page.frame.width);
  page.rows = even_fields(page.frame.height);
  return page;
}

PageShape page_of(const Sheet& sheet, const Paper& text_paper, const Paper& drawing_paper) {
  if (sheet.width <= sheet.height) return upright_page(text_paper);
  // A drawing on a larger paper keeps the margins of the usual one.
  Paper paper = drawing_paper;
  paper.width = sheet.height;
  paper.height = sheet.width;
  return across_page(paper);
}

std::string grid_cell(const PageShape& page, Point at) {
  if (page.columns == 0) return {};
  const auto field = [](Millimetres from, Millimetres place, Millimetres length, int count) {
    const int index = static_cast<int>(std::floor((place - from) / length * count));
    return std::clamp(index, 0, count - 1);
  };
  const int row = field(page.frame.y, at.y, page.frame.height, page.rows);
  const int column = field(page.frame.x, at.x, page.frame.width, page.columns);
  return row_letters[static_cast<std::size_t>(row) % row_letters.size()] + std::to_string(column + 1);
}

TitleStrip title_strip_of(const Document& document, const std::string& fingerprint) {
  TitleStrip strip;
  strip.scope = document.scope;
  strip.title = document.title;
  strip.job = document.job;
  strip.revision = document.revision;
  strip.date = document.date;
  strip.checked_by = document.checked_by;
  strip.fingerprint = fingerprint;
  return strip;
}

void put_frame(Sheet& sheet, const PageShape& page, const TitleStrip& strip, const Words& words,
               const TextMeasure& measure) {
  Items& items = sheet.items;
  items.push_back(TagOpenItem{"Artifact", {}});
  if (page.columns > 0) {
    draw_grid(items, page);
    add_rect(items, page.frame, {look::ink, look::frame_line});
  }
  Items fields;
  draw_strip(fields, page, strip, words, measure);
  if (words.is_right_to_left()) mirror_items(fields, page.strip.x + page.strip.right());
  std::move(fields.begin(), fields.end(), std::back_inserter(items));
  if (strip.is_draft)
    add_text(items, {page.width / 2, Millimetres(6.8)}, words("strip.draft_head"), look::draft, look::safety_red,
             Align::centre);
  items.push_back(TagCloseItem{});
}

}  // namespace loomfolio
