// SPDX-License-Identifier: MIT
#include "sheets/hook_up_tables.h"

#include <algorithm>
#include <iterator>
#include <set>
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

bool has_free(const Row& row, const MergeColumns& columns) {
  return columns.free && !row.is_group && *columns.free < row.cells.size();
}

/// Rows that are known stay where they are; a new one goes before the next known one of its own table.
void merge_rows(std::vector<MergedRow>& merged, HookUpTable one, const MergeColumns& columns) {
  std::size_t at = 0;
  std::vector<MergedRow> fresh;
  const auto put_fresh = [&](std::size_t place) {
    merged.insert(merged.begin() + static_cast<std::ptrdiff_t>(place), std::make_move_iterator(fresh.begin()),
                  std::make_move_iterator(fresh.end()));
    at = place + fresh.size();
    fresh.clear();
  };
  for (Row& row : one.table.rows) {
    MergedRow next{text_of(row, columns), std::move(row), {one.hook_up}, {}};
    if (has_free(next.row, columns)) next.free.emplace_back(one.hook_up, next.row.cells[*columns.free]);
    const auto found = std::find_if(merged.begin() + static_cast<std::ptrdiff_t>(at), merged.end(),
                                    [&](const MergedRow& other) { return other.text == next.text; });
    if (found == merged.end()) {
      fresh.push_back(std::move(next));
      continue;
    }
    found->hook_ups.push_back(one.hook_up);
    std::move(next.free.begin(), next.free.end(), std::back_inserter(found->free));
    put_fresh(static_cast<std::size_t>(found - merged.begin()));
    ++at;
  }
  put_fresh(merged.size());
}

/// Alike: one cell. Else the first line of each different one, its letters before it.
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
  for (auto& [hook_ups, cell] : kinds) {
    if (cell.lines.empty()) continue;
    Paragraph line = cell.lines.front();
    line.spans.insert(line.spans.begin(), Span{letters_text(hook_ups) + ":\u00a0", look::table, look::ink, {}});
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
  const std::vector<Column> heads = tables.front().table.columns;
  for (HookUpTable& one : tables) merge_rows(merged, std::move(one), columns);
  const std::size_t all = context.hook_ups->builds.size();
  const bool has_letters = std::any_of(merged.begin(), merged.end(), [&](const MergedRow& row) {
    return !row.row.is_group && row.hook_ups.size() < all;
  });
  Table table{heads, {}};
  const auto letters_at = static_cast<std::ptrdiff_t>(columns.letters_at);
  std::set<std::string> anchors;
  if (has_letters)
    table.columns.insert(table.columns.begin() + letters_at,
                         {context.words()("hook_up.column"), CellAlign::near, Wrapping::keeps, 0});
  for (MergedRow& row : merged) {
    if (!row.row.is_group && columns.free) row.row.cells[*columns.free] = free_cell(row.free);
    if (!row.row.is_group && has_letters)
      row.row.cells.insert(row.row.cells.begin() + letters_at,
                           text_cell(row.hook_ups.size() < all ? letters_text(row.hook_ups) : "", look::table_bold));
    if (!row.row.anchor.empty() && !anchors.insert(row.row.anchor).second) row.row.anchor.clear();  // the first of its name is led to
    table.rows.push_back(std::move(row.row));
  }
  return table;
}

std::string hook_ups_text(const std::vector<std::size_t>& hook_ups, const Words& words) {
  return words(hook_ups.size() > 1 ? "hook_up.these" : "hook_up.this", {{"letters", letters_text(hook_ups)}});
}

}  // namespace loomfolio
