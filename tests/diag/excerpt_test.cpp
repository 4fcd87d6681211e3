// SPDX-License-Identifier: MIT
#include "diag/excerpt.h"

#include <doctest/doctest.h>

#include "base/text.h"

using namespace loomfolio;

namespace {

/// The columns of the printed line that the caret line marks.
std::string marked(const Excerpt& excerpt) {
  const std::size_t from = excerpt.caret.find('^');
  std::string text;
  for (std::size_t i = 0; i < excerpt.line.size();) {
    std::size_t length = 1;
    while (i + length < excerpt.line.size() && (static_cast<unsigned char>(excerpt.line[i + length]) & 0xC0) == 0x80)
      ++length;
    const std::size_t column = count_columns(excerpt.line.substr(0, i));
    if (column >= from && column < excerpt.caret.size()) text += excerpt.line.substr(i, length);
    i += length;
  }
  return text;
}

}  // namespace

TEST_CASE("tabs, accents and wide characters do not shift the caret") {
  const std::string tabs = "\tto = \"x.y\"";
  CHECK(make_excerpt(tabs, 6, 11).line == "        to = \"x.y\"");
  CHECK(make_excerpt(tabs, 6, 11).caret == "             ^~~~~");
  const std::string accents = "t = \"Z\xC3\xBCndung\" + \"x\"";
  CHECK(marked(make_excerpt(accents, 17, 20)) == "\"x\"");
  const std::string wide = "t = \"\xE6\xBC\xA2\xE5\xAD\x97\" = x";
  CHECK(make_excerpt(wide, 4, 12).caret == "    ^~~~~~");
  const std::string combining = "e\xCC\x81 = 5";
  CHECK(make_excerpt(combining, 6, 7).caret == "    ^");
}

TEST_CASE("a long line is cut around the caret") {
  const std::string line = std::string(400, 'a') + " here " + std::string(400, 'b');
  const Excerpt excerpt = make_excerpt(line, 401, 405);
  CHECK(marked(excerpt) == "here");
  CHECK(excerpt.line.starts_with("..."));
  CHECK(excerpt.line.ends_with("..."));
  CHECK(count_columns(excerpt.line) <= 116);
  CHECK(excerpt.line.find(" here ") != std::string::npos);
}

TEST_CASE("a line's beginning stays when the caret is near it, its end when near that") {
  const std::string line = "key = " + std::string(500, 'x') + " end";
  CHECK(make_excerpt(line, 0, 3).line.starts_with("key = x"));
  CHECK(make_excerpt(line, 0, 3).line.ends_with("..."));
  const Excerpt last = make_excerpt(line, 507, 510);
  CHECK(marked(last) == "end");
  CHECK(last.line.ends_with("end"));
}

TEST_CASE("a line of megabytes is cut without walking it") {
  const std::string line = std::string(3'000'000, '\t') + "here" + std::string(3'000'000, 'b');
  const Excerpt excerpt = make_excerpt(line, 3'000'000, 3'000'004);
  CHECK(marked(excerpt) == "here");
  CHECK(excerpt.line.size() < 300);
}

TEST_CASE("a range past the line's end marks its end") {
  CHECK(make_excerpt("a =", 3, 3).caret == "   ^");
  CHECK(make_excerpt("a =", 9, 20).caret == "   ^");
  CHECK(make_excerpt("", 0, 0).caret == "^");
  CHECK(make_excerpt("a = \"b", 4, 60).caret == "    ^~");
}

TEST_CASE("nothing in a source can move the terminal's cursor or turn its text round") {
  CHECK(printable("a\x1b[2Jb\x07\x7f") == "a\xEF\xBF\xBD[2Jb\xEF\xBF\xBD\xEF\xBF\xBD");
  CHECK(printable("a\nb\tc") == "a b c");
  CHECK(printable("\xE2\x80\xAEx") == "\xEF\xBF\xBDx");
  CHECK(printable("\xC2\x9B") == "\xEF\xBF\xBD");
  CHECK(printable("\xFFz") == "\xEF\xBF\xBDz");
  const Excerpt excerpt = make_excerpt("\x1b[0m = x", 7, 8);
  CHECK(excerpt.line == "\xEF\xBF\xBD[0m = x");
  CHECK(excerpt.caret == "       ^");
}
