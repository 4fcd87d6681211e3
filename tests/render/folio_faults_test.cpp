// SPDX-License-Identifier: MIT
#include "render/folio_faults.h"

#include <doctest/doctest.h>

#include "render/render_helper.h"

namespace loomfolio {
using test::at;
using test::box;

namespace {

std::vector<std::string> faults_with(std::vector<Item> items) {
  Folio folio = test::small_folio();
  for (Item& item : items) folio.sheets[0].items.push_back(std::move(item));
  // None of them may stop a folio from being printed.
  CHECK(!render_pdf(folio, test::fonts()).empty());
  return find_folio_faults(folio);
}

using Lines = std::vector<std::string>;

}  // namespace

TEST_CASE("a sound folio has no faults") { CHECK(find_folio_faults(test::small_folio()).empty()); }

TEST_CASE("links must lead somewhere") {
  CHECK(faults_with({LinkItem{box(0, 0, 1, 1), "three", ""}}) ==
        Lines{"sheet `one`: links to sheet `three`, which is not there"});
  CHECK(faults_with({LinkItem{box(0, 0, 1, 1), "two", "horn"}}) ==
        Lines{"sheet `one`: links to `horn` on sheet `two`, which is not there"});
  CHECK(faults_with({LinkItem{box(0, 0, 1, 1), "two", ""}}).empty());
}

TEST_CASE("names are unique") {
  CHECK(faults_with({AnchorItem{"relay", at(1, 1)}}) == Lines{"sheet `one`: two anchors `relay`"});
  Folio folio = test::small_folio();
  folio.sheets.push_back(test::sheet_of_lines("two", {}));
  folio.sheets.push_back(test::sheet_of_lines("", {}));
  folio.sheets.back().height = Millimetres(0);
  CHECK(find_folio_faults(folio) ==
        Lines{"sheet `two`: there are two of this id", "sheet ``: has no id", "sheet ``: has no size"});
}

TEST_CASE("tags are balanced, known, and where they belong") {
  CHECK(faults_with({TagOpenItem{"P", ""}}) == Lines{"sheet `one`: tag `P` is not closed"});
  CHECK(faults_with({TagCloseItem{}}) == Lines{"sheet `one`: closes a tag that is not open"});
  CHECK(faults_with({TagOpenItem{"Cell", ""}, TagCloseItem{}}) == Lines{"sheet `one`: tag `Cell` is not known"});
  CHECK(faults_with({TagOpenItem{"Figure", ""}, TagCloseItem{}}) ==
        Lines{"sheet `one`: a figure has no text that stands for it"});
  CHECK(faults_with({TagOpenItem{"Table", ""}, TagOpenItem{"TD", ""}, TagCloseItem{}, TagCloseItem{}}) ==
        Lines{"sheet `one`: tag `TD` must stand in `TR`"});
  CHECK(faults_with({TagOpenItem{"Table", ""}, TagOpenItem{"TR", ""}, TagOpenItem{"TD", ""}, TagCloseItem{},
                     TagCloseItem{}, TagCloseItem{}})
            .empty());
}

}  // namespace loomfolio
