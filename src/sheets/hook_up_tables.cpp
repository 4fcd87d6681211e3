// SPDX-License-Identifier: MIT
#include "sheets/hook_up_tables.h"

#include <algorithm>
#include <utility>

#include "base/text.h"
#include "sheets/hook_ups.h"

namespace loomfolio {
namespace {

std::string text_of(const Cell& cell) {
  std::string text;
  for (const Paragraph& line : cell.lines) {
    for (const Span& span : line.spans) text += span.text;
    text += '\n';
  }
  return text;
}

std::string text_of(const Row& row, const MergeColumns& columns) {
  std::string text = row.is_group ? "group\n" : "";
  for (std::size_t c = 0; c < row.cells.size(); ++c)
    if (row.is_group || c != columns.free) text += text_of(row.cells[c]) + '\x1f';
  return text;
}

/// A row with the hook-ups that have it, and what each has in the free column.
struct MergedRow {
  std::string text;
  Row row;
  std::vector<std::size_t> hook_ups;
  std::vector<std::pair<std::size_t, Cell>> free;
};

void merge_row(std::vector<MergedRow>& merged, std::size_t& at, std::size_t hook_up, Row row,
               const MergeColumns& columns) {
  std::string text = text_of(row, columns);
  const auto found = std::find_if(merged.begin() + static_cast<std::ptrdiff_t>(at), merged.end(),
                                  [&](const MergedRow& other) { return other.text == text; });
  const bool has_free = columns.free && !row.is_group && *columns.free < row.cells.size();
  std::vector<std::pair<std::size_t, Cell>> free;
  if (has_free) free.emplace_back(hook_up, row.cells[*columns.free]);
  if (found != merged.end()) {
    found->hook_ups.push_back(hook_up);
    std::move(free.begin(), free.end(), std::back_inserter(found->free));
    at = static_cast<std::size_t>(found - merged.begin()) + 1;
    return;
  }
  merged.insert(merged.begin() + static_cast<std::ptrdiff_t>(at),
                {std::move(text), std::move(row), {hook_up}, std::move(free)});
  ++at;
}

/// Alike: one cell. Else each different one with its letters before it.
Cell free_cell(const std::vector<std::pair<std::size_t, Cell>>& cells) {
  std::vector<std::pair<std::vector<std::size_t>, Cell>> kinds;
  for (const auto& [hook_up, cell] : cells) {
    const auto same =
        std::find_if(kinds.begin(), kinds.end(), [&, &c = cell](const auto& k) { return text_of(k.second) == text_of(c); });
    if (same == kinds.end())
      kinds.push_back({{hook_up}, cell});
    else
      same->first.push_back(hook_up);
  }
  if (kinds.size() == 1) return kinds.front().second;
  Cell all;
  for (auto& [hook_ups, cell] : kinds)
    for (std::size_t l = 0; l < cell.lines.size(); ++l) {
      Paragraph line = cell.lines[l];
      if (l == 0 && !line.spans.empty())
        line.spans.insert(line.spans.begin(),
                          Span{letters_text(hook_ups) + ":\u00a0", look::table, look::ink, {}});
      all.lines.push_back(std::move(line));
    }
  return all;
}

}  // namespace

std::string letters_text(const std::vector<std::size_t>& hook_ups) {
  std::vector<std::string> letters;
  for (const std::size_t hook_up : hook_ups) letters.push_back(hook_up_letter(hook_up));
  return join(letters, ",\u00a0");
}

Table merge_tables(const SheetContext& context, std::vector<HookUpTable> tables, MergeColumns columns) {
  if (tables.empty()) return {};
  if (tables.size() == 1 && context.hook_ups == nullptr) return std::move(tables.front().table);
  std::vector<MergedRow> merged;
  for (HookUpTable& one : tables) {
    std::size_t at = 0;
    for (Row& row : one.table.rows) merge_row(merged, at, one.hook_up, std::move(row), columns);
  }
  const std::size_t all = context.hook_ups->builds.size();
  const bool has_letters = std::any_of(merged.begin(), merged.end(), [&](const MergedRow& row) {
    return !row.row.is_group && row.hook_ups.size() < all;
  });
  Table table{std::move(tables.front().table.columns), {}};
  const auto letters_at = static_cast<std::ptrdiff_t>(columns.letters_at);
  if (has_letters)
    table.columns.insert(table.columns.begin() + letters_at,
                         {context.words()("hook_up.column"), CellAlign::near, Wrapping::keeps, 0});
  for (MergedRow& row : merged) {
    if (!row.row.is_group && columns.free) row.row.cells[*columns.free] = free_cell(row.free);
    if (!row.row.is_group && has_letters)
      row.row.cells.insert(row.row.cells.begin() + letters_at,
                           text_cell(row.hook_ups.size() < all ? letters_text(row.hook_ups) : "", look::table_bold));
    table.rows.push_back(std::move(row.row));
  }
  return table;
}

}  // namespace loomfolio
