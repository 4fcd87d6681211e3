// SPDX-License-Identifier: MIT
// A change at one place of a machine is felt strongly nearby and hardly at all elsewhere. With the slopes factored as L D L', a
// current put in at a row runs up the elimination tree from that row to its root (Gilbert and Peierls 1988: the reach of a sparse
// right side), a short path through the places where the loom meets: splice, fuse, battery. Going back down, a row's volts are a
// weighted mean of the rows above it that it hangs on:
//
//     x[j] = y[j] / D[j] - sum over i in column j of L[i,j] x[i],   L[i,j] <= 0, the weights add up to at most 1
//
// (the matrix of slopes is an M-matrix: its off-diagonal entries are never positive). Off the path y is 0, so no row can move more
// than the most moved of those it hangs on. Once these all moved less than asked for, everything below stays still and is not visited.
#include "solve/spread.h"

#include <algorithm>
#include <bit>
#include <cmath>

#include "solve/at.h"

namespace loomfolio {

Spreading::Spreading(LowerFactor factor) : factor_(std::move(factor)) {
  const int n = size();
  parent_.assign(at(n), -1);
  row_start_.assign(at(n) + 1, 0);
  for (int column = 0; column < n; ++column)
    for (int k = factor_.column_start[at(column)]; k < factor_.column_start[at(column) + 1]; ++k) ++row_start_[at(factor_.rows[at(k)]) + 1];
  for (int row = 0; row < n; ++row) row_start_[at(row) + 1] += row_start_[at(row)];
  row_columns_.resize(factor_.rows.size());
  std::vector<int> next(row_start_.begin(), row_start_.end() - 1);
  for (int column = 0; column < n; ++column) {
    const int first = factor_.column_start[at(column)], last = factor_.column_start[at(column) + 1];
    if (first < last) parent_[at(column)] = factor_.rows[at(first)];
    for (int k = first; k < last; ++k) row_columns_[at(next[at(factor_.rows[at(k)])]++)] = column;
  }
  work_.assign(at(n), 0.0);
  marked_.assign(at(n), 0);
  waiting_.assign(at(n) / 64 + 1, 0);
}

void Spreading::mark_path(int row, std::vector<int>& path) {
  for (; row >= 0 && !marked_[at(row)]; row = parent_[at(row)]) {
    marked_[at(row)] = 1;
    path.push_back(row);
  }
}

SparseVector Spreading::forward(int a, int b) {
  SparseVector y;
  mark_path(a, y.rows);
  const auto first = static_cast<std::ptrdiff_t>(y.rows.size());
  mark_path(b, y.rows);
  std::inplace_merge(y.rows.begin(), y.rows.begin() + first, y.rows.end());
  if (a >= 0) work_[at(a)] += 1;
  if (b >= 0) work_[at(b)] -= 1;
  y.values.reserve(y.rows.size());
  for (const int column : y.rows) {
    const double value = work_[at(column)];
    work_[at(column)] = 0;
    marked_[at(column)] = 0;
    y.values.push_back(value);
    if (value == 0) continue;
    for (int k = factor_.column_start[at(column)]; k < factor_.column_start[at(column) + 1]; ++k)
      work_[at(factor_.rows[at(k)])] -= factor_.values[at(k)] * value;
  }
  return y;
}

double Spreading::coupling(const SparseVector& y, const SparseVector& x) const {
  double sum = 0;
  // Paths meet and then stay together: compare from the top.
  std::size_t i = y.rows.size(), j = x.rows.size();
  while (i > 0 && j > 0) {
    if (y.rows[i - 1] == x.rows[j - 1]) {
      --i, --j;
      sum += y.values[i] * x.values[j] / factor_.diagonal[at(y.rows[i])];
    } else if (y.rows[i - 1] > x.rows[j - 1]) {
      --i;
    } else {
      --j;
    }
  }
  return sum;
}

double Spreading::coupling_of_sum(const std::vector<double>& sum, const SparseVector& x) const {
  double volts = 0;
  for (std::size_t i = 0; i < x.rows.size(); ++i)
    volts += sum[at(x.rows[i])] * x.values[i] / factor_.diagonal[at(x.rows[i])];
  return volts;
}

void Spreading::push(int row) { waiting_[at(row) / 64] |= std::uint64_t{1} << (at(row) % 64); }

void Spreading::backward(const std::vector<int>& rows, const std::vector<double>& sum, double least,
                         std::vector<int>& touched, std::vector<double>& volts) {
  for (const int row : rows) {
    work_[at(row)] = sum[at(row)];
    push(row);
  }
  // Who hangs on a row stands below it: from the top down, each is visited after all above it.
  for (std::size_t word = waiting_.size(); word-- > 0;)
    while (waiting_[word] != 0) {
      const int bit = 63 - std::countl_zero(waiting_[word]);
      waiting_[word] &= ~(std::uint64_t{1} << bit);
      const int row = static_cast<int>(word) * 64 + bit;
      double x = work_[at(row)] / factor_.diagonal[at(row)];
      work_[at(row)] = 0;
      for (int k = factor_.column_start[at(row)]; k < factor_.column_start[at(row) + 1]; ++k)
        x -= factor_.values[at(k)] * volts[at(factor_.rows[at(k)])];
      volts[at(row)] = x;
      touched.push_back(row);
      if (std::abs(x) < least || x == 0) continue;
      for (int k = row_start_[at(row)]; k < row_start_[at(row) + 1]; ++k) push(row_columns_[at(k)]);
    }
}

// A + siemens w w' with w = +1 at a, -1 at b, column by column up the path of w (method C1 of Gill, Golub, Murray and Saunders
// 1974; along the elimination tree: Davis and Hager 1999). What w fills is within the columns as they are, since a and b share an
// entry of the matrix.
void Spreading::update(int a, int b, double siemens) {
  std::vector<int> path;
  mark_path(a, path);
  const auto first = static_cast<std::ptrdiff_t>(path.size());
  mark_path(b, path);
  std::inplace_merge(path.begin(), path.begin() + first, path.end());
  if (a >= 0) work_[at(a)] += 1;
  if (b >= 0) work_[at(b)] -= 1;
  double weight = siemens;
  for (const int column : path) {
    const double w = work_[at(column)], before = factor_.diagonal[at(column)];
    work_[at(column)] = 0;
    marked_[at(column)] = 0;
    const double now = before + weight * w * w;
    const double share = weight * w / now;
    factor_.diagonal[at(column)] = now;
    weight *= before / now;
    if (w == 0) continue;
    for (int k = factor_.column_start[at(column)]; k < factor_.column_start[at(column) + 1]; ++k) {
      double& below = work_[at(factor_.rows[at(k)])];
      below -= w * factor_.values[at(k)];
      factor_.values[at(k)] += share * below;
    }
  }
}

}  // namespace loomfolio
