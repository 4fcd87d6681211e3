// SPDX-License-Identifier: MIT
#include "sheets/change_bars.h"

#include <algorithm>
#include <cmath>
#include <tuple>

#include "base/type_size.h"
#include "sheets/draw.h"
#include "sheets/print_text.h"

namespace loomfolio {
namespace {

constexpr Millimetres bar_x(14.5), change_bar_width(1.2), bar_join(4), note_x(11.5), note_foot(30), text_pad(0.7);
constexpr Millimetres touching(2);  // between two texts of one label
constexpr double cap_share = 0.75;  // of the type size: a capital with its accent

struct SaidText {
  const TextItem* item;
  std::string key;
};

/// The line that a text stands on, and where it begins and ends along it.
struct TextLine {
  bool is_upright;
  long line;
  Millimetres from, to;
};

TextLine run_of(const TextItem& text, const TextMeasure& measure) {
  const Millimetres width = measure.measure(text.text, text.style).width;
  const Millimetres back = width * share_before(text.align);
  const Millimetres across = text.is_upright ? text.at.x : text.at.y;
  const Millimetres from = (text.is_upright ? Millimetres(0) - text.at.y : text.at.x) - back;
  return {text.is_upright, std::lround(across.number() * 10), from, from + width};
}

bool is_drawing(const Sheet& sheet) { return sheet.width > sheet.height; }

/// The texts of a sheet by line and place, each with the one before it.
std::vector<SaidText> keyed_texts(const Sheet& sheet, const TextMeasure& measure) {
  std::vector<std::pair<TextLine, SaidText>> texts;
  for (const Item& item : sheet.items)
    if (const auto* text = std::get_if<TextItem>(&item)) texts.push_back({run_of(*text, measure), {text, {}}});
  std::stable_sort(texts.begin(), texts.end(), [](const auto& a, const auto& b) {
    return std::tie(a.first.is_upright, a.first.line, a.first.from) < std::tie(b.first.is_upright, b.first.line, b.first.from);
  });
  std::vector<SaidText> keyed;
  for (std::size_t i = 0; i < texts.size(); ++i) {
    const TextLine &run = texts[i].first, &last = texts[i > 0 ? i - 1 : 0].first;
    const bool is_one_line = i > 0 && run.is_upright == last.is_upright && run.line == last.line;
    const bool follows = is_one_line && (!is_drawing(sheet) || run.from - last.to < touching);
    SaidText text = texts[i].second;
    text.key = (follows ? texts[i - 1].second.item->text : std::string()) + '\n' + text.item->text;
    keyed.push_back(std::move(text));
  }
  return keyed;
}

struct BarStretch {
  Millimetres top, bottom;
};

Millimetres cap_height(const TextItem& text) { return Millimetres(text.style.points * mm_per_point * cap_share); }

/// From top to bottom, those that nearly touch as one.
std::vector<BarStretch> join_stretches(std::vector<BarStretch> stretches) {
  std::sort(stretches.begin(), stretches.end(), [](const BarStretch& a, const BarStretch& b) { return a.top < b.top; });
  std::vector<BarStretch> joined;
  for (const BarStretch& one : stretches) {
    if (joined.empty() || one.top > joined.back().bottom + bar_join)
      joined.push_back(one);
    else
      joined.back().bottom = std::max(joined.back().bottom, one.bottom);
  }
  return joined;
}

BarStretch reach_of(const TextItem& text, const TextMeasure& measure) {
  if (text.is_upright) return {text.at.y - measure.measure(text.text, text.style).width, text.at.y};
  return {text.at.y - cap_height(text), text.at.y + Millimetres(0.8)};
}

Rect box_of(const TextItem& text, const TextMeasure& measure) {
  const Millimetres width = measure.measure(text.text, text.style).width, height = cap_height(text);
  const Millimetres back = width * share_before(text.align);
  const Rect box = text.is_upright ? Rect{text.at.x - height, text.at.y - width + back, height, width}
                                   : Rect{text.at.x - back, text.at.y - height, width, height};
  return {box.x - text_pad, box.y - text_pad, box.width + text_pad * 2, box.height + text_pad * 2};
}

std::string note_of(const EarlierFolio& earlier, const Words& words) {
  std::string before = earlier.revision.empty() ? std::string() : words("changes.revision") + " " + earlier.revision;
  if (!earlier.date.empty()) before += (before.empty() ? "" : ", ") + print_date(earlier.date, words);
  return words("changes.bar", {{"before", before.empty() ? "\u2013" : before}});
}

}  // namespace

SaidTexts gather_said(const std::vector<Sheet>& sheets, const TextMeasure& measure) {
  SaidTexts said;
  for (const Sheet& sheet : sheets)
    for (SaidText& text : keyed_texts(sheet, measure)) said.insert(std::move(text.key));
  return said;
}

void put_change_bars(std::vector<Sheet>& sheets, const EarlierFolio& earlier, const Words& words, const TextMeasure& measure) {
  for (Sheet& sheet : sheets) {
    std::vector<BarStretch> changed;
    std::vector<Rect> boxes;
    for (const SaidText& text : keyed_texts(sheet, measure)) {
      if (earlier.said.count(text.key) > 0) continue;
      changed.push_back(reach_of(*text.item, measure));
      if (is_drawing(sheet)) boxes.push_back(box_of(*text.item, measure));
    }
    if (changed.empty()) continue;
    sheet.items.push_back(TagOpenItem{"Artifact", {}});
    for (const BarStretch& one : join_stretches(std::move(changed)))
      add_filled_rect(sheet.items, {bar_x, one.top, change_bar_width, one.bottom - one.top}, look::ink);
    for (const Rect& box : boxes) add_rect(sheet.items, box, {look::ink, look::line});
    TextItem note{{note_x, sheet.height - note_foot}, note_of(earlier, words), look::table_small, look::ink, Align::left, true};
    sheet.items.push_back(std::move(note));
    sheet.items.push_back(TagCloseItem{});
  }
}

}  // namespace loomfolio
