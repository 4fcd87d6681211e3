// SPDX-License-Identifier: MIT
#include "solve/matrix.h"

#include <Eigen/LU>
#include <Eigen/SparseCholesky>
#include <Eigen/SparseCore>
#include <algorithm>
#include <cmath>

#include "solve/elimination_order.h"

namespace loomfolio {

struct SymmetricMatrix::Inner {
  Eigen::SparseMatrix<double> matrix;  // its upper triangle: that is factored in place, the lower one from a copy
  Eigen::SimplicialLDLT<Eigen::SparseMatrix<double>, Eigen::Upper, Eigen::NaturalOrdering<int>> factor;
  std::vector<int> order;         // rows of the matrix stand in the order of elimination: order[old] = new
  mutable Eigen::VectorXd ordered;  // scratch
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
    inner_->order = find_elimination_order(size, entries);
    const auto place_of = [&](const MatrixEntry& e) {
      const std::pair ends = std::minmax(inner_->order[static_cast<std::size_t>(e.row)],
                                         inner_->order[static_cast<std::size_t>(e.column)]);
      return std::pair<int, int>(ends.first, ends.second);
    };
    for (const MatrixEntry& e : entries) triplets.emplace_back(place_of(e).first, place_of(e).second, 1.0);
    inner_->matrix.resize(size, size);
    inner_->matrix.setFromTriplets(triplets.begin(), triplets.end());
    inner_->places.reserve(entries.size());
    for (const MatrixEntry& e : entries) inner_->places.push_back(&inner_->matrix.coeffRef(place_of(e).first, place_of(e).second));
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
  Eigen::VectorXd& b = inner_->ordered;
  b.resize(static_cast<Eigen::Index>(right_side.size()));
  for (std::size_t row = 0; row < right_side.size(); ++row) b[inner_->order[row]] = right_side[row];
  const Eigen::VectorXd x = inner_->factor.solve(b);
  for (std::size_t row = 0; row < right_side.size(); ++row) right_side[row] = x[inner_->order[row]];
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
  out.order = inner_->order;
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
