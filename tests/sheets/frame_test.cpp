// SPDX-License-Identifier: MIT
// Frame, grid and title strip.
#include "sheets/frame.h"

#include <doctest/doctest.h>

#include "sheets/draw.h"
#include "sheets/print_text.h"

using namespace loomfolio;

namespace {

const Paper a4{"A4", Millimetres(210), Millimetres(297), Millimetres(20), Millimetres(12), Millimetres(8), "A3"};
const Paper a3{"A3", Millimetres(297), Millimetres(420), Millimetres(20), Millimetres(12), Millimetres(8), ""};

Words strip_words() {
  return Words("en", false,
               {{"strip.machine", "Machine"},
                {"strip.job", "Job"},
                {"strip.revision", "Revision"},
                {"strip.checked_by", "Checked by"},
                {"strip.fingerprint", "Fingerprint"},
                {"strip.sheet", "Sheet"},
                {"strip.sheet_of", "{sheet} of {of}"},
                {"date.day", "{day} {month} {year}"},
                {"date.month_11", "November"}});
}

}  // namespace

TEST_CASE("a text page keeps the binding margin at the left and the strip at its foot") {
  const PageShape page = upright_page(a4);
  CHECK(page.width == Millimetres(210));
  CHECK(page.frame.x == Millimetres(20));
  CHECK(page.frame.right() == Millimetres(198));
  CHECK(page.strip.bottom() == Millimetres(285));
  CHECK(page.body.bottom() < page.strip.y);
  CHECK(page.columns == 0);
  CHECK(grid_cell(page, {Millimetres(50), Millimetres(50)}).empty());
}

TEST_CASE("a drawing stands across and its grid leaves out the letters I and O") {
  const PageShape page = across_page(a3);
  CHECK(page.width == Millimetres(420));
  CHECK(page.height == Millimetres(297));
  CHECK(page.columns == 6);
  CHECK(page.rows == 4);
  CHECK(grid_cell(page, {page.frame.x + Millimetres(1), page.frame.y + Millimetres(1)}) == "A1");
  CHECK(grid_cell(page, {page.frame.right(), page.frame.bottom()}) == "D6");
  CHECK(grid_cell(page, {Millimetres(0), Millimetres(0)}) == "A1");
}

TEST_CASE("the strip says the same on every sheet, and nothing in it leaves its page") {
  Document document;
  document.title = "A machine whose name is much too long for the narrow field that the title strip keeps for names";
  document.job = "2026-017";
  document.revision = "C";
  document.date = "2026-11-02";
  const FixedTextMeasure measure;
  for (const PageShape& page : {upright_page(a4), across_page(a3)}) {
    TitleStrip strip = title_strip_of(document, "7f3a91c0d2e4f601");
    strip.sheet = 6;
    strip.of = 22;
    Sheet sheet;
    put_frame(sheet, page, strip, strip_words(), measure);
    std::vector<std::string> texts;
    for (const Item& item : sheet.items) {
      const auto* text = std::get_if<TextItem>(&item);
      if (text == nullptr) continue;
      texts.push_back(text->text);
      CHECK(text->style.points >= 7);
      if (text->align == Align::left) {
        CHECK(text->at.x + measure.measure(text->text, text->style).width <= page.frame.right());
      }
    }
    const auto has = [&](const char* wanted) { return std::find(texts.begin(), texts.end(), wanted) != texts.end(); };
    CHECK(has("6 of 22"));
    CHECK(has("7f3a 91c0"));
    CHECK(has("2026-017"));
    CHECK_FALSE(has(document.title.c_str()));
  }
}

TEST_CASE("a date is printed in words only when it is a day of the calendar's form") {
  CHECK(print_date("2026-11-02", strip_words()) == "2 November 2026");
  CHECK(print_date("2026-13-02", strip_words()) == "2026-13-02");
  CHECK(print_date("spring", strip_words()) == "spring");
}

TEST_CASE("text that does not fit is set smaller, then cut") {
  const FixedTextMeasure measure;
  const FittedText whole = fit_text("short", look::strip_value, Millimetres(40), measure);
  CHECK(whole.text == "short");
  CHECK(whole.style == look::strip_value);
  const FittedText cut = fit_text("größer als das Feld", look::strip_value, Millimetres(10), measure);
  CHECK(cut.style.points == look::least_points);
  CHECK(cut.text.ends_with("\u2026"));
  CHECK(measure.measure(cut.text, cut.style).width <= Millimetres(10));
}
