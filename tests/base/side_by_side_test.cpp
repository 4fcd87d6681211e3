// SPDX-License-Identifier: MIT
#include "base/side_by_side.h"

#include <doctest/doctest.h>

#include <stdexcept>
#include <string>
#include <vector>

using namespace loomfolio;

TEST_CASE("work side by side is done once an index") {
  for (const std::size_t count : {std::size_t{0}, std::size_t{1}, std::size_t{2}, std::size_t{1000}}) {
    std::vector<int> done(count, 0);
    work_side_by_side(count, [&](std::size_t i) { ++done[i]; });
    CHECK(done == std::vector<int>(count, 1));
  }
}

TEST_CASE("of what work side by side throws, the first by index comes through, and the rest is done all the same") {
  std::vector<int> done(100, 0);
  std::string what;
  try {
    work_side_by_side(done.size(), [&](std::size_t i) {
      ++done[i];
      if (i % 30 == 10) throw std::runtime_error(std::to_string(i));
    });
  } catch (const std::runtime_error& error) {
    what = error.what();
  }
  CHECK(what == "10");
  CHECK(done == std::vector<int>(100, 1));
}

TEST_CASE("work side by side may itself work side by side") {
  std::vector<std::vector<int>> done(8, std::vector<int>(8, 0));
  work_side_by_side(done.size(), [&](std::size_t i) { work_side_by_side(done[i].size(), [&](std::size_t j) { ++done[i][j]; }); });
  CHECK(done == std::vector<std::vector<int>>(8, std::vector<int>(8, 1)));
}
