// SPDX-License-Identifier: MIT
// References between sheets.
#include "sheets/reference.h"

#include <doctest/doctest.h>

#include "sheets/draw.h"

using namespace loomfolio;

namespace {

const Paper bare_a4{"A4"};
const Paper bare_a3{"A3", Millimetres(297), Millimetres(420)};

Folio two_sheets(const std::string& text, const LinkItem& link) {
  Folio folio;
  Sheet first{"wires", "", "", "", Millimetres(210), Millimetres(297), {}};
  add_text(first.items, {}, text, look::text);
  first.items.push_back(link);
  Sheet second{"diagram", "", "", "", Millimetres(420), Millimetres(297), {}};
  second.items.push_back(AnchorItem{"w5", {Millimetres(100), Millimetres(100)}});
  folio.sheets = {first, second};
  return folio;
}

}  // namespace

TEST_CASE("marks become sheet number and grid field when the folio is whole") {
  Folio folio =
      two_sheets("see sheet " + sheet_mark("diagram") + ", " + cell_mark("diagram", "w5") + ".", {{}, "diagram", "w5"});
  CHECK(resolve_references(folio, bare_a4, bare_a3).empty());
  CHECK(std::get<TextItem>(folio.sheets[0].items[0]).text == "see sheet 2, B2.");
  CHECK(folio.sheets[0].items.size() == 2);
}

TEST_CASE("what leads nowhere is reported and its link removed") {
  Folio folio = two_sheets("see " + sheet_mark("nowhere"), {{}, "diagram", "w6"});
  CHECK(resolve_references(folio, bare_a4, bare_a3) == std::vector<std::string>{"nowhere", "diagram#w6"});
  CHECK(std::get<TextItem>(folio.sheets[0].items[0]).text == "see \u2013");
  CHECK(folio.sheets[0].items.size() == 1);
}

TEST_CASE("a mark is measured as wide as it may become, and plain text stays as it is") {
  CHECK(widest("to " + sheet_mark("a") + ", " + cell_mark("a", "b")) == "to 000, W0");
  CHECK(widest("no mark") == "no mark");
}
