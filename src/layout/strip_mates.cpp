// SPDX-License-Identifier: MIT
#include <algorithm>
#include <optional>

#include "layout/strip_pairs.h"

namespace loomfolio::laying {
namespace {

/// How many foreign pieces stand between mates where those run beside each other.
int count_parting(const Strip& strip, const Graph& graph, const std::vector<int>& order) {
  int parting = 0;
  for (std::size_t i = 0; i < order.size(); ++i)
    for (std::size_t j = i + 1; j < order.size(); ++j) {
      const StripPiece &a = strip.pieces[order[i]], &b = strip.pieces[order[j]];
      const std::string& bundle = graph.wires[a.wire].bundle;
      if (bundle.empty() || bundle != graph.wires[b.wire].bundle) continue;
      const Grid low = std::max(a.low(), b.low()), high = std::min(a.high(), b.high());
      if (low >= high) continue;
      for (std::size_t k = i + 1; k < j; ++k) {
        const StripPiece& foreign = strip.pieces[order[k]];
        parting += graph.wires[foreign.wire].bundle != bundle && foreign.low() < high && foreign.high() > low;
      }
    }
  return parting;
}

/// The piece at `from` moved to `to`, when nothing forbids it and nothing more crosses.
std::optional<std::vector<int>> moved_freely(StripPairs& pairs, std::vector<int> order, std::size_t from, std::size_t to) {
  long change = 0;
  while (from != to) {
    const std::size_t next = from < to ? from + 1 : from - 1;
    const int before = order[std::min(from, next)], after = order[std::max(from, next)];
    if (pairs.must_of(before, after)) return std::nullopt;
    change += pairs.cost_of(after, before) - pairs.cost_of(before, after);
    std::swap(order[from], order[next]);
    from = next;
  }
  if (change >= strip_crossing_cost) return std::nullopt;
  return order;
}

}  // namespace

void bring_mates_together(Strip& strip, const Graph& graph, StripPairs& pairs) {
  int parting = count_parting(strip, graph, strip.order);
  for (std::size_t from = 0; parting > 0 && from < strip.order.size(); ++from) {
    if (graph.wires[strip.pieces[strip.order[from]].wire].bundle.empty()) continue;
    for (std::size_t to = 0; to < strip.order.size(); ++to) {
      auto order = moved_freely(pairs, strip.order, from, to);
      if (!order) continue;
      const int left = count_parting(strip, graph, *order);
      if (left >= parting) continue;
      parting = left;
      strip.order = std::move(*order);
    }
  }
}

}  // namespace loomfolio::laying
