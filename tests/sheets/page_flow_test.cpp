// SPDX-License-Identifier: MIT
// What stays together at the end of a page.
#include "sheets/page_flow.h"

#include <doctest/doctest.h>

#include <algorithm>

#include "base/text_measure.h"
#include "sheets/sample_sheets.h"
#include "sheets/table.h"

using namespace loomfolio;

namespace {

/// Sheets of a flow that is filled but for `left` and then goes on as `more` says.
template <class More>
std::vector<Sheet> sheets_after(Millimetres left, const More& more) {
  const SampleFolio& sample = shared_sample("driving-lamp-kit");
  const FixedTextMeasure measure;
  const FolioInput input = sample.input(measure);
  const SheetContext context{input, sample.solved().front(), {}, {}};
  PageFlow flow(context, {"flow", "Flow", {}});
  flow.add(Block{flow.width(), flow.room() - left, {}}, {});
  more(flow);
  return flow.take();
}

const TextItem* text_on(const Sheet& sheet, const std::string& text) {
  for (const Item& item : sheet.items)
    if (const auto* shown = std::get_if<TextItem>(&item); shown != nullptr && shown->text == text) return shown;
  return nullptr;
}

const AnchorItem* anchor_on(const Sheet& sheet, const std::string& name) {
  for (const Item& item : sheet.items)
    if (const auto* anchor = std::get_if<AnchorItem>(&item); anchor != nullptr && anchor->name == name) return anchor;
  return nullptr;
}

Table table_of(int rows) {
  Table table;
  table.columns = {{"Head", CellAlign::near, Wrapping::wraps, 1}};
  for (int i = 0; i < rows; ++i) table.rows.push_back({{text_cell("row " + std::to_string(i))}});
  return table;
}

void add_headed(PageFlow& flow) {
  flow.add_heading("Heading");
  flow.items().push_back(AnchorItem{"here", {}});
  flow.add_lead("Lead", look::paragraph_gap);
}

}  // namespace

TEST_CASE("a heading and its lead go to the next page with a block that finds no room, and links to it with them") {
  const auto sheets = sheets_after(Millimetres(60), [](PageFlow& flow) {
    add_headed(flow);
    flow.add(Block{flow.width(), Millimetres(50), {}}, {});
  });
  REQUIRE(sheets.size() == 2);
  CHECK(text_on(sheets[0], "Heading") == nullptr);
  CHECK(text_on(sheets[0], "Lead") == nullptr);
  REQUIRE(text_on(sheets[1], "Heading") != nullptr);
  REQUIRE(text_on(sheets[1], "Lead") != nullptr);
  CHECK(text_on(sheets[1], "Heading")->at.y < text_on(sheets[1], "Lead")->at.y);
  CHECK(text_on(sheets[1], "Heading")->at.y < Millimetres(40));
  REQUIRE(anchor_on(sheets[1], "here") != nullptr);
  CHECK(anchor_on(sheets[1], "here")->at.y.number() >= 0);
}

TEST_CASE("a heading asks its table how high it begins: a short one is not cut, of a long one three rows do") {
  for (const int rows : {1, 4, 30}) {
    CAPTURE(rows);
    for (double left = 20; left < 80; left += 2) {
      CAPTURE(left);
      const auto sheets = sheets_after(Millimetres(left), [rows](PageFlow& flow) {
        add_headed(flow);
        add_table(flow, table_of(rows));
      });
      const bool stays = text_on(sheets[0], "Heading") != nullptr;
      CHECK(stays == (text_on(sheets[0], "Lead") != nullptr));
      const int least = rows == 30 ? 3 : rows;
      CHECK(stays == (text_on(sheets[0], "row " + std::to_string(least - 1)) != nullptr));
    }
  }
}

TEST_CASE("a heading stays where what follows it fits") {
  const auto sheets = sheets_after(Millimetres(60), [](PageFlow& flow) {
    add_headed(flow);
    flow.add(Block{flow.width(), Millimetres(20), {}}, {});
    flow.add(Block{flow.width(), Millimetres(50), {}}, {});  // another block is not its business
  });
  REQUIRE(sheets.size() == 2);
  CHECK(text_on(sheets[0], "Heading") != nullptr);
  CHECK(text_on(sheets[1], "Heading") == nullptr);
}
