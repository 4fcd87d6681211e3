// SPDX-License-Identifier: MIT
// Columns and rows of tables.
#include "sheets/fixed_face.h"
#include "sheets/table.h"

#include <doctest/doctest.h>

#include <algorithm>

using namespace loomfolio;

namespace {

Table two_columns(const std::string& left, const std::string& right) {
  Table table;
  table.columns = {{"A", CellAlign::near, Wrapping::keeps, 0}, {"B", CellAlign::near, Wrapping::wraps, 1}};
  table.rows.push_back({{text_cell(left), text_cell(right)}});
  return table;
}

std::vector<TextItem> texts_of(const Block& block) {
  std::vector<TextItem> texts;
  for (const Item& item : block.items)
    if (const auto* text = std::get_if<TextItem>(&item)) texts.push_back(*text);
  return texts;
}

double right_edge(const TextItem& text) {
  const double width = fixed_face.measure(text.text, text.style).width.number();
  return text.at.x.number() + (text.align == Align::right ? 0 : text.align == Align::centre ? width / 2 : width);
}

}  // namespace

TEST_CASE("columns get their natural width, and what is left goes to those that stretch") {
  const std::vector<Millimetres> widths = fit_columns(two_columns("12345", "some words"), Millimetres(100), fixed_face);
  CHECK(widths[0].number() == doctest::Approx(fixed_face.measure("12345", look::table).width.number()));
  CHECK((widths[0] + widths[1] + look::column_gap).number() == doctest::Approx(100));
}

TEST_CASE("where room is short, wrapping columns give way and others keep their lines") {
  const std::vector<Millimetres> widths =
      fit_columns(two_columns("12345", "a sentence of several words that must wrap"), Millimetres(45), fixed_face);
  CHECK(widths[0].number() == doctest::Approx(fixed_face.measure("12345", look::table).width.number()));
  CHECK((widths[0] + widths[1] + look::column_gap).number() == doctest::Approx(45).epsilon(0.001));
}

TEST_CASE("a column of long texts does not crowd out one of shorter texts") {
  Table table;
  table.columns = {{"A", CellAlign::near, Wrapping::wraps, 1}, {"B", CellAlign::near, Wrapping::wraps, 1}};
  std::string longer;
  for (int i = 0; i < 40; ++i) longer += "word ";
  table.rows.push_back({{text_cell("a text of middling length"), text_cell(longer)}});
  const std::vector<Millimetres> widths = fit_columns(table, Millimetres(120), fixed_face);
  CHECK(widths[0].number() ==
        doctest::Approx(fixed_face.measure("a text of middling length", look::table).width.number()));
}

TEST_CASE("decimal points stand under each other") {
  Table table;
  table.columns = {{"A", CellAlign::point, Wrapping::keeps, 0}};
  for (const char* number : {"0.35", "142", "7.5"}) table.rows.push_back({{text_cell(number)}});
  std::vector<double> points;
  for (const TextItem& text : texts_of(table_block(table, Millimetres(40), {fixed_face}))) {
    if (text.text == "A") continue;
    const std::string before = text.text.substr(0, text.text.find('.'));
    points.push_back(text.at.x.number() + fixed_face.measure(before, text.style).width.number());
  }
  REQUIRE(points.size() == 3);
  CHECK(points[0] == doctest::Approx(points[1]));
  CHECK(points[0] == doctest::Approx(points[2]));
}

TEST_CASE("no cell leaves its table, however narrow") {
  for (const double width : {30.0, 60.0, 178.0}) {
    const Block block = table_block(two_columns("battery to starter relay", "Incomprehensibilities happen here"),
                                    Millimetres(width), {fixed_face});
    for (const TextItem& text : texts_of(block)) CHECK(right_edge(text) <= width + 0.2);
  }
}

TEST_CASE("every fifth row of a long list is darker, counted anew in each group") {
  Table table;
  table.columns = {{"A", CellAlign::near, Wrapping::keeps, 0}};
  for (const int rows : {11, 9, 14}) {
    table.rows.push_back(group_row("group"));
    for (int i = 0; i < rows; ++i) table.rows.push_back({{text_cell("row")}});
  }
  int bands = 0;
  for (const Item& item : table_block(table, Millimetres(50), {fixed_face}).items)
    if (const auto* rect = std::get_if<RectItem>(&item)) bands += rect->fill.is_filled ? 1 : 0;
  CHECK(bands == 4);  // none among nine rows
}

TEST_CASE("a column in which no row has anything is left out, with its head") {
  Table table = two_columns("left", "");
  table.columns.push_back({"C", CellAlign::near, Wrapping::keeps, 0});
  table.rows.front().cells.push_back(text_cell("right"));
  table.rows.push_back(group_row("a head over all"));
  const Table kept = without_empty_columns(table);
  REQUIRE(kept.columns.size() == 2);
  CHECK(kept.columns[1].head == "C");
  CHECK(kept.rows.front().cells[1].lines.front().spans.front().text == "right");
  CHECK(kept.rows.back().cells.size() == 1);
}
