// SPDX-License-Identifier: MIT
#include "layout/segments.h"

#include <algorithm>
#include <tuple>

namespace loomfolio::laying {

std::vector<Segment> find_segments(const Laid& laid) {
  std::vector<Segment> out;
  for (std::size_t w = 0; w < laid.courses.size(); ++w) {
    const auto& points = laid.courses[w].points;
    for (std::size_t i = 1; i < points.size(); ++i) {
      const GridPoint a = points[i - 1], b = points[i];
      Segment s;
      s.wire = static_cast<int>(w);
      s.index = static_cast<int>(i) - 1;
      s.is_level = a.y == b.y;
      s.at = s.is_level ? a.y : a.x;
      s.low = s.is_level ? std::min(a.x, b.x) : std::min(a.y, b.y);
      s.high = s.is_level ? std::max(a.x, b.x) : std::max(a.y, b.y);
      s.is_end = i == 1 || i + 1 == points.size();
      out.push_back(s);
    }
  }
  return out;
}

void for_each_meeting(const std::vector<Segment>& segments, const std::function<void(const Segment&, const Segment&)>& found) {
  std::vector<const Segment*> uprights, levels;
  for (const Segment& s : segments) (s.is_level ? levels : uprights).push_back(&s);
  std::stable_sort(uprights.begin(), uprights.end(), [](const Segment* a, const Segment* b) { return a->at < b->at; });
  for (const Segment* level : levels) {
    auto it = std::lower_bound(uprights.begin(), uprights.end(), level->low, [](const Segment* s, Grid x) { return s->at < x; });
    for (; it != uprights.end() && (*it)->at <= level->high; ++it)
      if ((*it)->wire != level->wire && (*it)->low <= level->at && (*it)->high >= level->at) found(*level, **it);
  }
}

void for_each_parallel(const std::vector<Segment>& segments, Grid reach,
                       const std::function<void(const Segment&, const Segment&)>& found) {
  std::vector<const Segment*> sorted;
  for (const Segment& s : segments) sorted.push_back(&s);
  std::stable_sort(sorted.begin(), sorted.end(), [](const Segment* a, const Segment* b) {
    return std::tie(a->is_level, a->at) < std::tie(b->is_level, b->at);
  });
  for (std::size_t i = 0; i < sorted.size(); ++i)
    for (std::size_t j = i + 1; j < sorted.size(); ++j) {
      const Segment &a = *sorted[i], &b = *sorted[j];
      if (a.is_level != b.is_level || b.at - a.at >= reach) break;
      if (a.wire != b.wire && a.low <= b.high && b.low <= a.high) found(a, b);
    }
}

}  // namespace loomfolio::laying
