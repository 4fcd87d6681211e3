// SPDX-License-Identifier: MIT
#include <doctest/doctest.h>

#include "sheets/decimal_sign.h"
#include "sheets/right_to_left.h"

using namespace loomfolio;

TEST_CASE("decimal numbers get the language's sign, names that look like them stay") {
  const auto with_comma = [](const std::string& text) { return with_decimal_sign(text, ",", {"1.2"}); };
  CHECK(with_comma("2.5") == "2,5");
  CHECK(with_comma("-0.12 V") == "-0,12 V");
  CHECK(with_comma("12.3 to 12.7") == "12,3 to 12,7");
  CHECK(with_comma("2.5\u00a0mm\u00b2, 7.5A") == "2,5\u00a0mm\u00b2, 7,5A");
  CHECK(with_comma("(0.24 in)") == "(0,24 in)");
  CHECK(with_comma("It reads 12.6.") == "It reads 12,6.");
  CHECK(with_comma("AC 43.13-1B") == "AC 43.13-1B");
  CHECK(with_comma("2.11.2026") == "2.11.2026");
  CHECK(with_comma("left-bar.82") == "left-bar.82");
  CHECK(with_comma("wires 1.2, 3.4 m") == "wires 1.2, 3,4 m");
  CHECK(with_comma("wire 1.2") == "wire 1.2");  // an id of the spec
  CHECK(with_comma("10 A, 20") == "10 A, 20");
}

TEST_CASE("the point is as it was where the language has a point") {
  CHECK(with_decimal_sign("2.5", ".", {}) == "2.5");
}

TEST_CASE("mixed lines are marked so that they read from the right and numbers keep their units") {
  const std::string fuse = "\u05e0\u05ea\u05d9\u05da";  // Hebrew for fuse
  CHECK(with_reading_marks("3 A") == "3 A");
  CHECK(with_reading_marks(fuse + " 3 A") == "\u200f" + fuse + " \u200e3 A");
  CHECK(with_reading_marks("F1 " + fuse) == "\u200fF1 " + fuse);
  CHECK(with_reading_marks(fuse + " 12") == "\u200f" + fuse + " 12");
  CHECK(with_reading_marks("  Relay") == "\u200f  Relay");
  CHECK(with_reading_marks(" B-") == "\u200f B-\u200e");
  CHECK(with_reading_marks(fuse + " B+ 3") == "\u200f" + fuse + " B+\u200e 3");
  // A line that begins within a name: the number with its letter stays one piece, the bracket goes to the far end.
  CHECK(with_reading_marks("43.13-1B)") == "\u200f\u200e43.13-1B)");
  CHECK(with_reading_marks(fuse + " 10-15 A") == "\u200f" + fuse + " \u200e10-15 A");
}

TEST_CASE("a block turned round has its texts at the other side") {
  Block block{Millimetres(100), Millimetres(10), {}};
  add_text(block.items, {Millimetres(5), Millimetres(4)}, "a", look::text);
  add_line(block.items, {Millimetres(0), Millimetres(0)}, {Millimetres(30), Millimetres(0)}, {});
  add_rect(block.items, {Millimetres(10), Millimetres(0), Millimetres(20), Millimetres(5)}, {});
  const Block turned = mirrored_if(true, block);
  const auto& text = std::get<TextItem>(turned.items[0]);
  CHECK(text.at.x.number() == doctest::Approx(95));
  CHECK(text.align == Align::right);
  const auto& line = std::get<PathItem>(turned.items[1]);
  CHECK(std::get<PathMove>(line.pieces[0]).to.x.number() == doctest::Approx(100));
  CHECK(std::get<PathLine>(line.pieces[1]).to.x.number() == doctest::Approx(70));
  CHECK(std::get<RectItem>(turned.items[2]).rect.x.number() == doctest::Approx(70));
  CHECK(std::get<TextItem>(mirrored_if(false, block).items[0]).at.x.number() == doctest::Approx(5));
}
