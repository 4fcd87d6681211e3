// SPDX-License-Identifier: MIT
// How a current put into a factored network spreads: only as far as it matters.
#pragma once

#include <cstdint>
#include <vector>

#include "solve/matrix.h"

namespace loomfolio {

/// A vector with few entries, by rows of the factor, ascending.
struct SparseVector {
  std::vector<int> rows;
  std::vector<double> values;
};

/// L and D of one factored matrix of slopes, prepared for questions about few rows.
class Spreading {
 public:
  explicit Spreading(LowerFactor factor);

  int size() const { return static_cast<int>(factor_.diagonal.size()); }
  /// Row of the factor for a row of the matrix; -1 stays -1.
  int factor_row(int row) const { return row < 0 ? -1 : factor_.order[static_cast<std::size_t>(row)]; }

  /// L^-1 of a current of 1 A from row `a` to row `b` of the factor (-1: the reference).
  SparseVector forward(int a, int b);

  /// Volts that a current pattern y makes over pattern x: y' D^-1 x, both as forward() gives them.
  double coupling(const SparseVector& y, const SparseVector& x) const;
  /// The same for a sum y of patterns, by row.
  double coupling_of_sum(const std::vector<double>& sum, const SparseVector& x) const;

  /// Finishes L' x = D^-1 y for a sum y of patterns that is 0 outside `rows`: sets volts by row of the factor. Rows where |x| must
  /// stay below `least` are not visited; `touched` lists the others, descending.
  void backward(const std::vector<int>& rows, const std::vector<double>& sum, double least, std::vector<int>& touched,
                std::vector<double>& volts);

  /// The branch between rows `a` and `b`, which has its place in the matrix, gains `siemens`. Patterns made before are void.
  void update(int a, int b, double siemens);

 private:
  void mark_path(int row, std::vector<int>& path);
  void push(int row);

  LowerFactor factor_;
  std::vector<int> parent_;                        // next row up the elimination tree, -1 at a root
  std::vector<int> row_start_, row_columns_;       // L by rows: who depends on a row
  std::vector<double> work_;
  std::vector<char> marked_;
  std::vector<std::uint64_t> waiting_;             // rows that backward() has still to visit, a bit each
};

}  // namespace loomfolio
