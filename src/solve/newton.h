// SPDX-License-Identifier: MIT
// Node voltages of a circuit whose relays stand still.
#pragma once

#include <vector>

#include "solve/branch_law.h"
#include "solve/circuit.h"
#include "solve/matrix.h"

namespace loomfolio {

struct NodeVolts {
  std::vector<double> volts;   ///< by node, against the reference; a floating node against the lowest node it hangs with
  std::vector<char> floating;  ///< by node: no path to the reference
  bool has_settled = false;
  int steps = 0;
};

/// Solves one circuit again and again: as relays move, from a good guess, with changed branches.
class NodeSolver {
 public:
  /// `circuit` must outlive the solver; its branches may change values between calls, not their nodes.
  explicit NodeSolver(const Circuit& circuit);

  /// `guess` may be empty.
  NodeVolts solve(const RelayState& state, Flash flash, const std::vector<double>& guess);

  /// The factored slopes of all branches at exactly these volts, which must be of the last state solved; none flatter than
  /// `least_siemens`, so that a node that hangs on a shut diode still couples with numbers of a usual size. Floating islands are pinned by as
  /// little: a branch that comes to join one to the rest feeds nothing through the pin.
  const SymmetricMatrix& factor_at(const NodeVolts& nodes, double least_siemens);
  /// The row of each node in the matrix (-1: the reference).
  const std::vector<int>& row_of_node() const { return row_of_node_; }

 private:
  void find_islands(const RelayState& state, Flash flash);
  void find_places();
  void work_all(const std::vector<double>& volts);
  void start_all();
  bool factor(const NodeVolts& result, double pin);
  double slope_along(const std::vector<double>& at, const std::vector<double>& direction) const;
  void step_along(std::vector<double>& volts, const std::vector<double>& direction);

  const Circuit& circuit_;
  SymmetricMatrix matrix_;
  std::vector<int> row_of_node_;
  std::vector<int> active_;            // branches there
  std::vector<Working> workings_;      // by branch, at the volts reached; nothing where it is not there
  std::vector<char> is_pinned_, floating_;
  std::vector<MatrixEntry> entries_;  // their places stay
  std::vector<double> right_side_;
};

}  // namespace loomfolio
