// SPDX-License-Identifier: MIT
// The highest first, each onto the page that it fills best; among the pages that would be left as full, the first.
#include "sheets/page_packing.h"

#include <algorithm>
#include <numeric>

namespace loomfolio {
namespace {

constexpr double half_empty = 0.45;  ///< of a page, left over: it stands last

std::vector<std::size_t> highest_first(const std::vector<Millimetres>& heights) {
  std::vector<std::size_t> order(heights.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) { return heights[a] > heights[b]; });
  return order;
}

struct OpenPage {
  Millimetres left;
  std::vector<std::size_t> blocks;
};

}  // namespace

std::vector<std::vector<std::size_t>> pack_pages(const std::vector<Millimetres>& heights, const PackingRoom& room) {
  std::vector<OpenPage> pages{{room.first, {}}};
  for (const std::size_t i : highest_first(heights)) {
    OpenPage* best = nullptr;
    for (OpenPage& page : pages) {
      const Millimetres needed = heights[i] + (page.blocks.empty() ? Millimetres(0) : room.gap);
      if (needed > page.left || (best != nullptr && page.left >= best->left)) continue;
      best = &page;
    }
    if (best == nullptr) {
      pages.push_back({room.others, {}});
      best = &pages.back();
    }
    best->left = best->left - heights[i] - (best->blocks.empty() ? Millimetres(0) : room.gap);
    best->blocks.push_back(i);
  }
  for (OpenPage& page : pages) std::sort(page.blocks.begin(), page.blocks.end());
  std::sort(pages.begin() + 1, pages.end(),
            [](const OpenPage& a, const OpenPage& b) { return a.blocks.front() < b.blocks.front(); });
  // What the emptiest page leaves is of use to what begins after the last.
  const auto emptiest = std::max_element(pages.begin() + 1, pages.end(),
                                         [](const OpenPage& a, const OpenPage& b) { return a.left < b.left; });
  if (emptiest != pages.end() && emptiest->left > room.others * half_empty)
    std::rotate(emptiest, emptiest + 1, pages.end());
  std::vector<std::vector<std::size_t>> packed;
  for (OpenPage& page : pages) packed.push_back(std::move(page.blocks));
  return packed;
}

std::vector<ColumnPair> pair_columns(const std::vector<Millimetres>& heights, Millimetres gap) {
  std::vector<std::size_t> waiting = highest_first(heights);
  std::vector<ColumnPair> pairs;
  while (!waiting.empty()) {
    ColumnPair pair{{waiting.front()}, {}, heights[waiting.front()]};
    waiting.erase(waiting.begin());
    Millimetres used;
    for (auto next = waiting.begin(); next != waiting.end();) {
      const Millimetres then = used + (pair.right.empty() ? Millimetres(0) : gap) + heights[*next];
      if (then > pair.height) {
        ++next;
        continue;
      }
      used = then;
      pair.right.push_back(*next);
      next = waiting.erase(next);
    }
    std::sort(pair.right.begin(), pair.right.end());
    if (!pair.right.empty() && pair.right.front() < pair.left.front()) std::swap(pair.left, pair.right);
    pairs.push_back(std::move(pair));
  }
  return pairs;
}

}  // namespace loomfolio
