// SPDX-License-Identifier: MIT
// loose.h for many small changes of one circuit: only what hangs on a change is walked. For fault_bench.cpp.
#pragma once

#include <functional>
#include <utility>
#include <vector>

#include "solve/circuit.h"

namespace loomfolio {

/// The circuit as it stands with a fault.
struct LooseQuestion {
  std::function<bool(int)> carries;          ///< by branch: there, and no diode that only leaks
  std::vector<int> changed;                  ///< branches that may carry now and did not, or the other way round
  std::vector<std::pair<int, int>> joined;   ///< nodes that hang together besides
};

class LooseFinder {
 public:
  /// `circuit` must outlive it; `carries` is the sound machine's.
  LooseFinder(const Circuit& circuit, const std::function<bool(int)>& carries);
  const std::vector<char>& sound() const { return loose_; }
  /// Nodes that are loose now and were not, or the other way round, in no order.
  std::vector<int> find_changed(const LooseQuestion& question);

 private:
  bool is_cut_off(int node) const;
  bool walk(int start, const LooseQuestion& question, bool stops_at_home);

  const Circuit& circuit_;
  std::vector<std::vector<int>> near_;   // branches by node
  std::vector<char> carried_;            // by branch, sound
  std::vector<char> loose_;              // by node, sound
  std::vector<int> parent_branch_;       // by node: the branch that leads towards the reference; -1
  std::vector<int> first_, last_;        // by node: its place in a walk of the tree, and the last below it
  std::vector<std::pair<int, int>> cut_;  // of the question: places below branches that no longer carry
  std::vector<int> reached_;             // of the last walk
  std::vector<char> is_reached_, is_changed_;
};

}  // namespace loomfolio
