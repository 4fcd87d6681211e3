// SPDX-License-Identifier: MIT
#include "sheets/table.h"

#include <utility>

#include "sheets/table_rows.h"

namespace loomfolio {
namespace {

/// Every fifth row, to guide the eye along a long list. In a short one a single grey row would look like a thing to mind.
std::vector<bool> shaded_rows(const Table& table) {
  constexpr std::size_t step = 5, least = 2 * step;
  std::vector<bool> shaded(table.rows.size(), false);
  for (std::size_t first = 0; first < table.rows.size();) {
    std::size_t end = first;
    while (end < table.rows.size() && !table.rows[end].is_group) ++end;
    if (end - first >= least)
      for (std::size_t i = first + step - 1; i < end; i += step) shaded[i] = true;
    first = end + 1;
  }
  return shaded;
}

/// Puts rows onto pages. A structure tag may not run over a page, so each page's share is a table of its own.
class TableFlow {
 public:
  TableFlow(PageFlow& flow, const Table& table)
      : flow_(flow), table_(table), rows_(table, flow.width(), flow.setting()), head_(rows_.make_head()) {}

  void place_all(Millimetres gap) {
    gap_ = gap;
    set_rows();
    for (std::size_t i = 0; i < table_.rows.size(); ++i) {
      if (table_.rows[i].is_group)
        place_group(i);
      else
        place_row(i);
    }
    close();
  }

 private:
  /// Rows that begin a table, and rows that end it, are at least so many on a page; a table of `whole` rows is not cut.
  static constexpr std::size_t least_rows = 3, whole = 5;

  void set_rows() {
    const std::vector<bool> shaded = shaded_rows(table_);
    for (std::size_t i = 0; i < table_.rows.size(); ++i) {
      const Row& row = table_.rows[i];
      blocks_.push_back(row.is_group ? rows_.make_group(row, true) : rows_.make_row(row, shaded[i]));
    }
  }

  /// How many rows from this one on stay on one page.
  std::size_t kept_from(std::size_t index) const {
    const std::size_t all = blocks_.size(), left = all - index;
    if (index == 0) return all <= whole ? all : least_rows;
    if (left == least_rows && all > whole) return left;
    if (table_.rows[index].is_group) return std::min<std::size_t>(2, left);
    // The last row of a group does not stand alone under a repeated head.
    return ends_group(index + 1) && !table_.rows[index - 1].is_group ? 2 : 1;
  }

  /// It is the last row of its group, or of the table.
  bool ends_group(std::size_t index) const {
    const std::size_t all = table_.rows.size();
    return index < all && !table_.rows[index].is_group && (index + 1 == all || table_.rows[index + 1].is_group);
  }

  /// Their height together; of tall rows only the first counts.
  Millimetres kept_height(std::size_t index) const {
    Millimetres height;
    for (std::size_t i = index; i < index + kept_from(index); ++i) height += blocks_[i].height;
    return height > flow_.full_room() * 0.4 ? blocks_[index].height : height;
  }

  void place_row(std::size_t index) {
    if (make_room(kept_height(index)) && group_ != nullptr)
      flow_.add(rows_.make_group(*group_, false, flow_.context().words()("page.continued")), {});
    flow_.add(std::move(blocks_[index]), {});
  }

  void place_group(std::size_t index) {
    group_ = &table_.rows[index];
    const bool was_open = is_open_;
    const bool is_new_page = make_room(kept_height(index));
    const bool is_between = was_open && !is_new_page;
    flow_.add(is_between ? std::move(blocks_[index]) : rows_.make_group(*group_, false), {});
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
  std::vector<Block> blocks_;  ///< by row
  const Row* group_ = nullptr;
  bool is_open_ = false;
};

}  // namespace

Table without_empty_columns(Table table) {
  const auto says_nothing = [](const Cell& cell) {
    return !cell.picture && std::all_of(cell.lines.begin(), cell.lines.end(), [](const Paragraph& line) {
      return std::all_of(line.spans.begin(), line.spans.end(), [](const Span& span) { return span.text.empty(); });
    });
  };
  for (std::size_t c = table.columns.size(); c-- > 1;) {
    const bool is_empty = std::all_of(table.rows.begin(), table.rows.end(), [&](const Row& row) {
      return row.is_group || row.cells.size() <= c || says_nothing(row.cells[c]);
    });
    if (!is_empty) continue;
    const auto at = static_cast<std::ptrdiff_t>(c);
    table.columns.erase(table.columns.begin() + at);
    for (Row& row : table.rows)
      if (!row.is_group && row.cells.size() > c) row.cells.erase(row.cells.begin() + at);
  }
  return table;
}

Cell text_cell(std::string text, const TextStyle& style) {
  return {{{{{std::move(text), style, look::ink, {}}}, Align::left, {}}}};
}

Cell lines_cell(const std::vector<std::string>& lines) {
  Cell cell;
  for (const std::string& line : lines) cell.lines.push_back({{{line, look::table, look::ink, {}}}, Align::left, {}});
  return cell;
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
  const std::vector<bool> shaded = shaded_rows(table);
  for (std::size_t i = 0; i < table.rows.size(); ++i) {
    const Row& row = table.rows[i];
    put(row.is_group ? rows.make_group(row, i > 0) : rows.make_row(row, shaded[i]));
  }
  block.items.push_back(TagCloseItem{});
  return block;
}

}  // namespace loomfolio
