// SPDX-License-Identifier: MIT
#include "base/json.h"

#include <doctest/doctest.h>

using namespace loomfolio;

TEST_CASE("JSON is read with its order kept") {
  std::string error;
  const Json j = read_json(R"( {"b": [1, -2.5e1, true, null], "a": "x\n\u00e9\ud83d\ude00"} )", error);
  REQUIRE(error == "");
  CHECK(j.members[0].first == "b");
  CHECK(j.at("b").items.size() == 4);
  CHECK(j.at("b").items[1].number == -25);
  CHECK(j.at("b").items[2].boolean);
  CHECK(j.at("b").items[3].kind == JsonKind::null);
  CHECK(j.at("a").text == "x\n\xc3\xa9\xf0\x9f\x98\x80");
  CHECK(j.at("c").number_or(7) == 7);
}

TEST_CASE("bad JSON is refused with its place") {
  struct Row {
    const char* text;
    const char* error;
  };
  for (const Row& row : {Row{"", "unexpected character at byte 0"}, Row{"[1,]", "unexpected character at byte 3"},
                         Row{"{\"a\" 1}", "expected : at byte 5"}, Row{"01", "number with a leading zero at byte 0"},
                         Row{"1.", "number without digits after the point at byte 0"}, Row{"\"a", "text without an end at byte 2"},
                         Row{"\"\\ud800\"", "half of a surrogate pair at byte 7"}, Row{"1 2", "text after the value at byte 2"},
                         Row{"\"\\x\"", "bad escape at byte 3"}, Row{"1e999", "number out of range at byte 0"},
                         Row{"truth", "unexpected character at byte 0"}}) {
    std::string error;
    CAPTURE(row.text);
    CHECK(read_json(row.text, error).kind == JsonKind::null);
    CHECK(error == row.error);
  }
  std::string error;
  read_json(std::string(100000, '['), error);
  CHECK(error == "nested too deep at byte 201");
}

TEST_CASE("a quoted text reads back as itself") {
  const std::string text = "a\"b\\c\n\x01\xc3\xa9";
  std::string error;
  CHECK(read_json(quote_json(text), error).text == text);
}
