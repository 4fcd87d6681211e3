// SPDX-License-Identifier: MIT
// Where ink falls and where it does not, the same in a PNG and in a PDF as another program draws it.
#include "render/picture.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>

#include "render/render_helper.h"

namespace loomfolio {
using test::at;
using test::box;
using test::fonts;
using test::Picture;

namespace {

constexpr double dpi = 254;  // ten dots a millimetre
constexpr Colour black{}, white{0xff, 0xff, 0xff};

Folio folio_of(std::vector<Item> items) {
  Folio folio;
  Sheet sheet;
  sheet.id = "one";
  sheet.width = sheet.height = Millimetres(60);
  sheet.items = std::move(items);
  folio.sheets = {sheet};
  return folio;
}

struct Drawn {
  std::string how;
  Picture picture;
};

std::vector<Drawn> draw_both(const std::vector<Item>& items, Colouring colouring = Colouring::full) {
  const Folio folio = folio_of(items);
  return {{"PNG", test::read_png(render_png(folio.sheets[0], fonts(), dpi, colouring), dpi)},
          {"PDF", test::read_pdf(render_pdf(folio, fonts(), colouring), dpi)}};
}

Pen pen(double width, Cap cap = Cap::butt, std::vector<Millimetres> dashes = {}) {
  return {black, Millimetres(width), std::move(dashes), cap};
}

PathItem outlined(std::vector<PathPiece> pieces, Pen with) {
  PathItem path;
  path.pieces = std::move(pieces);
  path.stroke.pen = std::move(with);
  return path;
}

}  // namespace

TEST_CASE("a PNG has the size of the sheet at its dots per inch") {
  const Picture picture = test::read_png(render_png(test::small_folio().sheets[0], fonts(), 100), 100);
  CHECK(picture.width == 827);    // 210 mm
  CHECK(picture.height == 1170);  // 297 mm
  CHECK(picture.at(45, 55) == Colour{0xcc, 0x22, 0x22});
  CHECK(picture.at(150, 150) == white);
  const std::string png = render_png(test::small_folio().sheets[0], fonts(), 100);
  CHECK(png == render_png(test::small_folio().sheets[0], fonts(), 100));
}

TEST_CASE("an arc runs clockwise from the right, and a line leads to its start") {
  for (const auto& [how, picture] :
       draw_both({outlined({PathMove{at(10, 30)}, PathArc{at(30, 30), Millimetres(10), 0, 90}}, pen(1))})) {
    CAPTURE(how);
    REQUIRE(picture.width == 600);
    const double slant = 10 * std::sqrt(0.5);
    CHECK(picture.at(30 + slant, 30 + slant) == black);
    CHECK(picture.at(30, 40 - 0.2) == black);
    CHECK(picture.at(30 + slant, 30 - slant) == white);
    CHECK(picture.at(30 - slant, 30 + slant) == white);
    CHECK(picture.at(20, 30) == black);  // the line
  }
}

TEST_CASE("an arc that ends before it starts goes round through the right; a whole circle stands alone") {
  const auto drawn =
      draw_both({outlined({PathArc{at(15, 15), Millimetres(8), 270, 90}}, pen(1)),
                 outlined({PathMove{at(5, 50)}, PathLine{at(10, 50)}, PathArc{at(40, 40), Millimetres(8)}}, pen(1))});
  for (const auto& [how, picture] : drawn) {
    CAPTURE(how);
    CHECK(picture.at(23, 15) == black);
    CHECK(picture.at(7, 15) == white);
    CHECK(picture.at(32, 40) == black);
    CHECK(picture.at(7, 50) == black);
    for (double x = 11; x < 47; x += 1) {
      CAPTURE(x);
      CHECK(picture.at(x, 50) == white);
    }
  }
}

TEST_CASE("caps and dashes") {
  const auto line = [](double y) { return std::vector<PathPiece>{PathMove{at(10, y)}, PathLine{at(50, y)}}; };
  const auto drawn = draw_both({outlined(line(10), pen(4)), outlined(line(20), pen(4, Cap::square)),
                                outlined(line(30), pen(4, Cap::round)),
                                outlined(line(40), pen(4, Cap::butt, {Millimetres(6), Millimetres(3)}))});
  for (const auto& [how, picture] : drawn) {
    CAPTURE(how);
    CHECK(picture.at(9, 10) == white);
    CHECK(picture.at(9, 20) == black);
    CHECK(picture.at(9, 21.8) == black);
    CHECK(picture.at(9, 30) == black);
    CHECK(picture.at(8.3, 31.8) == white);
    CHECK(picture.at(13, 40) == black);
    CHECK(picture.at(17.5, 40) == white);
    CHECK(picture.at(22, 40) == black);
    CHECK(picture.at(30, 7.9) == white);
    CHECK(picture.at(30, 8.1) == black);
    CHECK(picture.at(30, 11.9) == black);
    CHECK(picture.at(30, 12.1) == white);
  }
}

TEST_CASE("corners are round, curves pass where they should, and fills stay inside") {
  RectItem rect{box(10, 10, 20, 20), Millimetres(5)};
  rect.stroke.is_drawn = false;
  rect.fill = {true, black};
  RectItem too_round{box(40, 10, 4, 20), Millimetres(50)};
  too_round.stroke.is_drawn = false;
  too_round.fill = {true, black};
  const auto curve = outlined({PathMove{at(10, 50)}, PathCurve{at(10, 40), at(50, 40), at(50, 50)}}, pen(1));
  for (const auto& [how, picture] : draw_both({rect, too_round, curve})) {
    CAPTURE(how);
    CHECK(picture.at(10.5, 10.5) == white);
    CHECK(picture.at(29.5, 29.5) == white);
    CHECK(picture.at(10.1, 20) == black);
    CHECK(picture.at(20, 10.1) == black);
    CHECK(picture.at(9.8, 20) == white);
    CHECK(picture.at(42, 10.2) == black);
    CHECK(picture.at(40.2, 10.2) == white);
    CHECK(picture.at(30, 42.5) == black);  // half way: (50 + 3 * 40 + 3 * 40 + 50) / 8
    CHECK(picture.at(30, 49) == white);
  }
}

TEST_CASE("text falls on its baseline, and a character that no face has is an open box") {
  const TextStyle large{FaceName::sans, Weight::bold, 72};
  for (const auto& [how, picture] :
       draw_both({TextItem{at(10, 40), "I", large, black}, TextItem{at(30, 40), "漢", large, black}})) {
    CAPTURE(how);
    const double middle = 10 + fonts().measure().measure("I", large).width.number() / 2;
    CHECK(picture.at(middle, 39.5) == black);
    CHECK(picture.at(middle, 40.5) == white);
    const double width = fonts().measure().measure("漢", large).width.number();
    REQUIRE(width > 5);
    CHECK(picture.at(30 + width * 0.5, 40) == black);
    CHECK(picture.at(30 + width * 0.1, 40 - width / 2) == black);
    CHECK(picture.at(30 + width * 0.5, 40 - width / 2) == white);
  }
}

TEST_CASE("in grey every dot is grey, as light as the colour was") {
  const auto colours = {Colour{0xcc, 0x22, 0x22}, Colour{0xff, 0xff, 0x00}, Colour{0x00, 0x00, 0xff}};
  // Luminance in linear light, then as sRGB: #cc2222 0.2126 * 0.6038 + 0.7874 * 0.0160 = 0.1410 -> #69;
  // #ffff00 0.9278 -> #f7; #0000ff 0.0722 -> #4c (weights: ITU-R BT.709; coding: IEC 61966-2-1).
  const std::uint8_t lightness[] = {0x69, 0xf7, 0x4c};
  std::vector<Item> items;
  double x = 5;
  for (const Colour colour : colours) {
    RectItem rect{box(x, 5, 10, 10), {}};
    rect.stroke.is_drawn = false;
    rect.fill = {true, colour};
    items.push_back(rect);
    items.push_back(TextItem{at(x, 30), "abc", {FaceName::sans, Weight::bold, 20}, colour});
    PathItem path = outlined({PathMove{at(x, 40)}, PathLine{at(x + 7, 47)}}, pen(2));
    path.stroke.pen.colour = colour;
    items.push_back(path);
    x += 15;
  }
  for (const auto& [how, picture] : draw_both(items, Colouring::grey)) {
    CAPTURE(how);
    REQUIRE(!picture.dots.empty());
    CHECK(std::all_of(picture.dots.begin(), picture.dots.end(),
                      [](Colour c) { return c.red == c.green && c.green == c.blue; }));
    for (int i = 0; i < 3; ++i) CHECK(picture.at(10 + 15 * i, 10).red == lightness[i]);
  }
  for (const auto& [how, picture] : draw_both(items)) {
    CAPTURE(how);
    CHECK(picture.at(25, 10) == Colour{0xff, 0xff, 0x00});
  }
}

}  // namespace loomfolio
