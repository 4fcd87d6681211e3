// SPDX-License-Identifier: MIT
// Paragraphs, set with a face in which every character is 0.6 em wide: at 10 pt, 2.12 mm.
#include "sheets/text_flow.h"

#include <doctest/doctest.h>

#include "sheets/fixed_face.h"
#include "sheets/reference.h"

using namespace loomfolio;

namespace {

Paragraph plain(const std::string& text) { return {{{text, look::text, look::ink, {}}}, Align::left, "P"}; }

std::vector<std::string> lines_of(const std::string& text, double width) {
  std::vector<std::string> lines;
  for (const Item& item : set_paragraph(plain(text), Millimetres(width), {fixed_face}).items)
    if (const auto* line = std::get_if<TextItem>(&item)) lines.push_back(line->text);
  return lines;
}

using Lines = std::vector<std::string>;

}  // namespace

TEST_CASE("words wrap where the next would not fit") {
  CHECK(lines_of("one two three", 100) == Lines{"one two three"});
  CHECK(lines_of("one two three", 18) == Lines{"one two", "three"});
  CHECK(lines_of("one two three", 5) == Lines{"on", "e", "tw", "o", "th", "re", "e"});
  CHECK(lines_of("", 50).empty());
}

TEST_CASE("a line may break after a hyphen between letters, never inside a number with its unit") {
  CHECK(lines_of("oil-pressure", 18) == Lines{"oil-", "pressure"});
  CHECK(lines_of("AC 43.13-1B", 18) == Lines{"AC", "43.13-1B"});
  CHECK(lines_of("the AB-CDE", 16) == Lines{"the", "AB-CDE"});
  CHECK(lines_of("size 2.5\u00a0mm", 16) == Lines{"size", "2.5\u00a0mm"});
}

TEST_CASE("a figure stays with its unit, whatever sign follows") {
  CHECK(lines_of("at 12.4 V: stop", 18) == Lines{"at", "12.4 V:", "stop"});
  CHECK(lines_of("hang 2 kg.", 15) == Lines{"hang", "2 kg."});
  CHECK(lines_of("take 2 keys", 15) == Lines{"take 2", "keys"});  // no unit
}

TEST_CASE("East Asian text breaks anywhere") { CHECK(lines_of("電池電線", 5) == Lines{"電池", "電線"}); }

TEST_CASE("a reference mark stays whole and is measured as it may become") {
  const std::string text = "to sheet " + sheet_mark("wires");
  const Lines lines = lines_of(text, 26);
  REQUIRE(lines.size() == 1);
  CHECK(lines[0] == text);
}

TEST_CASE("height is a line step a line, and nothing stands outside the width") {
  const std::string text = "Slide the sleeve on first. Wires side by side in the barrel, not twisted.";
  for (const double width : {12.0, 33.3, 60.0, 200.0}) {
    const Block block = set_paragraph(plain(text), Millimetres(width), {fixed_face});
    int count = 0;
    for (const Item& item : block.items) {
      const auto* line = std::get_if<TextItem>(&item);
      if (line == nullptr) continue;
      ++count;
      CHECK(line->at.x.number() + fixed_face.measure(line->text, line->style).width.number() <= width + 0.2);
      CHECK(line->at.y < block.height);
    }
    CHECK(block.height.number() == doctest::Approx(4.5 * count));
  }
}

TEST_CASE("spans keep their style, and a word may change it in its middle") {
  const Paragraph paragraph{{{"Starter relay ", look::table, look::ink, {}},
                             {"86", look::table_bold, look::ink, {"wires", "w1"}},
                             {".", look::table, look::ink, {}}},
                            Align::left,
                            "P"};
  const Block block = set_paragraph(paragraph, Millimetres(100), {fixed_face});
  std::vector<std::string> texts;
  int links = 0;
  for (const Item& item : block.items) {
    if (const auto* text = std::get_if<TextItem>(&item)) texts.push_back(text->text);
    if (std::holds_alternative<LinkItem>(item)) ++links;
  }
  CHECK(texts == Lines{"Starter relay", "86", "."});
  CHECK(links == 1);
}

TEST_CASE("a language that reads from the right is set from the right") {
  const Block block = set_paragraph(plain("abc def"), Millimetres(60), {fixed_face, true});
  for (const Item& item : block.items) {
    if (const auto* text = std::get_if<TextItem>(&item)) {
      CHECK(text->align == Align::right);
      CHECK(text->at.x.number() == doctest::Approx(60));
    }
  }
}
