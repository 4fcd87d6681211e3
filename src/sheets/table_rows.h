// SPDX-License-Identifier: MIT
// The rows of a table, each set as a block. How rows go onto pages is table.cpp's.
#pragma once

#include <string>
#include <vector>

#include "sheets/table.h"

namespace loomfolio {

class RowSetter {
 public:
  /// Keeps a reference to `table`.
  RowSetter(const Table& table, Millimetres width, const TypeSetting& setting);

  /// Heads stand on the rule: short ones level with the last line of long ones.
  Block make_head() const;
  /// Cells side by side, their first lines level.
  Block make_row(const Row& row, bool is_fifth) const;
  /// A head over the rows after it; with more space above when it stands between rows.
  Block make_group(const Row& row, bool is_between_rows, const std::string& continued = {}) const;

 private:
  /// Left edge of a column; columns go from right to left where the language does.
  Millimetres column_x(std::size_t column) const;
  Block set_cell(const Cell& cell, std::size_t column, Millimetres width) const;
  void place_picture(Block& block, const Cell& cell, bool is_right_to_left) const;
  Block set_on_point(const Span& span, std::size_t column) const;

  const Table& table_;
  TypeSetting setting_;
  std::vector<Millimetres> widths_;
  Millimetres width_;
  std::vector<PointPlace> points_;
};

}  // namespace loomfolio
