// SPDX-License-Identifier: MIT
#include "sheets/fault_chart_pages.h"

#include <algorithm>
#include <optional>
#include <set>

namespace loomfolio {
namespace {

class Pager {
 public:
  Pager(const FaultPlan& plan, const FaultWords& say, const FaultChart& chart, ChartRoom room, Millimetres width,
        const ChartStyle& style)
      : plan_(plan), say_(say), chart_(chart), room_(room), width_(width), style_(style) {}

  PagedChart make() const {
    PagedChart one = on_one_page();
    const std::size_t asked = one.boxes.size();
    if (largest_end(asked) <= most_looked_through) return one;
    PagedChart best = std::move(one);
    for (std::size_t most = asked + 1; most <= most_chart_questions; ++most) {
      if (best.boxes.size() > asked && largest_end(best.boxes.size()) <= most_looked_through) break;
      auto two = on_two_pages(most);
      if (!two || two->boxes.size() < most) break;  // no more room, or nothing more to ask
      best = std::move(*two);
    }
    return best;
  }

 private:
  std::size_t largest_end(std::size_t most) const { return largest_cut_end(plan_, cut_chart(plan_, chart_, most)); }

  PagedChart on_one_page() const {
    PagedChart paged;
    for (std::size_t most = most_page_questions; most > 0; --most) {
      std::vector<DrawnBox> boxes = boxes_to_draw(plan_, say_, chart_, most);
      if (boxes.size() == paged.boxes.size()) continue;
      paged.boxes = std::move(boxes);
      paged.pages = {{0, paged.boxes.size()}};
      if (chart_height(measure_fault_chart(paged.boxes, width_, style_), paged.pages[0]) <= room_.first) break;
    }
    return paged;
  }

  /// The first page as full as it goes.
  std::optional<PagedChart> on_two_pages(std::size_t most) const {
    PagedChart paged{boxes_to_draw(plan_, say_, chart_, most), {}};
    const std::vector<ChartRow> rows = measure_fault_chart(paged.boxes, width_, style_);
    for (std::size_t turn = rows.size(); turn-- > 1;) {
      const ChartSpan first{0, turn}, next{turn, rows.size()};
      if (chart_height(rows, first) > room_.first) continue;
      if (chart_height(rows, next) > room_.next) return std::nullopt;
      paged.pages = {first, next};
      return paged;
    }
    return std::nullopt;
  }

  const FaultPlan& plan_;
  const FaultWords& say_;
  const FaultChart& chart_;
  ChartRoom room_;
  Millimetres width_;
  const ChartStyle& style_;
};

}  // namespace

PagedChart page_chart(const FaultPlan& plan, const FaultWords& say, const FaultChart& chart, ChartRoom room, Millimetres width,
                      const ChartStyle& style) {
  return Pager(plan, say, chart, room, width, style).make();
}

std::size_t largest_cut_end(const FaultPlan& plan, const std::vector<ChartBox>& boxes) {
  std::size_t most = 0;
  for (const ChartBox& box : boxes)
    for (const ChartExit& exit : box.exits) {
      if (!exit.is_cut) continue;
      std::set<Mend> mends;
      for (const int s : exit.suspects) mends.insert(mend_for(plan.faults[static_cast<std::size_t>(s)]));
      most = std::max(most, mends.size());
    }
  return most;
}

}  // namespace loomfolio
