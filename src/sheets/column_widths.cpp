// SPDX-License-Identifier: MIT
// Column widths: every column has a natural width (its widest line unbroken) and a least one (its longest word).
// Columns that keep their lines get the natural width; wrapping columns share the rest between least and natural.
#include <algorithm>
#include <cctype>

#include "base/text.h"
#include "sheets/reference.h"
#include "sheets/table.h"

namespace loomfolio {
namespace {

struct Wish {
  Millimetres natural, least;
  void at_least(Millimetres n, Millimetres l) {
    natural = std::max(natural, n);
    least = std::max(least, l);
  }
};

Millimetres longest_word(const std::string& text, const TextStyle& style, const TextMeasure& measure) {
  Millimetres longest;
  for (const std::string& word : split(text, ' ')) longest = std::max(longest, measure.measure(word, style).width);
  return longest;
}

Wish wish_of(const Paragraph& line, const TextMeasure& measure) {
  Wish wish;
  for (const Span& span : line.spans) {
    const std::string text = widest(span.text);
    wish.natural += measure.measure(text, span.style).width;
    wish.least = std::max(wish.least, longest_word(text, span.style, measure));
  }
  return wish;
}

Wish wish_of(const Cell& cell, const TextMeasure& measure) {
  Wish wish;
  const Millimetres picture = cell.picture ? cell.picture->width + look::picture_gap : Millimetres(0);
  for (const Paragraph& line : cell.lines) {
    const Wish one = wish_of(line, measure);
    wish.at_least(one.natural + picture, one.least + picture);
  }
  wish.at_least(picture, picture);
  return wish;
}

std::vector<Wish> column_wishes(const Table& table, const TextMeasure& measure) {
  std::vector<Wish> wishes(table.columns.size());
  for (std::size_t c = 0; c < wishes.size(); ++c) {
    // Heads may always wrap, so a long head does not widen a column of short figures.
    const Millimetres head = longest_word(table.columns[c].head, look::table_head, measure);
    wishes[c].at_least(head, head);
    for (const Row& row : table.rows)
      if (!row.is_group && c < row.cells.size()) {
        const Wish one = wish_of(row.cells[c], measure);
        wishes[c].at_least(one.natural, one.least);
      }
    const PointPlace point = find_point(table, c, measure);
    wishes[c].at_least(point.before + point.after, point.before + point.after);
    if (table.columns[c].wrapping == Wrapping::keeps) wishes[c].least = wishes[c].natural;
  }
  return wishes;
}

}  // namespace

std::size_t point_in(const std::string& text) { return std::min(text.find('.'), text.size()); }

/// Text of a cell that stands on the point: one line, one span, beginning with a digit or sign.
const Span* pointed_span(const Cell& cell) {
  if (cell.lines.empty() || cell.lines.front().spans.size() != 1) return nullptr;
  const Span& span = cell.lines.front().spans.front();
  const bool is_figure =
      !span.text.empty() && (std::isdigit(static_cast<unsigned char>(span.text[0])) != 0 || span.text[0] == '-');
  return is_figure ? &span : nullptr;
}

PointPlace find_point(const Table& table, std::size_t column, const TextMeasure& measure) {
  PointPlace place;
  if (table.columns[column].align != CellAlign::point) return place;
  for (const Row& row : table.rows) {
    const Span* span = row.is_group || column >= row.cells.size() ? nullptr : pointed_span(row.cells[column]);
    if (span == nullptr) continue;
    const std::size_t point = point_in(span->text);
    place.before = std::max(place.before, measure.measure(span->text.substr(0, point), span->style).width);
    place.after = std::max(place.after, measure.measure(span->text.substr(point), span->style).width);
  }
  return place;
}

std::vector<Millimetres> fit_columns(const Table& table, Millimetres width, const TextMeasure& measure) {
  const std::vector<Wish> wishes = column_wishes(table, measure);
  const Millimetres room = width - look::column_gap * (static_cast<double>(wishes.size()) - 1);
  Millimetres natural, least;
  double stretch = 0;
  for (std::size_t c = 0; c < wishes.size(); ++c) {
    natural += wishes[c].natural;
    least += wishes[c].least;
    stretch += table.columns[c].stretch;
  }
  std::vector<Millimetres> widths;
  for (std::size_t c = 0; c < wishes.size(); ++c) {
    const Wish& wish = wishes[c];
    if (natural <= room) {
      const double share = stretch > 0 ? table.columns[c].stretch / stretch : 0;
      widths.push_back(wish.natural + (room - natural) * share);
    } else if (least <= room) {
      const double share = natural > least ? (room - least) / (natural - least) : 0;
      widths.push_back(wish.least + (wish.natural - wish.least) * share);
    } else {
      widths.push_back(wish.least * (room / least));
    }
  }
  return widths;
}

}  // namespace loomfolio
