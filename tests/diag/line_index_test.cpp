// SPDX-License-Identifier: MIT
#include "diag/line_index.h"

#include <doctest/doctest.h>

using namespace loomfolio;

TEST_CASE("a byte's line and column are what the reader sees") {
  const std::string_view text = "a\n\tb\r\nZ\xC3\xBC\xE6\xBC\xA2x";
  const LineIndex lines(text);
  struct Row {
    std::size_t byte, line, column;
  };
  for (const Row row : {Row{0, 1, 1}, Row{1, 1, 2}, Row{2, 2, 1}, Row{3, 2, 9}, Row{6, 3, 1}, Row{7, 3, 2},
                        Row{9, 3, 3}, Row{12, 3, 5}, Row{13, 3, 6}, Row{99, 3, 6}}) {
    CAPTURE(row.byte);
    CHECK(lines.place_of(row.byte).line == row.line);
    CHECK(lines.place_of(row.byte).column == row.column);
  }
  CHECK(lines.text_of(2) == "\tb");
  CHECK(lines.line_count() == 3);
}

TEST_CASE("an empty text has one empty line") {
  const LineIndex lines("");
  CHECK(lines.line_count() == 1);
  CHECK(lines.text_of(1).empty());
  CHECK(lines.place_of(0).column == 1);
}
