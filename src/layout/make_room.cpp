// SPDX-License-Identifier: MIT
// The idea. On one axis at a time, the places of parts and runs are unknowns. What stands beside what keeps its order
// and its distance; each is pulled to where it was, parts much harder than runs. So a run that needs more room pushes
// its neighbours as little as can be, and a part moves only when all runs beside it are tight.
//
//     part | | |  part             part| | | |part
//          a b c           ->          a n b c            n is new; the parts stay where the gaps can give
//
// A run that ends at a terminal is one with its part; runs of one figure that lie on each other stay so. First places
// across, then, with the extents that gives, places down.
#include "layout/make_room.h"

#include <algorithm>
#include <array>
#include <numeric>

#include "layout/segments.h"
#include "layout/settle.h"

namespace loomfolio::laying {
namespace {

constexpr int part_pull = 4000, border_pull = 400, run_pull = 1;

/// Where a run stands: with an unknown, so far beside it.
struct RunPlace {
  int unknown = -1;
  Grid offset = 0;
};

enum class Axis : std::uint8_t { across, down };

Grid& along(GridPoint& p, Axis way) { return way == Axis::across ? p.x : p.y; }

class Making {
 public:
  Making(Crowded& drawing, const Spacing& spacing, Axis way);
  bool run();

 private:
  struct Range {
    Grid at_low, at_high;  ///< on the axis
    Grid low, high;        ///< along the other
  };
  Range range_of(const GridBox& b) const {
    return is_across() ? Range{b.x0, b.x1, b.y0, b.y1} : Range{b.y0, b.y1, b.x0, b.x1};
  }
  bool is_across() const { return way_ == Axis::across; }
  bool is_placed(int box) const { return drawing_.boxes[box].box.width() > 0; }
  Grid half_pen_of(const Segment& s) const { return (drawing_.graph.wires[s.wire].pen + 1) / 2; }
  Grid size_of(int box) const {
    return is_across() ? drawing_.graph.boxes[box].width : drawing_.graph.boxes[box].height;
  }
  Grid terminal_of(int box, int terminal) const;
  void find_runs();
  void stand_with_parts();
  void join_figures();
  void hold_bands();
  void hold_parts();
  void hold_order();
  void hold_runs();
  void hold_pair(int before, int after);
  void pull_back();
  void take(const std::vector<Grid>& places);
  void keep(RunPlace from, RunPlace to, Grid gap) {
    problem_.arcs.push_back({from.unknown, to.unknown, gap + from.offset - to.offset});
  }

  Crowded& drawing_;
  const Spacing& spacing_;
  Axis way_;
  int boxes_ = 0, borders_ = 0;
  std::vector<Segment> runs_;
  std::vector<RunPlace> standing_;        ///< by run
  std::vector<std::array<int, 2>> ends_;  ///< by run: boxes it ends at, or -1
  std::vector<Grid> origin_;              ///< by unknown: where it was
  SettleProblem problem_;
};

Making::Making(Crowded& drawing, const Spacing& spacing, Axis way)
    : drawing_(drawing), spacing_(spacing), way_(way), boxes_(static_cast<int>(drawing.boxes.size())) {
  origin_.push_back(0);  // the sheet itself
  for (const PlacedBox& b : drawing.boxes) origin_.push_back(range_of(b.box).at_low);
  borders_ = static_cast<int>(origin_.size());
  if (is_across())
    for (const GridBox& band : drawing.bands) {
      origin_.push_back(band.x0);
      origin_.push_back(band.x1);
    }
}

void Making::find_runs() {
  Laid view;
  view.courses = drawing_.courses;
  for (const Segment& s : find_segments(view))
    if (s.is_level != is_across()) runs_.push_back(s);
  for (const Segment& s : runs_) {
    const GraphWire& g = drawing_.graph.wires[s.wire];
    const int last = static_cast<int>(drawing_.courses[s.wire].points.size()) - 2;
    ends_.push_back({s.index == 0 ? g.from_box : -1, s.index == last ? g.to_box : -1});
  }
}

/// From the part's top left, on the axis.
Grid Making::terminal_of(int box, int terminal) const {
  const GridPoint at = drawing_.graph.boxes[box].terminals[terminal].at;
  if (!is_across()) return at.y;
  return drawing_.boxes[box].is_mirrored ? size_of(box) - at.x : at.x;
}

/// A run that ends at a part stands with it; one between two parts ties them.
void Making::stand_with_parts() {
  standing_.assign(runs_.size(), {});
  for (std::size_t i = 0; i < runs_.size(); ++i)
    for (const int end : {0, 1}) {
      const int box = ends_[i][end];
      if (box < 0) continue;
      const GraphWire& g = drawing_.graph.wires[runs_[i].wire];
      const RunPlace here{1 + box, terminal_of(box, end == 0 ? g.from_terminal : g.to_terminal)};
      if (standing_[i].unknown < 0) {
        standing_[i] = here;
        continue;
      }
      keep(standing_[i], here, 0);
      keep(here, standing_[i], 0);
    }
}

/// Runs of one figure that lie on each other are one; what stands with no part gets an unknown.
void Making::join_figures() {
  std::vector<int> root(runs_.size()), order(runs_.size());
  std::iota(root.begin(), root.end(), 0);
  std::iota(order.begin(), order.end(), 0);
  const auto find = [&](int i) {
    while (root[i] != i) i = root[i] = root[root[i]];
    return i;
  };
  std::stable_sort(order.begin(), order.end(), [&](int a, int b) { return runs_[a].at < runs_[b].at; });
  for (std::size_t i = 0; i < order.size(); ++i)
    for (std::size_t j = i + 1; j < order.size() && runs_[order[j]].at == runs_[order[i]].at; ++j) {
      const Segment &a = runs_[order[i]], &b = runs_[order[j]];
      if (drawing_.figure[a.wire] == drawing_.figure[b.wire] && a.low <= b.high && b.low <= a.high)
        root[std::max(find(order[i]), find(order[j]))] = std::min(find(order[i]), find(order[j]));
    }
  std::vector<RunPlace> of_root(runs_.size());
  for (std::size_t i = 0; i < runs_.size(); ++i) {
    RunPlace& own = of_root[find(static_cast<int>(i))];
    if (standing_[i].unknown < 0) continue;
    if (own.unknown >= 0 && own.unknown != standing_[i].unknown) {
      keep(own, standing_[i], 0);
      keep(standing_[i], own, 0);
    } else {
      own = standing_[i];
    }
  }
  for (std::size_t i = 0; i < runs_.size(); ++i) {
    RunPlace& own = of_root[find(static_cast<int>(i))];
    if (own.unknown < 0) {
      own = {static_cast<int>(origin_.size()), 0};
      origin_.push_back(runs_[i].at);
    }
    if (standing_[i].unknown < 0) standing_[i] = own;
  }
}

/// Parts stay in their bands, with as much margin as they have.
void Making::hold_bands() {
  if (!is_across()) return;
  const auto bands = static_cast<int>(drawing_.bands.size());
  for (int z = 0; z < bands; ++z) {
    const RunPlace left{borders_ + 2 * z, 0}, right{borders_ + 2 * z + 1, 0};
    const GridBox& band = drawing_.bands[z];
    keep(left, right, std::min<Grid>(band.width(), spacing_.band_gap));
    if (z + 1 < bands)
      keep(right, {borders_ + 2 * z + 2, 0},
           std::max<Grid>(0, std::min(spacing_.band_gap, drawing_.bands[z + 1].x0 - band.x1)));
    for (int b = 0; b < boxes_; ++b) {
      if (!is_placed(b)) continue;
      const GridBox& box = drawing_.boxes[b].box;
      const bool is_home = drawing_.graph.boxes[b].zone == z && drawing_.graph.boxes[b].role != BoxRole::reference;
      const RunPlace own{1 + b, 0}, far{1 + b, size_of(b)};
      if (is_home) {
        keep(left, own, std::clamp<Grid>(box.x0 - band.x0, 0, spacing_.band_margin));
        keep(far, right, std::clamp<Grid>(band.x1 - box.x1, 0, spacing_.band_margin));
      } else if (drawing_.graph.boxes[b].role == BoxRole::reference) {
        if (box.x1 <= band.x0) keep(far, left, 0);
        if (box.x0 >= band.x1) keep(right, own, 0);
      }
    }
  }
}

/// Parts that face each other, and the runs that pass them.
void Making::hold_parts() {
  const Grid apart = 2 * spacing_.clear;
  for (int a = 0; a < boxes_; ++a) {
    if (!is_placed(a)) continue;
    const Range own = range_of(drawing_.boxes[a].box);
    for (int b = 0; b < boxes_; ++b) {
      if (b == a || !is_placed(b)) continue;
      const Range other = range_of(drawing_.boxes[b].box);
      if (own.at_high > other.at_low || own.low - apart >= other.high || other.low - apart >= own.high) continue;
      keep({1 + a, size_of(a)}, {1 + b, 0}, std::min(apart, other.at_low - own.at_high));
    }
    for (std::size_t i = 0; i < runs_.size(); ++i) {
      const Segment& s = runs_[i];
      if (ends_[i][0] == a || ends_[i][1] == a) continue;
      if (s.low >= own.high + spacing_.clear || s.high <= own.low - spacing_.clear) continue;
      const Grid clear = spacing_.clear + half_pen_of(s);
      if (s.at <= own.at_low)
        keep(standing_[i], {1 + a, 0}, drawing_.is_new[s.wire] ? clear : std::min(clear, own.at_low - s.at));
      else if (s.at >= own.at_high)
        keep({1 + a, size_of(a)}, standing_[i], drawing_.is_new[s.wire] ? clear : std::min(clear, s.at - own.at_high));
    }
  }
}

/// People find a part by what it stands left of and above: that order stays, for parts far from each other too.
void Making::hold_order() {
  std::vector<int> order;
  for (int b = 0; b < boxes_; ++b)
    if (is_placed(b)) order.push_back(1 + b);
  std::stable_sort(order.begin(), order.end(), [&](int a, int b) { return origin_[a] < origin_[b]; });
  for (std::size_t i = 1; i < order.size(); ++i) keep({order[i - 1], 0}, {order[i], 0}, 0);
}

void Making::hold_pair(int before, int after) {
  const Segment &a = runs_[before], &b = runs_[after];
  if (a.at == b.at || (standing_[before].unknown == standing_[after].unknown)) return;
  Grid gap = spacing_.least + half_pen_of(a) + half_pen_of(b);
  const bool is_free = !drawing_.is_new[a.wire] && !drawing_.is_new[b.wire];
  if (is_free || drawing_.figure[a.wire] == drawing_.figure[b.wire]) gap = std::min(gap, b.at - a.at);
  keep(standing_[before], standing_[after], gap);
}

/// Each run after those it is seen from, looking back; the others follow from those.
void Making::hold_runs() {
  struct Seen {
    Grid low, high;
    int run;
  };
  Grid widest = 0;
  for (const GraphWire& w : drawing_.graph.wires) widest = std::max(widest, w.pen);
  const Grid half = (spacing_.least + widest) / 2 + 1;
  std::vector<int> order(runs_.size());
  std::iota(order.begin(), order.end(), 0);
  std::stable_sort(order.begin(), order.end(), [&](int a, int b) { return runs_[a].at < runs_[b].at; });
  std::vector<Seen> skyline, next;
  for (const int run : order) {
    const Grid low = runs_[run].low - half, high = runs_[run].high + half;
    next.clear();
    for (const Seen& s : skyline) {
      if (s.high <= low || s.low >= high) {
        next.push_back(s);
        continue;
      }
      hold_pair(s.run, run);
      const bool is_level_with = runs_[s.run].at == runs_[run].at;  // neither hides the other
      if (is_level_with) next.push_back(s);
      if (!is_level_with && s.low < low) next.push_back({s.low, low, s.run});
      if (!is_level_with && s.high > high) next.push_back({high, s.high, s.run});
    }
    next.push_back({low, high, run});
    std::swap(skyline, next);
  }
}

void Making::pull_back() {
  for (int v = 1; v < static_cast<int>(origin_.size()); ++v) {
    const bool is_part = v <= boxes_,
               is_border = !is_part && is_across() && v < borders_ + 2 * static_cast<int>(drawing_.bands.size());
    const Grid lean = is_part && !drawing_.lean.empty() ? along(drawing_.lean[v - 1], way_) : 0;
    problem_.pulls.push_back({0, v, origin_[v] - lean, is_part ? part_pull : is_border ? border_pull : run_pull});
  }
}

void Making::take(const std::vector<Grid>& places) {
  const auto place_of = [&](RunPlace s) { return places[s.unknown] - places[0] + s.offset; };
  for (int b = 0; b < boxes_; ++b) {
    if (!is_placed(b)) continue;
    GridBox& box = drawing_.boxes[b].box;
    (is_across() ? box.x0 : box.y0) = place_of({1 + b, 0});
    (is_across() ? box.x1 : box.y1) = place_of({1 + b, size_of(b)});
  }
  if (is_across())
    for (std::size_t z = 0; z < drawing_.bands.size(); ++z) {
      drawing_.bands[z].x0 = place_of({borders_ + 2 * static_cast<int>(z), 0});
      drawing_.bands[z].x1 = place_of({borders_ + 2 * static_cast<int>(z) + 1, 0});
    }
  for (std::size_t w = 0; w < drawing_.courses.size(); ++w) {
    auto& points = drawing_.courses[w].points;
    if (points.empty()) continue;
    const GraphWire& g = drawing_.graph.wires[w];
    along(points.front(), way_) = place_of({1 + g.from_box, terminal_of(g.from_box, g.from_terminal)});
    along(points.back(), way_) = place_of({1 + g.to_box, terminal_of(g.to_box, g.to_terminal)});
  }
  for (std::size_t i = 0; i < runs_.size(); ++i) {
    auto& points = drawing_.courses[runs_[i].wire].points;
    for (const int p : {runs_[i].index, runs_[i].index + 1}) along(points[p], way_) = place_of(standing_[i]);
  }
}

bool Making::run() {
  find_runs();
  stand_with_parts();
  join_figures();
  hold_bands();
  hold_parts();
  hold_order();
  hold_runs();
  pull_back();
  problem_.count = static_cast<int>(origin_.size());
  const std::vector<Grid> places = settle(problem_);
  if (places.empty()) return false;
  take(places);
  return true;
}

}  // namespace

bool make_room(Crowded& drawing, const Spacing& spacing) {
  const auto boxes = drawing.boxes;
  const auto courses = drawing.courses;
  const auto bands = drawing.bands;
  for (const Axis way : {Axis::across, Axis::down})
    if (!Making(drawing, spacing, way).run()) {
      drawing.boxes = boxes;
      drawing.courses = courses;
      drawing.bands = bands;
      return false;
    }
  return true;
}

}  // namespace loomfolio::laying
