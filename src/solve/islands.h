// SPDX-License-Identifier: MIT
// Which nodes hang together: sets that are merged pair by pair.
#pragma once

#include <numeric>
#include <vector>

namespace loomfolio {

class Islands {
 public:
  explicit Islands(int nodes) : parent_(static_cast<std::size_t>(nodes)) { std::iota(parent_.begin(), parent_.end(), 0); }
  /// The lowest node of the island that `node` is in.
  int root(int node) {
    while (parent_[at(node)] != node) node = parent_[at(node)] = parent_[at(parent_[at(node)])];
    return node;
  }
  void join(int a, int b) {
    a = root(a), b = root(b);
    if (a == b) return;
    if (b < a) std::swap(a, b);
    parent_[at(b)] = a;
  }
  bool are_joined(int a, int b) { return root(a) == root(b); }

 private:
  static std::size_t at(int node) { return static_cast<std::size_t>(node); }
  std::vector<int> parent_;
};

}  // namespace loomfolio
