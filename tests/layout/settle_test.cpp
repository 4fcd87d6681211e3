// SPDX-License-Identifier: MIT
#include <doctest/doctest.h>

#include "layout/settle.h"

using namespace loomfolio;
using namespace loomfolio::laying;

TEST_CASE("settle finds the least cost under distances") {
  SUBCASE("two that pull together stop at their distance") {
    CHECK(settle({2, {{0, 1, 5}}, {{0, 1, 0, 1}}}) == std::vector<Grid>{0, 5});
  }
  SUBCASE("the heavier pull decides where the middle one stands") {
    CHECK(settle({3, {{0, 1, 2}, {1, 2, 2}, {0, 2, 20}}, {{0, 1, 2, 1}, {1, 2, 2, 3}, {0, 2, 0, 9}}}) == std::vector<Grid>{0, 18, 20});
  }
  SUBCASE("a block of touching things moves as one") {
    // 1, 2, 3 stand side by side; two of them want to be 50 after 0, one wants to be at 0.
    const auto at = settle({4, {{0, 1, 0}, {1, 2, 10}, {2, 3, 10}}, {{0, 1, 0, 1}, {0, 2, 50, 1}, {0, 3, 50, 1}}});
    CHECK(at == std::vector<Grid>{0, 0, 40, 50});
  }
  SUBCASE("contradiction gives nothing") { CHECK(settle({2, {{0, 1, 5}, {1, 0, 5}}, {}}).empty()); }
  SUBCASE("a loop that leaves room is no contradiction") {
    const auto at = settle({2, {{0, 1, 5}, {1, 0, -9}}, {{0, 1, 100, 1}}});
    CHECK(at == std::vector<Grid>{0, 9});
  }
}

TEST_CASE("settle agrees with trying every whole place") {
  // Five unknowns in 0..6, random distances and pulls from a fixed sequence.
  unsigned state = 7;
  const auto roll = [&](unsigned n) { return (state = state * 1103515245u + 12345u) / 65536u % n; };
  for (int round = 0; round < 60; ++round) {
    SettleProblem problem{5, {}, {}};
    for (int i = 0; i < 4; ++i) {
      const int a = static_cast<int>(roll(4)), b = a + 1 + static_cast<int>(roll(static_cast<unsigned>(4 - a)));
      problem.arcs.push_back({a, b, static_cast<Grid>(roll(3))});
    }
    for (int i = 0; i < 6; ++i)
      problem.pulls.push_back({static_cast<int>(roll(5)), static_cast<int>(roll(5)), static_cast<Grid>(roll(5)) - 2, 1 + static_cast<int>(roll(4))});
    const auto cost = [&](const std::vector<Grid>& x) {
      long sum = 0;
      for (const SettleArc& a : problem.arcs)
        if (x[a.to] < x[a.from] + a.gap) return 1000000L;
      for (const SettlePull& p : problem.pulls)
        if (p.from != p.to) sum += static_cast<long>(p.weight) * std::abs(x[p.to] - x[p.from] - p.gap);
      return sum;
    };
    long best = 1000000;
    std::vector<Grid> x(5);
    for (int code = 0; code < 16807; ++code) {
      for (int i = 0, rest = code; i < 5; ++i, rest /= 7) x[i] = rest % 7;
      best = std::min(best, cost(x));
    }
    const std::vector<Grid> settled = settle(problem);
    REQUIRE(settled.size() == 5);
    CHECK(cost(settled) <= best);
    CHECK(cost(settled) < 1000000);
  }
}
