// SPDX-License-Identifier: MIT
// Least degree first, as is usual - but a machine's circuit is mostly chains, whose rows have all the same degree. Of rows that
// fill in no more than two neighbours do, the one goes first above which the elimination tree is lowest so far: a chain is halved
// turn by turn, and the way from a row up to the root is some eight rows instead of forty. Such ways are what spread.h walks.
#include "solve/elimination_order.h"

#include <algorithm>
#include <cstdint>
#include <functional>
#include <queue>

#include "solve/at.h"

namespace loomfolio {
namespace {

constexpr int no_fill = 2;  // neighbours: joining two of them makes no more entries than go

using Neighbours = std::vector<std::vector<int>>;  // by row, in any order

void add_once(std::vector<int>& list, int row) {
  if (std::find(list.begin(), list.end(), row) == list.end()) list.push_back(row);
}

Neighbours find_neighbours(int size, const std::vector<MatrixEntry>& entries) {
  Neighbours neighbours(at(size));
  for (const MatrixEntry& e : entries) {
    if (e.row == e.column) continue;
    add_once(neighbours[at(e.row)], e.column);
    add_once(neighbours[at(e.column)], e.row);
  }
  return neighbours;
}

/// Takes a row out and joins its neighbours with each other.
void eliminate(Neighbours& neighbours, int row, std::vector<int>& around) {
  around.swap(neighbours[at(row)]);
  for (const int other : around) {
    std::vector<int>& list = neighbours[at(other)];
    *std::find(list.begin(), list.end(), row) = list.back();
    list.pop_back();
    for (const int one : around)
      if (one != other) add_once(list, one);
  }
}

}  // namespace

std::vector<int> find_elimination_order(int size, const std::vector<MatrixEntry>& entries) {
  Neighbours neighbours = find_neighbours(size, entries);
  std::vector<int> order(at(size), -1), height(at(size), 0), around;
  // Neighbours, height and row in one number, the weightiest first.
  const auto place_of = [&](int row) {
    const auto degree = static_cast<std::uint64_t>(std::max(at(no_fill), neighbours[at(row)].size()));
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
    eliminate(neighbours, row, around);
    for (const int other : around) {
      height[at(other)] = std::max(height[at(other)], height[at(row)] + 1);
      next.push(place_of(other));
    }
    around.clear();
  }
  return order;
}

}  // namespace loomfolio
