// SPDX-License-Identifier: MIT
// The highest first, each onto the page that it fills best; among the pages that would be left as full, the first. Blocks
// that need the page's width come first; what they leave of their pages is two columns for the others.
#include "sheets/page_packing.h"

#include <algorithm>
#include <numeric>

namespace loomfolio {
namespace {

constexpr double half_empty = 0.45;       ///< of a page, left over: it stands last
constexpr std::size_t most_tried = 12;  ///< blocks of a page whose every spread over two columns is tried

class Packing {
 public:
  Packing(const std::vector<FreeHeights>& heights, const PackingRoom& room)
      : heights_(heights), room_(room), pages_{{room.first, {}}} {}

  std::vector<PackedPage> make() {
    for (const std::size_t i : highest_first(false)) put_whole(i);
    for (const std::size_t i : highest_first(true)) put_half(i);
    for (OpenPage& page : pages_) settle(page);
    put_in_order();
    std::vector<PackedPage> packed;
    for (OpenPage& page : pages_) packed.push_back(std::move(page.packed));
    return packed;
  }

 private:
  struct OpenPage {
    Millimetres room;
    PackedPage packed;
  };

  std::vector<std::size_t> highest_first(bool half) const {
    std::vector<std::size_t> order;
    for (std::size_t i = 0; i < heights_.size(); ++i)
      if (heights_[i].half.has_value() == half) order.push_back(i);
    const auto height = [&](std::size_t i) { return half ? *heights_[i].half : heights_[i].whole; };
    std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) { return height(a) > height(b); });
    return order;
  }

  Millimetres stacked(const std::vector<std::size_t>& blocks, bool half) const {
    Millimetres sum;
    for (const std::size_t i : blocks) {
      if (sum.number() > 0) sum += room_.gap;
      sum += half ? *heights_[i].half : heights_[i].whole;
    }
    return sum;
  }

  Millimetres used(const OpenPage& page) const {
    const Millimetres whole = stacked(page.packed.whole, false), columns = std::max(column(page, 0), column(page, 1));
    return whole + columns + (whole.number() > 0 && columns.number() > 0 ? room_.gap : Millimetres(0));
  }
  Millimetres column(const OpenPage& page, std::size_t side) const { return stacked(page.packed.columns[side], true); }

  void put_whole(std::size_t i) {
    OpenPage* best = nullptr;
    Millimetres least;
    for (OpenPage& page : pages_) {
      const Millimetres before = used(page), gap = before.number() > 0 ? room_.gap : Millimetres(0);
      const Millimetres left = page.room - before;
      if (before + gap + heights_[i].whole > page.room || (best != nullptr && left >= least)) continue;
      best = &page;
      least = left;
    }
    if (best == nullptr) best = &pages_.emplace_back(OpenPage{room_.others, {}});
    best->packed.whole.push_back(i);
  }

  /// Into the column that has least room left for it.
  void put_half(std::size_t i) {
    std::vector<std::size_t>* best = nullptr;
    Millimetres least;
    for (OpenPage& page : pages_) {
      const Millimetres whole = stacked(page.packed.whole, false);
      const Millimetres room = page.room - whole - (whole.number() > 0 ? room_.gap : Millimetres(0));
      for (std::size_t side = 0; side < 2; ++side) {
        const Millimetres before = column(page, side), left = room - before;
        const Millimetres gap = before.number() > 0 ? room_.gap : Millimetres(0);
        if (before + gap + *heights_[i].half > room || (best != nullptr && left >= least)) continue;
        best = &page.packed.columns[side];
        least = left;
      }
    }
    if (best == nullptr) best = &pages_.emplace_back(OpenPage{room_.others, {}}).packed.columns[0];
    best->push_back(i);
  }

  /// Columns as even as can be, or blocks as wide as the page where one column would be empty.
  void settle(OpenPage& page) const {
    auto& [left, right] = page.packed.columns;
    std::vector<std::size_t> all = left;
    all.insert(all.end(), right.begin(), right.end());
    std::sort(all.begin(), all.end());
    if (all.size() > 1 && all.size() <= most_tried) even_out(page, all);
    for (auto& blocks : page.packed.columns) std::sort(blocks.begin(), blocks.end());
    if (left.empty() || (!right.empty() && right.front() < left.front())) std::swap(left, right);
    if (right.empty() && !left.empty()) {
      std::vector<std::size_t> whole = page.packed.whole;
      whole.insert(whole.end(), left.begin(), left.end());
      if (stacked(whole, false) <= page.room) {
        page.packed.whole = std::move(whole);
        left.clear();
      }
    }
    std::sort(page.packed.whole.begin(), page.packed.whole.end());
  }

  void even_out(OpenPage& page, const std::vector<std::size_t>& all) const {
    Millimetres least = std::max(column(page, 0), column(page, 1));
    for (std::size_t spread = 0; spread < std::size_t{1} << all.size(); ++spread) {
      std::array<std::vector<std::size_t>, 2> columns;
      for (std::size_t k = 0; k < all.size(); ++k) columns[spread >> k & 1].push_back(all[k]);
      const Millimetres height = std::max(stacked(columns[0], true), stacked(columns[1], true));
      if (height + Millimetres(0.01) >= least) continue;
      least = height;
      page.packed.columns = std::move(columns);
    }
  }

  static std::size_t first_of(const OpenPage& page) {
    std::size_t first = static_cast<std::size_t>(-1);
    for (const auto* blocks : {&page.packed.whole, &page.packed.columns[0], &page.packed.columns[1]})
      if (!blocks->empty()) first = std::min(first, blocks->front());
    return first;
  }

  void put_in_order() {
    std::sort(pages_.begin() + 1, pages_.end(),
              [](const OpenPage& a, const OpenPage& b) { return first_of(a) < first_of(b); });
    // What the emptiest page leaves is of use to what begins after the last.
    const auto left = [this](const OpenPage& page) { return page.room - used(page); };
    const auto emptiest = std::max_element(pages_.begin() + 1, pages_.end(), [&](const OpenPage& a, const OpenPage& b) {
      return left(a) < left(b);
    });
    if (emptiest != pages_.end() && left(*emptiest) > room_.others * half_empty)
      std::rotate(emptiest, emptiest + 1, pages_.end());
  }

  const std::vector<FreeHeights>& heights_;
  const PackingRoom& room_;
  std::vector<OpenPage> pages_;
};

}  // namespace

std::vector<PackedPage> pack_pages(const std::vector<FreeHeights>& heights, const PackingRoom& room) {
  return Packing(heights, room).make();
}

}  // namespace loomfolio
