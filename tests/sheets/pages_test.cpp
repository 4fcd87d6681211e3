// SPDX-License-Identifier: MIT
// What must hold of every page of every sample, on each of the four papers.
#include <doctest/doctest.h>

#include <algorithm>
#include <set>

#include "sheets/fixed_face.h"
#include "sheets/frame.h"
#include "sheets/sample_sheets.h"

using namespace loomfolio;

namespace {

struct TextBox {
  Rect rect;
  std::string text;
};

/// The box of a text's capitals: what a reader sees of it, nearly.
TextBox box_of(const TextItem& text) {
  const Millimetres width = fixed_face.measure(text.text, text.style).width;
  const Millimetres height(text.style.points * 25.4 / 72 * 0.75);
  const double shift = text.align == Align::left ? 0 : text.align == Align::centre ? 0.5 : 1;
  if (text.is_upright) return {{text.at.x - height, text.at.y - width * (1 - shift), height, width}, text.text};
  return {{text.at.x - width * shift, text.at.y - height, width, height}, text.text};
}

bool overlaps(const Rect& a, const Rect& b) {
  const double slack = 0.2;
  return std::min(a.right(), b.right()) - std::max(a.x, b.x) > Millimetres(slack) &&
         std::min(a.bottom(), b.bottom()) - std::max(a.y, b.y) > Millimetres(slack);
}

std::vector<TextBox> text_boxes(const Sheet& sheet) {
  std::vector<TextBox> boxes;
  for (const Item& item : sheet.items)
    if (const auto* text = std::get_if<TextItem>(&item)) boxes.push_back(box_of(*text));
  std::sort(boxes.begin(), boxes.end(), [](const TextBox& a, const TextBox& b) { return a.rect.x < b.rect.x; });
  return boxes;
}

void check_texts(const Sheet& sheet) {
  const std::vector<TextBox> boxes = text_boxes(sheet);
  for (std::size_t i = 0; i < boxes.size(); ++i) {
    const Rect& rect = boxes[i].rect;
    const bool is_on_paper = rect.x.number() >= 4 && rect.y.number() >= 4 &&
                             rect.right() <= sheet.width - Millimetres(4) &&
                             rect.bottom() <= sheet.height - Millimetres(4);
    if (!is_on_paper) FAIL_CHECK(boxes[i].text << " is off the page");
    for (std::size_t k = i + 1; k < boxes.size() && boxes[k].rect.x < rect.right(); ++k)
      if (overlaps(rect, boxes[k].rect)) FAIL_CHECK(boxes[i].text << " lies on " << boxes[k].text);
  }
}

void check_tags(const Sheet& sheet) {
  int depth = 0;
  for (const Item& item : sheet.items) {
    if (std::holds_alternative<TagOpenItem>(item)) ++depth;
    if (std::holds_alternative<TagCloseItem>(item)) --depth;
    CHECK(depth >= 0);
  }
  CHECK(depth == 0);
}

void check_styles(const Sheet& sheet) {
  for (const Item& item : sheet.items) {
    const auto* text = std::get_if<TextItem>(&item);
    if (text == nullptr) continue;
    CHECK_MESSAGE(text->style.points >= 7, text->text);
    CHECK_MESSAGE(text->text.find('<') == std::string::npos, "no words for " << text->text);
    CHECK_MESSAGE(text->text.find('{') == std::string::npos, "an unfilled place in " << text->text);
    CHECK_MESSAGE(text->text.find('\x1f') == std::string::npos, "an unresolved reference in " << text->text);
  }
}

void check_folio(const SampleFolio& sample) {
  const Folio& folio = sample.composed().folio;
  CHECK(sample.composed().lost_references == std::vector<std::string>{});
  std::set<std::string> ids;
  for (const Sheet& sheet : folio.sheets) {
    CAPTURE(sheet.id);
    CHECK(ids.insert(sheet.id).second);
    check_texts(sheet);
    check_tags(sheet);
    check_styles(sheet);
  }
}

}  // namespace

TEST_CASE("every page of every sample is whole, on its own paper") {
  REQUIRE_FALSE(sample_names().empty());
  for (const std::string& name : sample_names()) {
    CAPTURE(name);
    const SampleFolio& sample = shared_sample(name);
    CHECK(sample.composed().folio.sheets.size() >= 5);
    check_folio(sample);
  }
}

TEST_CASE("a kit is whole on all four papers") {
  for (const char* paper : {"A4", "A3", "Letter", "Tabloid"}) {
    CAPTURE(paper);
    check_folio(SampleFolio("driving-lamp-kit", paper, fixed_face));
  }
}

TEST_CASE("the same sample gives the same items twice") {
  const SampleFolio& first = shared_sample("electric-start-kit");
  const SampleFolio second("electric-start-kit", "", fixed_face);
  const Folio& a = first.composed().folio;
  const Folio& b = second.composed().folio;
  REQUIRE(a.sheets.size() == b.sheets.size());
  for (std::size_t i = 0; i < a.sheets.size(); ++i) {
    REQUIRE(a.sheets[i].items.size() == b.sheets[i].items.size());
    for (std::size_t k = 0; k < a.sheets[i].items.size(); ++k) {
      const auto* x = std::get_if<TextItem>(&a.sheets[i].items[k]);
      const auto* y = std::get_if<TextItem>(&b.sheets[i].items[k]);
      REQUIRE((x == nullptr) == (y == nullptr));
      if (x != nullptr) CHECK(x->text == y->text);
    }
  }
}
