// SPDX-License-Identifier: MIT
// The idea. Runs were placed row by row, below the tallest part of a row; a run below a low part may hang far down, and one beside a
// joint may hang in a U that nothing asks for. Now that all is drawn it shows how far each could go:
//
//     +--+        +--+              a run whose two ends turn the same way is drawn up to the first thing beside it (U);
//     |  |  --->  +--+ tall         one that turns both ways may stand in line with what it comes from (jog),
//     +--+         tall             which saves two bends.
//
// All is said for a level run that is drawn up; `Axis` turns the other three cases into this one.
#include "layout/tighten.h"

#include <algorithm>
#include <cmath>
#include <optional>

#include "layout/draw.h"
#include "layout/segments.h"

namespace loomfolio::laying {
namespace {

constexpr int most_tightening_rounds = 4;
constexpr Grid least_gain = 50;  ///< a shorter way is left as it is

/// A course with a run in it: from point `first` to the next.
struct Run {
  int wire = -1;
  std::size_t first = 0;
};

class Tightening {
 public:
  Tightening(const Plan& plan, Laid& laid, const std::vector<char>& held)
      : plan_(plan), laid_(laid), held_(held), segments_(find_segments(laid)) {}
  bool run_round();

 private:
  /// What makes one drawing of a wire worse than another.
  struct Faults {
    int conflicts = 0;
    long cost = 0;
  };
  const std::vector<GridPoint>& points(int wire) const { return laid_.courses[static_cast<std::size_t>(wire)].points; }
  bool is_held(int wire) const;
  bool try_run(const Run& run);
  std::optional<Grid> drawn_up(const Run& run, bool level, Grid end_a, Grid end_b) const;
  Grid stop_at_end(const Run& run, bool level, bool is_before, Grid end, int step) const;
  Grid beside_part(int wire, bool level) const;
  Grid beside_run(const Segment& run, const Segment& other) const;
  bool goes_on(const std::vector<GridPoint>& p, std::size_t from, std::size_t to, std::size_t first, bool level) const;
  bool was_beside(const Segment& s, const Segment& other) const;
  Faults judge(int wire, const std::vector<GridPoint>& points) const;
  bool is_beside_part(int wire, const Segment& s, std::size_t count) const;
  void take(int wire, std::vector<GridPoint> points);

  const Plan& plan_;
  Laid& laid_;
  const std::vector<char>& held_;
  std::vector<Segment> segments_;
};

Grid across(GridPoint p, bool level) { return level ? p.y : p.x; }
Grid along(GridPoint p, bool level) { return level ? p.x : p.y; }
void set_across(GridPoint& p, bool level, Grid at) { (level ? p.y : p.x) = at; }

std::vector<Segment> segments_of_points(int wire, std::vector<GridPoint> points) {
  Laid one;
  one.courses.push_back({std::move(points), {}});
  std::vector<Segment> out = find_segments(one);
  for (Segment& s : out) s.wire = wire;
  return out;
}

bool run_beside(const Segment& a, const Segment& b) { return a.is_level == b.is_level && a.low <= b.high && b.low <= a.high; }

/// Wires that share a terminal may lie on each other; they stay as they are, too.
bool Tightening::is_held(int wire) const {
  return (!held_.empty() && held_[static_cast<std::size_t>(wire)] != 0) ||
         std::count(plan_.figure.begin(), plan_.figure.end(), plan_.figure[static_cast<std::size_t>(wire)]) > 1;
}

/// From the middle of a run to the edge of a part beside it.
Grid Tightening::beside_part(int wire, bool level) const {
  const GraphWire& w = plan_.graph->wires[static_cast<std::size_t>(wire)];
  const Grid label = w.label_height > 0 ? w.label_height + 2 * plan_.spacing.label_gap : 0;
  return std::max(plan_.spacing.clear + plan_.spacing.spare, level ? label : 0) + half_pen(plan_, wire);
}

/// From one run to another beside it: the label of the lower one stands between two level ones.
Grid Tightening::beside_run(const Segment& run, const Segment& other) const {
  const Grid apart = distance_between(plan_, run.wire, other.wire);
  const int lower = run.at > other.at ? run.wire : other.wire;
  const Grid label = plan_.graph->wires[static_cast<std::size_t>(lower)].label_height;
  if (!run.is_level || label == 0) return apart;
  return std::max(apart, half_pen(plan_, run.wire) + half_pen(plan_, other.wire) + label + 2 * plan_.spacing.label_gap);
}

/// Whether the stretch between two points runs the same way as the run.
bool Tightening::goes_on(const std::vector<GridPoint>& p, std::size_t from, std::size_t to, std::size_t first, bool level) const {
  return (along(p[to], level) > along(p[from], level)) == (along(p[first + 1], level) > along(p[first], level));
}

/// How near a run may come to the end of the stretch that leads up from one of its own ends: a terminal, or a bend, where it may stand
/// in line with what goes on there.
Grid Tightening::stop_at_end(const Run& run, bool level, bool is_before, Grid end, int step) const {
  const std::vector<GridPoint>& p = points(run.wire);
  const std::size_t i = run.first;
  if (is_before ? i == 1 : i + 3 == p.size()) return end - step * (plan_.spacing.clear + half_pen(plan_, run.wire));
  const bool in_line = is_before ? goes_on(p, i - 2, i - 1, i, level) : goes_on(p, i + 2, i + 3, i, level);
  return in_line ? end : end - step * distance_between(plan_, run.wire, run.wire);
}

/// Where the run stands when it is drawn up as far as it goes; nothing when it cannot move.
std::optional<Grid> Tightening::drawn_up(const Run& run, bool level, Grid end_a, Grid end_b) const {
  const std::vector<GridPoint>& p = points(run.wire);
  const Grid at = across(p[run.first], level);
  const int step = end_a < at ? -1 : 1;  // the way it is drawn
  const auto nearer = [&](Grid a, Grid b) { return step < 0 ? std::max(a, b) : std::min(a, b); };
  Grid stop = nearer(stop_at_end(run, level, true, end_a, step), stop_at_end(run, level, false, end_b, step));
  const Grid from = std::min(along(p[run.first], level), along(p[run.first + 1], level));
  const Grid to = std::max(along(p[run.first], level), along(p[run.first + 1], level));
  for (const Segment& s : segments_) {
    if (s.wire == run.wire || s.is_level != level || s.low > to || s.high < from || (s.at - at) * step < 0) continue;
    const Segment own{run.wire, static_cast<int>(run.first), level, at, from, to, false};
    stop = nearer(stop, s.at - step * beside_run(own, s));
  }
  const Grid side = plan_.spacing.clear + half_pen(plan_, run.wire), room = beside_part(run.wire, level);
  for (const PlacedBox& b : laid_.boxes) {
    const Grid low = level ? b.box.x0 : b.box.y0, high = level ? b.box.x1 : b.box.y1;
    const Grid far = step < 0 ? (level ? b.box.y1 : b.box.x1) : (level ? b.box.y0 : b.box.x0);
    if (low - side >= to || high + side <= from || (far - at) * step < 0) continue;
    stop = nearer(stop, far - step * room);
  }
  if ((stop - at) * step < least_gain) return std::nullopt;
  return stop;
}

/// The first and last stretch of a wire touch the parts it ends at.
bool Tightening::is_beside_part(int wire, const Segment& s, std::size_t count) const {
  const GraphWire& w = plan_.graph->wires[static_cast<std::size_t>(wire)];
  for (std::size_t b = 0; b < laid_.boxes.size(); ++b) {
    const bool ends_here = (s.index == 0 && w.from_box == static_cast<int>(b)) ||
                           (s.index + 2 == static_cast<int>(count) && w.to_box == static_cast<int>(b));
    const Grid side = plan_.spacing.clear + half_pen(plan_, wire);
    const GridBox wide = laid_.boxes[b].box.grown(ends_here ? 0 : side);
    const GridBox line = s.is_level ? GridBox{s.low, s.at, s.high, s.at} : GridBox{s.at, s.low, s.at, s.high};
    if (line.x0 < wide.x1 && line.x1 > wide.x0 && line.y0 < wide.y1 && line.y1 > wide.y0) return true;
  }
  return false;
}

/// Two that run too near each other stand as they stood: terminals that stand close leave no choice.
bool Tightening::was_beside(const Segment& s, const Segment& other) const {
  const auto shared = [&](const Segment& one) { return std::min(one.high, other.high) - std::max(one.low, other.low); };
  const std::vector<Segment> before = segments_of_points(s.wire, points(s.wire));
  return std::any_of(before.begin(), before.end(), [&](const Segment& old) {
    return old.is_level == s.is_level && old.at == s.at && run_beside(old, other) && shared(s) <= shared(old);
  });
}

Tightening::Faults Tightening::judge(int wire, const std::vector<GridPoint>& course) const {
  Faults faults;
  for (const Segment& s : segments_of_points(wire, course)) {
    faults.cost += (s.high - s.low) * plan_.weights.length + plan_.weights.bend;
    faults.conflicts += is_beside_part(wire, s, course.size());
    for (const Segment& other : segments_) {
      if (other.wire == wire) continue;
      if (run_beside(s, other)) {
        faults.conflicts += std::abs(s.at - other.at) < beside_run(s, other) && !was_beside(s, other);
      } else if (s.is_level != other.is_level && s.at >= other.low && s.at <= other.high && other.at >= s.low && other.at <= s.high) {
        const bool is_square = s.is_level ? crosses(s, other) : crosses(other, s);
        is_square ? faults.cost += plan_.weights.crossing : ++faults.conflicts;
      }
    }
  }
  return faults;
}

void Tightening::take(int wire, std::vector<GridPoint> course) {
  std::erase_if(segments_, [wire](const Segment& s) { return s.wire == wire; });
  for (const Segment& s : segments_of_points(wire, course)) segments_.push_back(s);
  laid_.courses[static_cast<std::size_t>(wire)].points = std::move(course);
}

/// True when the run has moved.
bool Tightening::try_run(const Run& run) {
  const std::vector<GridPoint>& p = points(run.wire);
  const std::size_t i = run.first;
  const bool level = p[i].y == p[i + 1].y;
  const Grid at = across(p[i], level), before = across(p[i - 1], level), after = across(p[i + 2], level);
  std::vector<Grid> places;
  if ((before < at) == (after < at)) {
    if (const auto stop = drawn_up(run, level, before, after)) places.push_back(*stop);
  } else {
    if (i > 1 && goes_on(p, i - 2, i - 1, i, level)) places.push_back(before);
    if (i + 3 < p.size() && goes_on(p, i + 2, i + 3, i, level)) places.push_back(after);
  }
  if (places.empty()) return false;
  const Faults now = judge(run.wire, p);
  for (const Grid place : places) {
    std::vector<GridPoint> moved = p;
    set_across(moved[i], level, place);
    set_across(moved[i + 1], level, place);
    simplify(moved);
    const Faults then = judge(run.wire, moved);
    if (then.cost >= now.cost || then.conflicts > now.conflicts) continue;
    take(run.wire, std::move(moved));
    return true;
  }
  return false;
}

bool Tightening::run_round() {
  bool has_moved = false;
  for (int w = 0; w < wires_of(plan_); ++w) {
    if (is_held(w)) continue;
    for (std::size_t i = 1; i + 2 < points(w).size(); ++i) has_moved |= try_run({w, i});
  }
  return has_moved;
}

}  // namespace

void tighten_runs(const Plan& plan, Laid& laid, const std::vector<char>& held) {
  Tightening tightening(plan, laid, held);
  for (int round = 0; round < most_tightening_rounds && tightening.run_round(); ++round) {
  }
}

}  // namespace loomfolio::laying
