// SPDX-License-Identifier: MIT
// Column widths: every column has a natural width (its widest line unbroken) and a least one (its longest word).
// Columns that keep their lines get the natural width; the others share what is left by a common cap, weighted by their
// stretch: a column that needs less keeps its natural width, and none gives way further than its longest word.
#include <algorithm>
#include <cctype>

#include "base/text.h"
#include "sheets/reference.h"
#include "sheets/table.h"

namespace loomfolio {
namespace {

struct WidthWish {
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

WidthWish wish_of(const Paragraph& line, const TextMeasure& measure) {
  WidthWish wish;
  for (const Span& span : line.spans) {
    const std::string text = widest(span.text);
    wish.natural += measure.measure(text, span.style).width;
    wish.least = std::max(wish.least, longest_word(text, span.style, measure));
  }
  return wish;
}

WidthWish wish_of(const Cell& cell, const TextMeasure& measure) {
  WidthWish wish;
  Millimetres top;
  for (const Paragraph& line : cell.lines) {
    const WidthWish one = wish_of(line, measure);
    const Millimetres picture = picture_indent(cell, top);
    wish.at_least(one.natural + picture, one.least + picture);
    top += look::line_step(line.spans.front().style);
  }
  if (cell.picture) wish.at_least(cell.picture->width, cell.picture->width);
  return wish;
}

std::vector<WidthWish> column_wishes(const Table& table, const TextMeasure& measure) {
  std::vector<WidthWish> wishes(table.columns.size());
  for (std::size_t c = 0; c < wishes.size(); ++c) {
    // Heads may always wrap, so a long head does not widen a column of short figures.
    const Millimetres head = longest_word(table.columns[c].head, look::table_head, measure);
    wishes[c].at_least(head, head);
    for (const Row& row : table.rows)
      if (!row.is_group && c < row.cells.size()) {
        const WidthWish one = wish_of(row.cells[c], measure);
        wishes[c].at_least(columns_taken(row, c) > 1 ? one.least : one.natural, one.least);
      }
    const PointPlace point = find_point(table, c, measure);
    wishes[c].at_least(point.before + point.after, point.before + point.after);
    if (table.columns[c].wrapping == Wrapping::keeps) wishes[c].least = wishes[c].natural;
  }
  return wishes;
}

}  // namespace

std::size_t columns_taken(const Row& row, std::size_t column) {
  const auto is_empty = [](const Cell& cell) {
    return !cell.picture && std::all_of(cell.lines.begin(), cell.lines.end(), [](const Paragraph& line) {
      return std::all_of(line.spans.begin(), line.spans.end(), [](const Span& span) { return span.text.empty(); });
    });
  };
  std::size_t taken = 1;
  if (!row.cells[column].runs_on) return taken;
  while (column + taken < row.cells.size() && is_empty(row.cells[column + taken])) ++taken;
  return taken;
}

Millimetres picture_top(const Cell& cell) {
  if (!cell.picture || cell.lines.empty()) return {};
  const Millimetres line = look::line_step(cell.lines.front().spans.front().style);
  return std::max(Millimetres(0), (line - cell.picture->height) / 2);
}

Millimetres picture_indent(const Cell& cell, Millimetres line_top) {
  if (!cell.picture) return {};
  const Millimetres touching(0.5);  // a line may begin this little above the picture's foot
  const bool is_beside = line_top + touching < picture_top(cell) + cell.picture->height;
  return is_beside ? cell.picture->width + look::picture_gap : Millimetres(0);
}

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

namespace {

/// Width of a column under a cap in whole 0.01 mm.
Millimetres capped(const WidthWish& wish, const Column& column, Grid cap) {
  if (column.wrapping == Wrapping::keeps) return wish.natural;
  const double weight = column.stretch > 0 ? column.stretch : 1;
  return std::clamp(to_mm(cap) * weight, wish.least, wish.natural);
}

/// The greatest cap under which all columns fit into `room`.
Grid find_cap(const std::vector<WidthWish>& wishes, const Table& table, Millimetres room) {
  Grid low = 0, high = to_grid(room) * 20;
  while (low < high) {
    const Grid middle = low + (high - low + 1) / 2;
    Millimetres sum;
    for (std::size_t c = 0; c < wishes.size(); ++c) sum += capped(wishes[c], table.columns[c], middle);
    if (sum <= room)
      low = middle;
    else
      high = middle - 1;
  }
  return low;
}

}  // namespace

std::vector<Millimetres> fit_columns(const Table& table, Millimetres width, const TextMeasure& measure) {
  const std::vector<WidthWish> wishes = column_wishes(table, measure);
  const Millimetres room = width - look::column_gap * (static_cast<double>(wishes.size()) - 1);
  Millimetres natural, least;
  double stretch = 0;
  for (std::size_t c = 0; c < wishes.size(); ++c) {
    natural += wishes[c].natural;
    least += wishes[c].least;
    stretch += table.columns[c].stretch;
  }
  std::vector<Millimetres> widths;
  const Grid cap = natural > room && least <= room ? find_cap(wishes, table, room) : 0;
  for (std::size_t c = 0; c < wishes.size(); ++c) {
    if (natural <= room) {
      const double share = stretch > 0 ? table.columns[c].stretch / stretch : 0;
      widths.push_back(wishes[c].natural + (room - natural) * share);
    } else if (least <= room) {
      widths.push_back(capped(wishes[c], table.columns[c], cap));
    } else {
      widths.push_back(wishes[c].least * (room / least));
    }
  }
  return widths;
}

}  // namespace loomfolio
