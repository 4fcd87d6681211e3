// SPDX-License-Identifier: MIT
// Test sequencing: which test to make next, so that the state is found at least expected cost.
#pragma once

#include <vector>

namespace loomfolio {

/// States with their weights, tests with their costs, and what each test shows in each state.
struct TestTable {
  std::vector<double> weights;            ///< by state; need not add up to 1
  std::vector<double> costs;              ///< by test, above 0
  std::vector<std::vector<int>> outcomes; ///< [test][state]: 0, 1, ... ; states with the same number look the same
};

/// A tree in one vector; node 0 is the root.
struct TestNode {
  int test = -1;                              ///< -1: a leaf
  std::vector<std::pair<int, int>> branches;  ///< outcome -> node
  std::vector<int> states;                    ///< that remain here; a leaf with more than one: no test separates them
};
struct TestTree {
  std::vector<TestNode> nodes;
  double expected_cost = 0;  ///< by the weights
};

/// Takes the test with most information (bits by the weights) for its cost, again and again. Ties: the earlier test.
TestTree plan_greedily(const TestTable& table);

/// The least expected cost, by trying all and remembering each set of states; only for few states and tests.
inline constexpr std::size_t most_exact_states = 16, most_exact_tests = 20;
TestTree plan_exactly(const TestTable& table);

/// Exactly where that is small enough, else greedily.
TestTree plan_tests(const TestTable& table);

/// Bits that a test tells about these states.
double information(const TestTable& table, int test, const std::vector<int>& states);

}  // namespace loomfolio
