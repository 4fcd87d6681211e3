// SPDX-License-Identifier: MIT
// Least degree first, as is usual - but a machine's circuit is mostly chains, whose rows have all the same degree. Of rows that
// fill in no more than two neighbours do, the one goes first above which the elimination tree is lowest so far: a chain is halved
// turn by turn, and the way from a row up to the root is some eight rows instead of forty. Such ways are what spread.h walks.
#include "solve/elimination_order.h"

#include <algorithm>
#include <bit>
#include <cstdint>
#include <functional>
#include <queue>

#include "solve/at.h"

namespace loomfolio {
namespace {

constexpr int no_fill = 2;  // neighbours: joining two of them makes no more entries than go

/// Which rows meet in an entry: a bit for each other row, since a battery's poles and the frame meet very many.
class Neighbours {
 public:
  Neighbours(int size, const std::vector<MatrixEntry>& entries)
      : words_(at(size) / 64 + 1), bits_(at(size) * words_), degree_(at(size)) {
    for (const MatrixEntry& e : entries) {
      if (e.row == e.column) continue;
      word(e.row, e.column) |= bit(e.column);
      word(e.column, e.row) |= bit(e.row);
    }
    for (int row = 0; row < size; ++row) count(row);
  }

  int degree(int row) const { return degree_[at(row)]; }

  /// Takes a row out and joins its neighbours, which `around` lists, with each other.
  void eliminate(int row, std::vector<int>& around) {
    around.clear();
    for (std::size_t w = 0; w < words_; ++w)
      for (std::uint64_t left = words(row)[w]; left != 0; left &= left - 1)
        around.push_back(static_cast<int>(w) * 64 + std::countr_zero(left));
    for (const int other : around) {
      for (std::size_t w = 0; w < words_; ++w) words(other)[w] |= words(row)[w];
      word(other, row) &= ~bit(row);
      word(other, other) &= ~bit(other);
      count(other);
    }
  }

 private:
  static std::uint64_t bit(int other) { return std::uint64_t{1} << (at(other) % 64); }
  std::uint64_t* words(int row) { return &bits_[at(row) * words_]; }
  std::uint64_t& word(int row, int other) { return words(row)[at(other) / 64]; }
  void count(int row) {
    degree_[at(row)] = 0;
    for (std::size_t w = 0; w < words_; ++w) degree_[at(row)] += std::popcount(words(row)[w]);
  }

  std::size_t words_;  // a row
  std::vector<std::uint64_t> bits_;
  std::vector<int> degree_;
};

}  // namespace

std::vector<int> find_elimination_order(int size, const std::vector<MatrixEntry>& entries) {
  Neighbours neighbours(size, entries);
  std::vector<int> order(at(size), -1), height(at(size), 0), around;
  // Neighbours, height and row in one number, the weightiest first.
  const auto place_of = [&](int row) {
    const auto degree = static_cast<std::uint64_t>(std::max(no_fill, neighbours.degree(row)));
    return degree << 44U | static_cast<std::uint64_t>(height[at(row)]) << 24U | static_cast<std::uint64_t>(row);
  };
  std::vector<std::uint64_t> first;
  for (int row = 0; row < size; ++row) first.push_back(place_of(row));
  std::priority_queue<std::uint64_t, std::vector<std::uint64_t>, std::greater<>> next(std::greater<>(), std::move(first));
  for (int count = 0; !next.empty();) {
    const std::uint64_t place = next.top();
    next.pop();
    const int row = static_cast<int>(place & 0xffffffU);
    if (order[at(row)] >= 0 || place != place_of(row)) continue;
    order[at(row)] = count++;
    neighbours.eliminate(row, around);
    for (const int other : around) {
      height[at(other)] = std::max(height[at(other)], height[at(row)] + 1);
      next.push(place_of(other));
    }
  }
  return order;
}

}  // namespace loomfolio
