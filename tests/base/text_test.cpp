// SPDX-License-Identifier: MIT
#include "base/text.h"

#include <doctest/doctest.h>

using namespace loomfolio;

TEST_CASE("columns count what the reader sees") {
  CHECK(count_columns("abc") == 3);
  CHECK(count_columns("\t") == 8);
  CHECK(count_columns("\t", 3) == 5);
  CHECK(count_columns("Zündung") == 7);
  CHECK(count_columns("e\xCC\x81") == 1);     // e with a combining acute
  CHECK(count_columns("\xE6\xBC\xA2") == 2);  // a wide character
  CHECK(count_characters("\xFF\xFE") == 2);
}

TEST_CASE("the nearest word is a likely misspelling and nothing else") {
  const std::vector<std::string> words = {"colour", "length", "stripe", "size"};
  CHECK(find_nearest("color", words) == "colour");
  CHECK(find_nearest("lenght", words) == "length");
  CHECK(find_nearest("purpose", words).empty());
}

TEST_CASE("numbers print without a locale, without minus zero") {
  CHECK(fixed(-0.001, 2) == "0.00");
  CHECK(fixed(2.345, 1) == "2.3");
  CHECK(shortest(2.50) == "2.5");
  CHECK(shortest(10) == "10");
  CHECK(shortest(0.85) == "0.85");
}

TEST_CASE("fill puts values in places and leaves unknown places") {
  CHECK(fill("{a} to {b}", {{"a", "1"}, {"b", "2"}}) == "1 to 2");
  CHECK(fill("{c}", {{"a", "1"}}) == "{c}");
  CHECK(fill("open {", {}) == "open {");
}

TEST_CASE("broken UTF-8 is seen") {
  CHECK(is_utf8("Zündung"));
  CHECK_FALSE(is_utf8("\xC3"));
  CHECK_FALSE(is_utf8("\xED\xA0\x80"));
}

TEST_CASE("names sort by their numbers") {
  for (const auto& [first, second] : std::vector<std::pair<std::string, std::string>>{
           {"9", "10"}, {"C2", "C10"}, {"C9", "M1"}, {"10", "C1"}, {"1", "1a"}, {"a007", "a8"}, {"", "1"}}) {
    CAPTURE(first);
    CHECK(is_numbered_before(first, second));
    CHECK_FALSE(is_numbered_before(second, first));
  }
  for (const std::string same : {"", "7", "C10", "a007b3"}) CHECK_FALSE(is_numbered_before(same, same));
  CHECK_FALSE(is_numbered_before("00", "0"));
  CHECK_FALSE(is_numbered_before("0", "00"));
}
