// SPDX-License-Identifier: MIT
// Places of cavities by row and column. The faces are made up here: nothing in them is a figure of a real connector.
#include "sheets/cavity_place.h"

#include <doctest/doctest.h>

#include "sheets/sample_sheets.h"

using namespace loomfolio;

namespace {

Kind connector(std::vector<Point> cavities, View seen = View::wire_side) {
  Kind kind;
  Face face;
  face.seen = seen;
  kind.faces.push_back(face);
  for (const Point at : cavities) {
    KindTerminal terminal;
    terminal.form = TerminalForm::cavity;
    terminal.face = 0;
    terminal.at = at;
    kind.terminals.push_back(terminal);
  }
  return kind;
}

Point at(double x, double y) { return {Millimetres(x), Millimetres(y)}; }

}  // namespace

TEST_CASE("cavities are counted by row from the top and by column from the left, in whatever order they are listed") {
  const Kind kind = connector({at(20, 16), at(8, 10), at(14, 10), at(20, 10), at(8, 16)});
  const auto first = find_cavity_place(kind, 0), second = find_cavity_place(kind, 1);
  REQUIRE(first);
  CHECK(first->row == 2);
  CHECK(first->column == 3);  // the second row has nothing in its middle: the column counts all the same
  CHECK(first->rows == 2);
  REQUIRE(second);
  CHECK(second->row == 1);
  CHECK(second->column == 1);
}

TEST_CASE("cavities a little off their line still stand in it; rows set off by half a pitch have no columns") {
  CHECK(find_cavity_place(connector({at(8, 10), at(14, 10.5), at(8.4, 16), at(14, 16)}), 1)->row == 1);
  CHECK_FALSE(find_cavity_place(connector({at(8, 10), at(14, 10), at(11, 15), at(17, 15)}), 2));
}

TEST_CASE("only what is a cavity of a connector among others is counted") {
  CHECK_FALSE(find_cavity_place(connector({at(8, 10)}), 0));
  CHECK_FALSE(find_cavity_place(connector({at(8, 10), at(14, 10)}, View::front), 0));
  Kind kind = connector({at(8, 10), at(14, 10)});
  kind.terminals[0].form = TerminalForm::stud;
  CHECK_FALSE(find_cavity_place(kind, 0));
  kind.terminals[1].face = -1;
  CHECK_FALSE(find_cavity_place(kind, 1));
}

TEST_CASE("the terminal map says where each cavity of a connector stands") {
  const auto is_said = [](const std::string& sample, const std::string& text) {
    for (const Sheet& sheet : shared_sample(sample).composed().folio.sheets) {
      if (sheet.id.find("terminals") == std::string::npos) continue;
      std::string all;  // a narrow column may break it behind the comma
      for (const Item& item : sheet.items)
        if (const auto* line = std::get_if<TextItem>(&item)) all += line->text + " ";
      if (all.find(text) != std::string::npos) return true;
    }
    return false;
  };
  CHECK(is_said("street-single", "row\u00a03, column\u00a01"));  // L of the left handlebar switches
  CHECK_FALSE(is_said("street-single", "row\u00a09"));
  CHECK(is_said("electric-start-kit", "row\u00a01, column\u00a02"));  // 15 of the key switch
}
