// SPDX-License-Identifier: MIT
// From a byte of a text to the line and column that a reader sees.
#pragma once

#include <cstddef>
#include <cstdint>
#include <string_view>
#include <vector>

namespace loomfolio {

/// Counted from 1. A column is what the reader sees: a wide character is two, a combining mark none, a tab goes to the
/// next multiple of 8.
struct Place {
  std::size_t line = 1, column = 1;
};

/// Knows where each line of a text begins. Keeps a view of the text, which must outlive it.
class LineIndex {
 public:
  explicit LineIndex(std::string_view text);
  std::size_t line_count() const { return starts_.size(); }
  /// Line number of a byte, from 1; bytes past the end belong to the last line.
  std::size_t line_of(std::size_t byte) const;
  /// First byte of a line, numbered from 1.
  std::size_t start_of(std::size_t line) const { return starts_[line - 1]; }
  /// The line without its line end.
  std::string_view text_of(std::size_t line) const;
  Place place_of(std::size_t byte) const;

 private:
  std::string_view text_;
  std::vector<std::size_t> starts_;
};

}  // namespace loomfolio
