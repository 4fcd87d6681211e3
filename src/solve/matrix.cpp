// SPDX-License-Identifier: MIT
#include "solve/matrix.h"

#include <Eigen/LU>
#include <Eigen/SparseCholesky>
#include <Eigen/SparseCore>
#include <cmath>

namespace loomfolio {

struct SymmetricMatrix::Inner {
  Eigen::SparseMatrix<double> matrix;
  Eigen::SimplicialLDLT<Eigen::SparseMatrix<double>, Eigen::Lower> factor;
  std::vector<double*> places;  // where each entry of the list adds up
};

SymmetricMatrix::SymmetricMatrix() = default;
SymmetricMatrix::~SymmetricMatrix() = default;
SymmetricMatrix::SymmetricMatrix(SymmetricMatrix&&) noexcept = default;
SymmetricMatrix& SymmetricMatrix::operator=(SymmetricMatrix&&) noexcept = default;

bool SymmetricMatrix::factor(int size, const std::vector<MatrixEntry>& entries) {
  if (size == 0) return true;
  if (!inner_) {
    inner_ = std::make_unique<Inner>();
    std::vector<Eigen::Triplet<double>> triplets;
    triplets.reserve(entries.size());
    for (const MatrixEntry& e : entries) triplets.emplace_back(e.row, e.column, 1.0);
    inner_->matrix.resize(size, size);
    inner_->matrix.setFromTriplets(triplets.begin(), triplets.end());
    inner_->places.reserve(entries.size());
    for (const MatrixEntry& e : entries) inner_->places.push_back(&inner_->matrix.coeffRef(e.row, e.column));
    inner_->factor.analyzePattern(inner_->matrix);
  }
  auto& values = inner_->matrix;
  std::fill(values.valuePtr(), values.valuePtr() + values.nonZeros(), 0.0);
  for (std::size_t i = 0; i < entries.size(); ++i) *inner_->places[i] += entries[i].value;
  inner_->factor.factorize(inner_->matrix);
  return inner_->factor.info() == Eigen::Success;
}

void SymmetricMatrix::solve(std::vector<double>& right_side) const {
  if (right_side.empty()) return;
  Eigen::Map<Eigen::VectorXd> b(right_side.data(), static_cast<Eigen::Index>(right_side.size()));
  const Eigen::VectorXd x = inner_->factor.solve(b);
  b = x;
}

LowerFactor SymmetricMatrix::lower() const {
  LowerFactor out;
  if (!inner_) return out;
  const Eigen::SparseMatrix<double> l = inner_->factor.matrixL();
  const auto n = static_cast<std::size_t>(l.cols());
  out.column_start.push_back(0);
  for (Eigen::Index column = 0; column < l.cols(); ++column) {
    for (Eigen::SparseMatrix<double>::InnerIterator it(l, column); it; ++it) {
      if (it.row() <= column) continue;
      out.rows.push_back(static_cast<int>(it.row()));
      out.values.push_back(it.value());
    }
    out.column_start.push_back(static_cast<int>(out.rows.size()));
  }
  const Eigen::VectorXd d = inner_->factor.vectorD();
  out.diagonal.assign(d.data(), d.data() + n);
  const auto& p = inner_->factor.permutationP().indices();
  for (std::size_t i = 0; i < n; ++i) out.order.push_back(p.size() ? p[static_cast<Eigen::Index>(i)] : static_cast<int>(i));
  return out;
}

bool solve_full(std::vector<double>& matrix, std::vector<double>& right_side) {
  const auto n = static_cast<Eigen::Index>(right_side.size());
  if (n == 1) {
    if (matrix[0] == 0) return false;
    right_side[0] /= matrix[0];
    return true;
  }
  using Full = Eigen::Matrix<double, Eigen::Dynamic, Eigen::Dynamic, Eigen::RowMajor>;
  Eigen::Map<Full> a(matrix.data(), n, n);
  Eigen::Map<Eigen::VectorXd> b(right_side.data(), n);
  const Eigen::VectorXd x = a.partialPivLu().solve(b);
  if (!x.allFinite()) return false;
  b = x;
  return true;
}

}  // namespace loomfolio
