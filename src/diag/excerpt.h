// SPDX-License-Identifier: MIT
// One line of a source as printed under a finding, and the caret line below it.
#pragma once

#include <string>
#include <string_view>

namespace loomfolio {

struct Excerpt {
  std::string line;   ///< tabs as spaces, unprintable bytes as U+FFFD, cut around the caret when long
  std::string caret;  ///< spaces, `^`, and a `~` for each further column
};

/// The bytes [begin, end) of the line are marked; an empty range marks one column. At most about `most_columns` are
/// shown.
Excerpt make_excerpt(std::string_view line, std::size_t begin, std::size_t end, std::size_t most_columns = 110);

/// Text that cannot move a terminal's cursor: control characters and broken UTF-8 become U+FFFD, line ends and tabs
/// spaces.
std::string printable(std::string_view text);

}  // namespace loomfolio
