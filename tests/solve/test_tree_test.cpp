// SPDX-License-Identifier: MIT
// Test sequencing on two worked examples whose optimum was found by trying all; they are our own, not published ones.
#include <doctest/doctest.h>

#include "solve/test_tree.h"

using namespace loomfolio;

namespace {

// p = 0.70, 0.01, 0.02, 0.10, 0.17; unit costs; rows t1..t5: s0 00000, s1 01001, s2 00110, s3 10011, s4 11110.
TestTable example_a() {
  return {{0.70, 0.01, 0.02, 0.10, 0.17},
          {1, 1, 1, 1, 1},
          {{0, 0, 0, 1, 1}, {0, 1, 0, 0, 1}, {0, 0, 1, 0, 1}, {0, 0, 1, 1, 1}, {0, 1, 0, 1, 0}}};
}

// Headlamp dead: battery 0.10, fuse 0.25, ignition switch 0.15, dip switch 0.10, lamp 0.30, earth 0.10.
TestTable example_b() {
  return {{0.10, 0.25, 0.15, 0.10, 0.30, 0.10},
          {1, 1, 2, 3, 3, 2},
          {{1, 0, 0, 0, 0, 0}, {1, 1, 0, 0, 0, 0}, {1, 1, 1, 0, 0, 0}, {1, 1, 1, 1, 0, 0}, {0, 0, 0, 0, 0, 1}, {0, 0, 0, 0, 1, 0}}};
}

int child(const TestTree& tree, int node, int outcome) {
  for (const auto& [o, next] : tree.nodes[static_cast<std::size_t>(node)].branches)
    if (o == outcome) return next;
  return -1;
}
int test_at(const TestTree& tree, int node) { return tree.nodes[static_cast<std::size_t>(node)].test; }

}  // namespace

TEST_CASE("example A: information in bits, optimum 2.11, greedy 2.12 starting with the fourth test") {
  const TestTable a = example_a();
  const std::vector<int> all = {0, 1, 2, 3, 4};
  const double bits[] = {0.841465, 0.680077, 0.701471, 0.868721, 0.499916};
  for (int t = 0; t < 5; ++t) CHECK(information(a, t, all) == doctest::Approx(bits[t]).epsilon(1e-5));
  const TestTree best = plan_exactly(a);
  CHECK(best.expected_cost == doctest::Approx(2.11));
  CHECK(test_at(best, 0) == 2);
  CHECK(test_at(best, child(best, 0, 1)) == 0);
  CHECK(test_at(best, child(best, 0, 0)) == 4);
  const TestTree greedy = plan_greedily(a);
  CHECK(greedy.expected_cost == doctest::Approx(2.12));
  CHECK(test_at(greedy, 0) == 3);
}

TEST_CASE("example B, headlamp dead: 3.95 for both; 2.55 at unit costs, greedy starting with the third test") {
  const TestTable b = example_b();
  const TestTree best = plan_exactly(b);
  CHECK(best.expected_cost == doctest::Approx(3.95));
  CHECK(plan_greedily(b).expected_cost == doctest::Approx(3.95));
  CHECK(test_at(best, 0) == 1);
  CHECK(test_at(best, child(best, 0, 1)) == 0);
  CHECK(test_at(best, child(best, 0, 0)) == 5);
  TestTable unit = b;
  unit.costs = {1, 1, 1, 1, 1, 1};
  CHECK(plan_exactly(unit).expected_cost == doctest::Approx(2.55));
  const TestTree greedy = plan_greedily(unit);
  CHECK(greedy.expected_cost == doctest::Approx(2.55));
  CHECK(test_at(greedy, 0) == 2);
}

TEST_CASE("states that no test separates end in one leaf; more than two outcomes are used") {
  const TestTable t = {{1, 1, 1, 1}, {1}, {{0, 1, 2, 2}}};
  const TestTree tree = plan_tests(t);
  CHECK(tree.nodes.size() == 4);
  CHECK(tree.nodes[static_cast<std::size_t>(child(tree, 0, 2))].states == std::vector<int>{2, 3});
  CHECK(tree.expected_cost == doctest::Approx(1));
}

TEST_CASE("of many states, exactly once few are left: example A behind a first test that parts it from seventeen others") {
  TestTable t = example_a();
  t.weights.insert(t.weights.end(), 17, 1.0 / 17);
  for (auto& outcomes : t.outcomes) outcomes.insert(outcomes.end(), 17, 0);
  t.outcomes.push_back(std::vector<int>(5, 0));
  t.outcomes.back().insert(t.outcomes.back().end(), 17, 1);
  t.costs.push_back(0.01);
  const TestTree tree = plan_tests(t);
  CHECK(test_at(tree, 0) == 5);
  CHECK(tree.expected_cost == doctest::Approx(0.01 + 2.11 / 2));
  CHECK(plan_greedily(t).expected_cost == doctest::Approx(0.01 + 2.12 / 2));
  CHECK(test_at(tree, child(tree, 0, 0)) == 2);
  CHECK(tree.nodes[static_cast<std::size_t>(child(tree, 0, 1))].states.size() == 17);
}
