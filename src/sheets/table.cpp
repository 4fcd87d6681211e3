// SPDX-License-Identifier: MIT
#include "sheets/table.h"

#include <algorithm>
#include <utility>

#include "sheets/reference.h"

namespace loomfolio {
namespace {

/// The widest part before and after the decimal point of a column's first lines.
struct PointPlace {
  Millimetres before, after;
};

std::size_t point_in(const std::string& text) { return std::min(text.find('.'), text.size()); }

/// Text of a cell that stands on the point: one line, one span, beginning with a digit or sign.
const Span* pointed_span(const Cell& cell) {
  if (cell.lines.empty() || cell.lines.front().spans.size() != 1) return nullptr;
  const Span& span = cell.lines.front().spans.front();
  const bool is_figure =
      !span.text.empty() && (std::isdigit(static_cast<unsigned char>(span.text[0])) != 0 || span.text[0] == '-');
  return is_figure ? &span : nullptr;
}

class TableSetter {
 public:
  TableSetter(PageFlow& flow, const Table& table)
      : flow_(flow),
        table_(table),
        measure_(flow.setting().measure),
        widths_(fit_columns(table, flow.width(), measure_)) {
    for (std::size_t c = 0; c < table.columns.size(); ++c) points_.push_back(find_point(c));
    for (const Millimetres& width : widths_) width_ += width;
    width_ += look::column_gap * (static_cast<double>(widths_.size()) - 1);
  }

  void set(Millimetres gap) {
    const Block head = make_head();
    int counted = 0;
    bool is_open = false;
    const Row* group = nullptr;
    for (std::size_t i = 0; i < table_.rows.size(); ++i) {
      const Row& row = table_.rows[i];
      if (row.is_group) counted = 0, group = &row;
      Block block = row.is_group ? make_group(row, is_open, {}) : make_row(row, ++counted % 5 == 0);
      Millimetres needed = block.height;
      if (row.is_group && i + 1 < table_.rows.size()) needed += make_row(table_.rows[i + 1], false).height;
      if (!is_open) {
        open(head, gap, needed);
        is_open = true;
        if (row.is_group) block = make_group(row, false, {});
      } else if (flow_.room() < needed) {
        close();
        flow_.new_page();
        open(head, gap, needed);
        if (row.is_group)
          block = make_group(row, false, {});
        else if (group != nullptr)
          flow_.add(make_group(*group, false, flow_.context().words()("page.continued")), {});
      }
      flow_.add(std::move(block), {});
    }
    if (is_open) close();
  }

 private:
  void open(const Block& head, Millimetres gap, Millimetres first_row) {
    flow_.keep(gap + head.height + first_row);
    if (!flow_.is_at_top()) flow_.add(Block{}, gap);
    flow_.items().push_back(TagOpenItem{"Table", {}});
    flow_.add(head, {});
  }

  void close() { flow_.items().push_back(TagCloseItem{}); }

  PointPlace find_point(std::size_t column) const {
    PointPlace place;
    if (table_.columns[column].align != CellAlign::point) return place;
    for (const Row& row : table_.rows) {
      if (row.is_group || column >= row.cells.size()) continue;
      const Span* span = pointed_span(row.cells[column]);
      if (span == nullptr) continue;
      const std::size_t point = point_in(span->text);
      place.before = std::max(place.before, measure_.measure(span->text.substr(0, point), span->style).width);
      place.after = std::max(place.after, measure_.measure(span->text.substr(point), span->style).width);
    }
    return place;
  }

  Align text_align(CellAlign align) const {
    return align == CellAlign::near ? Align::left : align == CellAlign::centre ? Align::centre : Align::right;
  }

  /// Left edge of a column: counted from the right where the language reads from there.
  Millimetres column_x(std::size_t column) const {
    Millimetres x;
    for (std::size_t c = 0; c < column; ++c) x += widths_[c] + look::column_gap;
    return flow_.setting().is_right_to_left ? flow_.width() - x - widths_[column] : x;
  }

  Block set_cell(const Cell& cell, std::size_t column) const {
    const Millimetres width = widths_[column];
    Block block{width, {}, {}};
    const Millimetres indent = cell.picture ? cell.picture->width + look::picture_gap : Millimetres(0);
    const bool is_right_to_left = flow_.setting().is_right_to_left;
    for (const Paragraph& line : cell.lines) {
      Paragraph aligned = line;
      aligned.tag.clear();
      const CellAlign align = table_.columns[column].align;
      aligned.align = text_align(align);
      const bool is_first = &line == &cell.lines.front();
      const Span* span = align == CellAlign::point && is_first ? pointed_span(cell) : nullptr;
      Block text;
      if (span != nullptr) {
        text = set_on_point(*span, column);
      } else {
        text = set_paragraph(aligned, width - indent, flow_.setting());
      }
      const Millimetres height = text.height;
      place_block(block.items, std::move(text), {is_right_to_left ? Millimetres(0) : indent, block.height});
      block.height += height;
    }
    if (cell.picture) place_picture(block, cell, is_right_to_left);
    return block;
  }

  void place_picture(Block& block, const Cell& cell, bool is_right_to_left) const {
    const Block& picture = *cell.picture;
    const Millimetres line =
        cell.lines.empty() ? picture.height : look::line_step(cell.lines.front().spans.front().style);
    const Millimetres x = is_right_to_left ? block.width - picture.width : Millimetres(0);
    const Millimetres y = std::max(Millimetres(0), (line - picture.height) / 2);
    place_block(block.items, picture, {x, y});
    block.height = std::max(block.height, y + picture.height);
  }

  Block set_on_point(const Span& span, std::size_t column) const {
    const PointPlace& place = points_[column];
    const std::size_t point = point_in(span.text);
    const Millimetres before = measure_.measure(span.text.substr(0, point), span.style).width;
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
  Block make_row(const Row& row, bool is_fifth) const {
    Block block{width_, {}, {}};
    Items content;
    if (!row.anchor.empty()) content.push_back(AnchorItem{row.anchor, {}});
    content.push_back(TagOpenItem{"TR", {}});
    for (std::size_t c = 0; c < row.cells.size() && c < widths_.size(); ++c) {
      Block cell = set_cell(row.cells[c], c);
      block.height = std::max(block.height, cell.height);
      content.push_back(TagOpenItem{"TD", {}});
      place_block(content, std::move(cell), {column_x(c), look::cell_pad});
      content.push_back(TagCloseItem{});
    }
    content.push_back(TagCloseItem{});
    block.height += look::cell_pad * 2;
    block.items.push_back(TagOpenItem{"Artifact", {}});
    if (is_fifth) add_filled_rect(block.items, {{}, {}, width_, block.height}, look::band);
    add_line(block.items, {{}, block.height}, {width_, block.height}, {look::hairline_grey, look::thin_line});
    block.items.push_back(TagCloseItem{});
    std::move(content.begin(), content.end(), std::back_inserter(block.items));
    return block;
  }

  Block make_group(const Row& row, bool is_between_rows, const std::string& continued) const {
    std::vector<Span> spans = row.cells.front().lines.front().spans;
    if (!continued.empty()) spans.push_back({"  " + continued, look::table_small, look::grey, {}});
    Block text = set_paragraph({spans, Align::left, {}}, width_, flow_.setting());
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

  static void add_rule(Block& block, const Pen& pen) {
    block.items.push_back(TagOpenItem{"Artifact", {}});
    add_line(block.items, {{}, block.height}, {block.width, block.height}, pen);
    block.items.push_back(TagCloseItem{});
  }

  /// Heads stand on the rule: short ones level with the last line of long ones.
  Block make_head() const {
    std::vector<Block> cells;
    Block block{width_, {}, {}};
    for (std::size_t c = 0; c < table_.columns.size(); ++c) {
      const Column& column = table_.columns[c];
      const Paragraph paragraph{{{column.head, look::table_head, look::grey, {}}}, text_align(column.align), {}};
      cells.push_back(set_paragraph(paragraph, widths_[c], flow_.setting()));
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

  PageFlow& flow_;
  const Table& table_;
  const TextMeasure& measure_;
  std::vector<Millimetres> widths_;
  std::vector<PointPlace> points_;
  Millimetres width_;
};

}  // namespace

Cell text_cell(std::string text, const TextStyle& style) {
  return {{{{{std::move(text), style, look::ink, {}}}, Align::left, {}}}};
}

Cell two_line_cell(std::string first, std::string second, const TextStyle& style) {
  Cell cell = text_cell(std::move(first), style);
  if (!second.empty())
    cell.lines.push_back({{{std::move(second), look::table_small, look::grey, {}}}, Align::left, {}});
  return cell;
}

Row group_row(std::string text) { return {{text_cell(std::move(text), look::table_bold)}, true, {}}; }

void add_table(PageFlow& flow, const Table& table, Millimetres gap) {
  if (table.rows.empty()) return;
  TableSetter(flow, table).set(gap);
}

}  // namespace loomfolio
