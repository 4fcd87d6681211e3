// SPDX-License-Identifier: MIT
// Every block on one page, none too full, few pages.
#include "sheets/page_packing.h"

#include <doctest/doctest.h>

#include <algorithm>

using namespace loomfolio;

namespace {

std::vector<Millimetres> heights_of(const std::vector<double>& numbers) {
  std::vector<Millimetres> heights;
  for (const double number : numbers) heights.emplace_back(number);
  return heights;
}

}  // namespace

TEST_CASE("pages are filled, and no block is lost") {
  const std::vector<Millimetres> heights = heights_of({60, 150, 40, 90, 100, 30, 110, 70});
  const PackingRoom room{Millimetres(160), Millimetres(200), Millimetres(5)};
  const auto pages = pack_pages(heights, room);
  CHECK(pages.size() == 4);  // 650 and the gaps: three pages hold 560 at most
  std::vector<int> seen(heights.size(), 0);
  for (std::size_t p = 0; p < pages.size(); ++p) {
    double used = -5;
    for (const std::size_t i : pages[p]) {
      ++seen[i];
      used += heights[i].number() + 5;
    }
    CHECK(used <= (p == 0 ? 160 : 200));
    CHECK(std::is_sorted(pages[p].begin(), pages[p].end()));
    if (p > 1) CHECK(pages[p - 1].front() < pages[p].front());
  }
  CHECK(std::all_of(seen.begin(), seen.end(), [](int count) { return count == 1; }));
}

TEST_CASE("a page that is half empty stands last, so that what follows may begin on it") {
  const PackingRoom room{Millimetres(200), Millimetres(200), Millimetres(5)};
  const auto pages = pack_pages(heights_of({190, 60, 180, 170}), room);
  REQUIRE(pages.size() == 4);
  CHECK(pages.front() == std::vector<std::size_t>{0});
  CHECK(pages.back() == std::vector<std::size_t>{1});
}

TEST_CASE("a block that no page holds has one alone") {
  const auto pages = pack_pages(heights_of({300, 20}), {Millimetres(100), Millimetres(200), Millimetres(5)});
  REQUIRE(pages.size() == 2);
  CHECK(pages[0] == std::vector<std::size_t>{1});
  CHECK(pages[1] == std::vector<std::size_t>{0});
}

TEST_CASE("the second column is filled beside the highest block") {
  const auto pairs = pair_columns(heights_of({50, 120, 60, 40}), Millimetres(6));
  REQUIRE(pairs.size() == 2);
  CHECK(pairs[0].height == Millimetres(120));
  CHECK(pairs[0].left == std::vector<std::size_t>{0, 2});
  CHECK(pairs[0].right == std::vector<std::size_t>{1});
  CHECK(pairs[1].left == std::vector<std::size_t>{3});
  CHECK(pairs[1].right.empty());
}
