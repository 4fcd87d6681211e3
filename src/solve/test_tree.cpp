// SPDX-License-Identifier: MIT
// Test sequencing as stated by Pattipati and Alexandridis 1990 (from memory) and Raghavan, Shakeri and Pattipati 1999: the cost of a
// set of states is
//
//     J(x) = 0 if nothing separates x, else min over tests: c + sum over outcomes of p(x_o) J(x_o) / p(x)
//
// Finding it is NP-hard; to 16 states it is done by remembering J of every set met. Of more, each step takes the most bits a minute
// until that few are left.
// Here a test may have more than two outcomes: a meter tells 0 V from battery volts from something between.
#include "solve/test_tree.h"

#include <algorithm>
#include <bit>
#include <cmath>
#include <cstdint>
#include <map>
#include <unordered_map>

namespace loomfolio {
namespace {

using Split = std::map<int, std::vector<int>>;

Split split_by(const TestTable& table, int test, const std::vector<int>& states) {
  Split split;
  for (const int state : states) split[table.outcomes[static_cast<std::size_t>(test)][static_cast<std::size_t>(state)]].push_back(state);
  return split;
}

double weight_of(const TestTable& table, const std::vector<int>& states) {
  double sum = 0;
  for (const int state : states) sum += table.weights[static_cast<std::size_t>(state)];
  return sum;
}

std::vector<int> all_states(const TestTable& table) {
  std::vector<int> states(table.weights.size());
  for (std::size_t i = 0; i < states.size(); ++i) states[i] = static_cast<int>(i);
  return states;
}

int best_greedy_test(const TestTable& table, const std::vector<int>& states) {
  int best = -1;
  double most = 1e-12;
  for (std::size_t test = 0; test < table.costs.size(); ++test) {
    const double worth = information(table, static_cast<int>(test), states) / table.costs[test];
    if (worth > most * (1 + 1e-12)) best = static_cast<int>(test), most = worth;
  }
  return best;
}

// `choose` gives the test for a set of states, or -1.
template <class Choose>
int grow(const TestTable& table, const std::vector<int>& states, Choose choose, TestTree& tree) {
  const int node = static_cast<int>(tree.nodes.size());
  tree.nodes.push_back({choose(states), {}, states});
  const int test = tree.nodes.back().test;
  if (test < 0) return node;
  tree.expected_cost += table.costs[static_cast<std::size_t>(test)] * weight_of(table, states);
  for (const auto& [outcome, part] : split_by(table, test, states)) {
    const int child = grow(table, part, choose, tree);
    tree.nodes[static_cast<std::size_t>(node)].branches.emplace_back(outcome, child);
  }
  return node;
}

using StateSet = std::uint32_t;  // a bit a state

class Exact {
 public:
  explicit Exact(const TestTable& table) : table_(table) {
    const std::vector<int> states = all_states(table);
    for (std::size_t test = 0; test < table.costs.size(); ++test) {
      std::vector<StateSet>& alike = alike_.emplace_back();
      for (const auto& [outcome, part] : split_by(table, static_cast<int>(test), states)) alike.push_back(set_of(part));
    }
  }

  struct Best {
    double cost = 0;  // weighted, not divided by the set's weight
    int test = -1;
  };

  Best best(const std::vector<int>& states) { return best_of(set_of(states)); }

 private:
  static StateSet set_of(const std::vector<int>& states) {
    StateSet set = 0;
    for (const int state : states) set |= StateSet{1} << state;
    return set;
  }

  double weight_of_set(StateSet states) const {
    double sum = 0;
    for (; states != 0; states &= states - 1) sum += table_.weights[static_cast<std::size_t>(std::countr_zero(states))];
    return sum;
  }

  Best best_of(StateSet states) {
    if (const auto known = known_.find(states); known != known_.end()) return known->second;
    Best best;
    const double weight = weight_of_set(states);
    for (std::size_t test = 0; test < table_.costs.size(); ++test) {
      const auto parts =
          std::count_if(alike_[test].begin(), alike_[test].end(), [&](StateSet s) { return (s & states) != 0; });
      if (parts < 2) continue;
      double cost = table_.costs[test] * weight;
      for (const StateSet alike : alike_[test])
        if ((alike & states) != 0) cost += best_of(alike & states).cost;
      if (best.test < 0 || cost < best.cost - 1e-12) best = {cost, static_cast<int>(test)};
    }
    return known_[states] = best;
  }

  const TestTable& table_;
  std::vector<std::vector<StateSet>> alike_;  // [test]: the states of each outcome
  std::unordered_map<StateSet, Best> known_;
};

template <class Choose>
TestTree plan(const TestTable& table, Choose choose) {
  TestTree tree;
  const std::vector<int> states = all_states(table);
  grow(table, states, choose, tree);
  const double weight = weight_of(table, states);
  if (weight > 0) tree.expected_cost /= weight;
  return tree;
}

TestTree exact_tree(const TestTable& table) {
  Exact exact(table);
  return plan(table, [&](const std::vector<int>& states) { return exact.best(states).test; });
}

/// The tests that part some of these states, of those that part them alike the cheapest.
std::vector<int> telling_tests(const TestTable& table, const std::vector<int>& states) {
  std::map<std::vector<int>, int> by_shape;
  for (std::size_t test = 0; test < table.costs.size(); ++test) {
    std::map<int, int> renumber;
    std::vector<int> shape;
    for (const int state : states)
      shape.push_back(
          renumber.try_emplace(table.outcomes[test][static_cast<std::size_t>(state)], static_cast<int>(renumber.size())).first->second);
    if (renumber.size() < 2) continue;
    const auto [place, is_new] = by_shape.try_emplace(std::move(shape), static_cast<int>(test));
    if (!is_new && table.costs[test] < table.costs[static_cast<std::size_t>(place->second)]) place->second = static_cast<int>(test);
  }
  std::vector<int> tests;
  for (const auto& [shape, test] : by_shape) tests.push_back(test);
  std::sort(tests.begin(), tests.end());
  return tests;
}

/// Greedily while many states are left, exactly once there are few.
class Mixed {
 public:
  explicit Mixed(const TestTable& table) : table_(table) {}

  TestTree plan() {
    const std::vector<int> states = all_states(table_);
    grow_at(states);
    const double weight = weight_of(table_, states);
    if (weight > 0) tree_.expected_cost /= weight;
    return std::move(tree_);
  }

 private:
  int grow_at(const std::vector<int>& states) {
    const std::vector<int> tests = states.size() <= most_exact_states ? telling_tests(table_, states) : std::vector<int>{};
    if (states.size() <= most_exact_states && tests.size() <= most_exact_tests) return add_exact(states, tests);
    const int node = static_cast<int>(tree_.nodes.size());
    const int test = best_greedy_test(table_, states);
    tree_.nodes.push_back({test, {}, states});
    if (test < 0) return node;
    tree_.expected_cost += table_.costs[static_cast<std::size_t>(test)] * weight_of(table_, states);
    for (const auto& [outcome, part] : split_by(table_, test, states)) {
      const int child = grow_at(part);
      tree_.nodes[static_cast<std::size_t>(node)].branches.emplace_back(outcome, child);
    }
    return node;
  }

  int add_exact(const std::vector<int>& states, const std::vector<int>& tests) {
    TestTable few;
    for (const int state : states) few.weights.push_back(table_.weights[static_cast<std::size_t>(state)]);
    for (const int test : tests) {
      few.costs.push_back(table_.costs[static_cast<std::size_t>(test)]);
      std::vector<int>& some = few.outcomes.emplace_back();
      for (const int state : states) some.push_back(table_.outcomes[static_cast<std::size_t>(test)][static_cast<std::size_t>(state)]);
    }
    const TestTree exact = exact_tree(few);
    const int base = static_cast<int>(tree_.nodes.size());
    for (const TestNode& node : exact.nodes) {
      TestNode out;
      if (node.test >= 0) out.test = tests[static_cast<std::size_t>(node.test)];
      for (const auto& [outcome, child] : node.branches) out.branches.emplace_back(outcome, base + child);
      for (const int state : node.states) out.states.push_back(states[static_cast<std::size_t>(state)]);
      tree_.nodes.push_back(std::move(out));
    }
    tree_.expected_cost += exact.expected_cost * weight_of(table_, states);
    return base;
  }

  const TestTable& table_;
  TestTree tree_;
};

}  // namespace

double information(const TestTable& table, int test, const std::vector<int>& states) {
  const double whole = weight_of(table, states);
  std::vector<double> weights;  // by outcome
  for (const int state : states) {
    const auto outcome =
        static_cast<std::size_t>(table.outcomes[static_cast<std::size_t>(test)][static_cast<std::size_t>(state)]);
    if (outcome >= weights.size()) weights.resize(outcome + 1);
    weights[outcome] += table.weights[static_cast<std::size_t>(state)];
  }
  double bits = 0;
  for (const double weight : weights) {
    const double share = weight / whole;
    if (share > 0 && share < 1) bits -= share * std::log2(share);
  }
  return bits;
}

TestTree plan_greedily(const TestTable& table) {
  return plan(table, [&](const std::vector<int>& states) { return best_greedy_test(table, states); });
}

TestTree plan_exactly(const TestTable& table) { return exact_tree(table); }

TestTree plan_tests(const TestTable& table) { return Mixed(table).plan(); }

}  // namespace loomfolio
