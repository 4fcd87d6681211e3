// SPDX-License-Identifier: MIT
// Sparse symmetric systems, behind a small interface. The only place that knows the linear algebra library.
#pragma once

#include <memory>
#include <vector>

namespace loomfolio {

/// One entry of the lower triangle: row >= column. Entries at the same place add up.
struct MatrixEntry {
  int row = 0, column = 0;
  double value = 0;
};

/// L of a factored matrix P A P' = L D L', unit diagonal left out, by columns; rows ascend within a column.
struct LowerFactor {
  std::vector<int> column_start;  ///< size n + 1
  std::vector<int> rows;
  std::vector<double> values;
  std::vector<double> diagonal;  ///< D
  std::vector<int> order;        ///< order[old] = new
};

class SymmetricMatrix {
 public:
  SymmetricMatrix();
  ~SymmetricMatrix();
  SymmetricMatrix(SymmetricMatrix&&) noexcept;
  SymmetricMatrix& operator=(SymmetricMatrix&&) noexcept;

  /// Factors the matrix of `size` rows. The places of entries must stay the same from call to call on one object (values may be
  /// 0): the order of elimination is found once. False when it is singular.
  bool factor(int size, const std::vector<MatrixEntry>& entries);
  /// Solves in place.
  void solve(std::vector<double>& right_side) const;
  LowerFactor lower() const;

 private:
  struct Inner;
  std::unique_ptr<Inner> inner_;
};

/// Solves a small full system, row by row in `matrix` (n x n), in place of `right_side`. False when it is singular.
bool solve_full(std::vector<double>& matrix, std::vector<double>& right_side);

}  // namespace loomfolio
