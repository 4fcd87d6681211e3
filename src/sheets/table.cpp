// SPDX-License-Identifier: MIT
#include "sheets/table.h"

#include <utility>

#include "sheets/table_rows.h"

namespace loomfolio {
namespace {

/// Puts rows onto pages. A structure tag may not run over a page, so each page's share is a table of its own.
class TableFlow {
 public:
  TableFlow(PageFlow& flow, const Table& table)
      : flow_(flow), table_(table), rows_(table, flow.width(), flow.setting()), head_(rows_.make_head()) {}

  void place_all(Millimetres gap) {
    gap_ = gap;
    for (std::size_t i = 0; i < table_.rows.size(); ++i) {
      if (table_.rows[i].is_group)
        place_group(i);
      else
        place_row(table_.rows[i]);
    }
    close();
  }

 private:
  void place_row(const Row& row) {
    Block block = rows_.make_row(row, ++counted_ % 5 == 0);
    if (make_room(block.height) && group_ != nullptr)
      flow_.add(rows_.make_group(*group_, false, flow_.context().words()("page.continued")), {});
    flow_.add(std::move(block), {});
  }

  void place_group(std::size_t index) {
    const Row& row = table_.rows[index];
    group_ = &row;
    counted_ = 0;
    Block block = rows_.make_group(row, is_open_);
    Millimetres needed = block.height;
    if (index + 1 < table_.rows.size()) needed += rows_.make_row(table_.rows[index + 1], false).height;
    const bool was_open = is_open_;
    const bool is_new_page = make_room(needed);
    if (was_open && is_new_page) block = rows_.make_group(row, false);
    flow_.add(std::move(block), {});
  }

  /// Opens the table where it is not yet open; goes to a new page where `height` does not fit, and says whether it did.
  bool make_room(Millimetres height) {
    if (!is_open_) {
      flow_.keep(gap_ + head_.height + height);
      open(gap_);
      return false;
    }
    if (flow_.room() >= height) return false;
    close();
    flow_.new_page();
    open({});
    return true;
  }

  void open(Millimetres gap) {
    if (!flow_.is_at_top()) flow_.add(Block{}, gap);
    flow_.items().push_back(TagOpenItem{"Table", {}});
    flow_.add(head_, {});
    is_open_ = true;
  }

  void close() {
    if (is_open_) flow_.items().push_back(TagCloseItem{});
    is_open_ = false;
  }

  PageFlow& flow_;
  const Table& table_;
  RowSetter rows_;
  Block head_;
  Millimetres gap_;
  const Row* group_ = nullptr;
  int counted_ = 0;
  bool is_open_ = false;
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
  TableFlow(flow, table).place_all(gap);
}

Block table_block(const Table& table, Millimetres width, const TypeSetting& setting) {
  const RowSetter rows(table, width, setting);
  Block block{width, {}, {}};
  const auto put = [&block](Block part) {
    const Millimetres height = part.height;
    place_block(block.items, std::move(part), {{}, block.height});
    block.height += height;
  };
  block.items.push_back(TagOpenItem{"Table", {}});
  put(rows.make_head());
  int counted = 0;
  bool is_first = true;
  for (const Row& row : table.rows) {
    if (row.is_group) counted = 0;
    put(row.is_group ? rows.make_group(row, !is_first) : rows.make_row(row, ++counted % 5 == 0));
    is_first = false;
  }
  block.items.push_back(TagCloseItem{});
  return block;
}

}  // namespace loomfolio
