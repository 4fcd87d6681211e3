// SPDX-License-Identifier: MIT
// One table of several hook-ups: rows that all have stand once, the others say by letter for which they hold.
#pragma once

#include <cstddef>
#include <optional>
#include <vector>

#include "sheets/folio.h"
#include "sheets/table.h"

namespace loomfolio {

/// A hook-up's table and its place among the hook-ups.
struct HookUpTable {
  std::size_t hook_up = 0;
  Table table;
};

struct MergeColumns {
  std::size_t letters_at = 0;  ///< a column for the letters goes before that one, where any row needs it
  /// A column whose cells may differ in rows that are else alike: such a row names each with its letters.
  std::optional<std::size_t> free = std::nullopt;
};

/// Rows are the same when their texts are. They keep their order; a group's head stands once. One table alone is
/// returned as it is. All tables have the same columns; none: an empty table.
Table merge_tables(const SheetContext& context, std::vector<HookUpTable> tables, MergeColumns columns);

/// 'A, C'.
std::string letters_text(const std::vector<std::size_t>& hook_ups);

/// 'Hook-up A', 'Hook-ups A, C'.
std::string hook_ups_text(const std::vector<std::size_t>& hook_ups, const Words& words);

}  // namespace loomfolio
