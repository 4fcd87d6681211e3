// SPDX-License-Identifier: MIT
// Every block on one page, none too full, few pages.
#include "sheets/page_packing.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <array>

using namespace loomfolio;

namespace {

/// Each as wide as the page.
std::vector<FreeHeights> heights_of(const std::vector<double>& numbers) {
  std::vector<FreeHeights> heights;
  for (const double number : numbers) heights.push_back({Millimetres(number)});
  return heights;
}

/// Each of that height in a column, and half as high where it has the page's width.
std::vector<FreeHeights> halves_of(const std::vector<double>& numbers) {
  std::vector<FreeHeights> heights;
  for (const double number : numbers) heights.push_back({Millimetres(number / 2), Millimetres(number)});
  return heights;
}

using Places = std::vector<std::size_t>;

}  // namespace

TEST_CASE("pages are filled, and no block is lost") {
  const std::vector<FreeHeights> heights = heights_of({60, 150, 40, 90, 100, 30, 110, 70});
  const PackingRoom room{Millimetres(160), Millimetres(200), Millimetres(5)};
  const auto pages = pack_pages(heights, room);
  CHECK(pages.size() == 4);  // 650 and the gaps: three pages hold 560 at most
  std::vector<int> seen(heights.size(), 0);
  for (std::size_t p = 0; p < pages.size(); ++p) {
    const Places& blocks = pages[p].whole;
    double used = -5;
    for (const std::size_t i : blocks) {
      ++seen[i];
      used += heights[i].whole.number() + 5;
    }
    CHECK(pages[p].columns[0].empty());
    CHECK(used <= (p == 0 ? 160 : 200));
    CHECK(std::is_sorted(blocks.begin(), blocks.end()));
    if (p > 1) CHECK(pages[p - 1].whole.front() < blocks.front());
  }
  CHECK(std::all_of(seen.begin(), seen.end(), [](int count) { return count == 1; }));
}

TEST_CASE("a page that is half empty stands last, so that what follows may begin on it") {
  const PackingRoom room{Millimetres(200), Millimetres(200), Millimetres(5)};
  const auto pages = pack_pages(heights_of({190, 60, 180, 170}), room);
  REQUIRE(pages.size() == 4);
  CHECK(pages.front().whole == Places{0});
  CHECK(pages.back().whole == Places{1});
}

TEST_CASE("a block that no page holds has one alone") {
  const auto pages = pack_pages(heights_of({300, 20}), {Millimetres(100), Millimetres(200), Millimetres(5)});
  REQUIRE(pages.size() == 2);
  CHECK(pages[0].whole == Places{1});
  CHECK(pages[1].whole == Places{0});
}

TEST_CASE("blocks of half the width stand in two even columns") {
  const PackingRoom room{Millimetres(200), Millimetres(200), Millimetres(6)};
  const auto pages = pack_pages(halves_of({50, 120, 60, 40}), room);
  REQUIRE(pages.size() == 1);
  CHECK(pages[0].whole.empty());
  // 120 + 6 beside 50 + 60 + 40 and two gaps would be 162 high; 40 + 6 + 120 is 166; 0 and 1 stand apart at 156 or more.
  double high = 0;
  for (const Places& column : pages[0].columns) {
    double sum = -6;
    for (const std::size_t i : column) sum += std::array{50, 120, 60, 40}[i] + 6;
    high = std::max(high, sum);
  }
  CHECK(high == 162);
}

TEST_CASE("high blocks and low ones fill both columns of a page, though each pair of rows would need more") {
  const PackingRoom room{Millimetres(200), Millimetres(200), Millimetres(5)};
  const auto pages = pack_pages(halves_of({120, 120, 70, 70}), room);
  REQUIRE(pages.size() == 1);
  CHECK(pages[0].columns[0].size() == 2);
  CHECK(pages[0].columns[1].size() == 2);
}

TEST_CASE("what whole blocks leave of a page is two columns") {
  const PackingRoom room{Millimetres(200), Millimetres(200), Millimetres(5)};
  std::vector<FreeHeights> heights = halves_of({60, 70});
  heights.push_back({Millimetres(120)});
  const auto pages = pack_pages(heights, room);
  REQUIRE(pages.size() == 1);
  CHECK(pages[0].whole == Places{2});
  CHECK(pages[0].columns[0] == Places{0});
  CHECK(pages[0].columns[1] == Places{1});
}

TEST_CASE("a block with nothing beside it takes the whole width") {
  const auto pages = pack_pages(halves_of({60}), {Millimetres(200), Millimetres(200), Millimetres(5)});
  REQUIRE(pages.size() == 1);
  CHECK(pages[0].whole == Places{0});
  CHECK(pages[0].columns[0].empty());
  CHECK(pages[0].columns[1].empty());
}
