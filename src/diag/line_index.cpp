// SPDX-License-Identifier: MIT
#include "diag/line_index.h"

#include <algorithm>

#include "base/text.h"

namespace loomfolio {

LineIndex::LineIndex(std::string_view text) : text_(text), starts_{0} {
  for (std::size_t i = text.find('\n'); i != std::string_view::npos; i = text.find('\n', i + 1))
    starts_.push_back(i + 1);
}

std::size_t LineIndex::line_of(std::size_t byte) const {
  return static_cast<std::size_t>(std::upper_bound(starts_.begin(), starts_.end(), byte) - starts_.begin());
}

std::string_view LineIndex::text_of(std::size_t line) const {
  const std::size_t begin = start_of(line);
  const std::size_t end = line < starts_.size() ? starts_[line] - 1 : text_.size();
  std::string_view text = text_.substr(begin, end - begin);
  if (text.ends_with('\r')) text.remove_suffix(1);
  return text;
}

Place LineIndex::place_of(std::size_t byte) const {
  const std::size_t line = line_of(byte);
  const std::string_view text = text_of(line);
  const std::size_t length = std::min(byte - start_of(line), text.size());
  return {line, 1 + count_columns(text.substr(0, length))};
}

}  // namespace loomfolio
