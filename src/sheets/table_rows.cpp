// SPDX-License-Identifier: MIT
#include "sheets/table_rows.h"

#include <algorithm>
#include <utility>

namespace loomfolio {
namespace {

Align text_align(CellAlign align) {
  return align == CellAlign::near ? Align::left : align == CellAlign::centre ? Align::centre : Align::right;
}

void add_rule(Block& block, const Pen& pen) {
  block.items.push_back(TagOpenItem{"Artifact", {}});
  add_line(block.items, {{}, block.height}, {block.width, block.height}, pen);
  block.items.push_back(TagCloseItem{});
}

}  // namespace

RowSetter::RowSetter(const Table& table, Millimetres width, const TypeSetting& setting)
    : table_(table), setting_(setting), widths_(fit_columns(table, width, setting.measure)), width_(width) {
  for (std::size_t c = 0; c < table.columns.size(); ++c) points_.push_back(find_point(table, c, setting.measure));
}

/// Left edge of a column: counted from the right where the language reads from there.
Millimetres RowSetter::column_x(std::size_t column) const {
  Millimetres x;
  for (std::size_t c = 0; c < column; ++c) x += widths_[c] + look::column_gap;
  return setting_.is_right_to_left ? width_ - x - widths_[column] : x;
}

Block RowSetter::set_cell(const Cell& cell, std::size_t column, Millimetres width) const {
  Block block{width, {}, {}};
  const bool is_right_to_left = setting_.is_right_to_left;
  for (const Paragraph& line : cell.lines) {
    Paragraph aligned = line;
    aligned.tag.clear();
    const CellAlign align = table_.columns[column].align;
    aligned.align = text_align(align);
    const bool is_first = &line == &cell.lines.front();
    const Span* span = align == CellAlign::point && is_first ? pointed_span(cell) : nullptr;
    const Millimetres indent = picture_indent(cell, block.height);
    Block text;
    if (span != nullptr) {
      text = set_on_point(*span, column);
    } else {
      text = set_paragraph(aligned, width - indent, setting_);
    }
    const Millimetres height = text.height;
    place_block(block.items, std::move(text), {is_right_to_left ? Millimetres(0) : indent, block.height});
    block.height += height;
  }
  if (cell.picture) place_picture(block, cell, is_right_to_left);
  return block;
}

void RowSetter::place_picture(Block& block, const Cell& cell, bool is_right_to_left) const {
  const Block& picture = *cell.picture;
  const Millimetres x = is_right_to_left ? block.width - picture.width : Millimetres(0);
  const Millimetres y = picture_top(cell);
  place_block(block.items, picture, {x, y});
  block.height = std::max(block.height, y + picture.height);
}

Block RowSetter::set_on_point(const Span& span, std::size_t column) const {
  const PointPlace& place = points_[column];
  const std::size_t point = point_in(span.text);
  const Millimetres before = setting_.measure.measure(span.text.substr(0, point), span.style).width;
  const Millimetres right = widths_[column] - place.after;  // the point's place
  Block block{widths_[column], look::line_step(span.style), {}};
  const Millimetres baseline = block.height * look::baseline_share;
  if (span.link.is_set())
    block.items.push_back(LinkItem{
        {right - before, Millimetres(0), before + place.after, block.height}, span.link.sheet, span.link.anchor});
  add_text(block.items, {right - before, baseline}, span.text, span.style, span.colour);
  return block;
}

/// Cells side by side, their first lines level.
Block RowSetter::make_row(const Row& row, bool is_fifth) const {
  Block block{width_, {}, {}};
  Items content;
  if (!row.anchor.empty()) content.push_back(AnchorItem{row.anchor, {}});
  content.push_back(TagOpenItem{"TR", {}});
  for (std::size_t c = 0; c < row.cells.size() && c < widths_.size(); ++c) {
    const std::size_t last = std::min(c + columns_taken(row, c), widths_.size()) - 1;
    const Millimetres near_x = column_x(setting_.is_right_to_left ? last : c),
                      far_x = column_x(setting_.is_right_to_left ? c : last) + widths_[setting_.is_right_to_left ? c : last];
    Block cell = set_cell(row.cells[c], c, far_x - near_x);
    block.height = std::max(block.height, cell.height);
    for (std::size_t tagged = c; tagged <= last; ++tagged) {  // readers of tags count cells
      content.push_back(TagOpenItem{"TD", {}});
      if (tagged == c) place_block(content, std::move(cell), {near_x, look::cell_pad});
      content.push_back(TagCloseItem{});
    }
    c = last;
  }
  content.push_back(TagCloseItem{});
  block.height += look::cell_pad * 2;
  block.items.push_back(TagOpenItem{"Artifact", {}});
  if (is_fifth) add_filled_rect(block.items, {{}, {}, width_, block.height}, look::band);
  add_line(block.items, {{}, block.height}, {width_, block.height}, {look::hairline_grey, look::thin_line});
  if (row.is_marked) {
    const Millimetres x = setting_.is_right_to_left ? width_ + look::mark_bar : -look::mark_bar * 2;
    add_filled_rect(block.items, {x, Millimetres(0.4), look::mark_bar, block.height - Millimetres(0.8)}, look::ink);
  }
  block.items.push_back(TagCloseItem{});
  std::move(content.begin(), content.end(), std::back_inserter(block.items));
  return block;
}

Block RowSetter::make_group(const Row& row, bool is_between_rows, const std::string& continued) const {
  std::vector<Span> spans = row.cells.front().lines.front().spans;
  if (!continued.empty()) spans.push_back({"  " + continued, look::table_small, look::grey, {}});
  Block text = set_paragraph({spans, Align::left, {}}, width_, setting_);
  Block block{width_, text.height + look::cell_pad * 2, {}};
  Millimetres y = look::cell_pad;
  if (is_between_rows) {
    y += look::group_space;
    block.height += look::group_space;
  }
  if (!row.anchor.empty()) block.items.push_back(AnchorItem{row.anchor, {}});
  block.items.push_back(TagOpenItem{"TR", {}});
  block.items.push_back(TagOpenItem{"TH", {}});
  place_block(block.items, std::move(text), {{}, y});
  block.items.push_back(TagCloseItem{});
  block.items.push_back(TagCloseItem{});
  add_rule(block, {look::grey, look::line});
  return block;
}

/// Heads stand on the rule: short ones level with the last line of long ones.
Block RowSetter::make_head() const {
  std::vector<Block> cells;
  Block block{width_, {}, {}};
  for (std::size_t c = 0; c < table_.columns.size(); ++c) {
    const Column& column = table_.columns[c];
    const Paragraph paragraph{{{column.head, look::table_head, look::grey, {}}}, text_align(column.align), {}};
    cells.push_back(set_paragraph(paragraph, widths_[c], setting_));
    block.height = std::max(block.height, cells.back().height);
  }
  block.items.push_back(TagOpenItem{"TR", {}});
  for (std::size_t c = 0; c < cells.size(); ++c) {
    const Millimetres y = block.height - cells[c].height;
    block.items.push_back(TagOpenItem{"TH", {}});
    place_block(block.items, std::move(cells[c]), {column_x(c), y});
    block.items.push_back(TagCloseItem{});
  }
  block.items.push_back(TagCloseItem{});
  block.height += look::cell_pad;
  add_rule(block, {look::ink, look::heavy_line});
  return block;
}

}  // namespace loomfolio
