// SPDX-License-Identifier: MIT
// A line is worth having beside each part and beside each drawn wire, at the least distance, and at the wire's own
// ends. A line is blocked where it would run in or near a part, or too near along another wire; other wires that cross
// it are counted.
#include "layout/thread_lines.h"

#include <algorithm>

namespace loomfolio::laying {
namespace {

void sort_unique(std::vector<Grid>& v) {
  std::sort(v.begin(), v.end());
  v.erase(std::unique(v.begin(), v.end()), v.end());
}

void merge(std::vector<std::pair<Grid, Grid>>& intervals) {
  std::sort(intervals.begin(), intervals.end());
  std::vector<std::pair<Grid, Grid>> out;
  for (const auto& i : intervals) {
    if (!out.empty() && i.first < out.back().second)
      out.back().second = std::max(out.back().second, i.second);
    else
      out.push_back(i);
  }
  intervals = std::move(out);
}

}  // namespace

Grid ThreadLines::distance_from(int wire) const {
  const auto& wires = request_.graph.wires;
  return spacing_.least + (wires[wire].pen + 1) / 2 + (wires[request_.wire].pen + 1) / 2;
}

ThreadLines::ThreadLines(const ThreadRequest& request, const Spacing& spacing, GridBox window)
    : request_(request),
      spacing_(spacing),
      window_(window),
      clear_(spacing.clear + (request.graph.wires[request.wire].pen + 1) / 2) {
  std::vector<Grid> obstacles_x, obstacles_y;
  for (const GridBox& box : request.boxes) {
    if (box.width() == 0 || !box.grown(clear_ + 1).overlaps(window)) continue;
    for (Grid x : {box.x0 - clear_, box.x1 + clear_}) xs_.push_back(x);
    for (Grid y : {box.y0 - clear_, box.y1 + clear_}) ys_.push_back(y);
    for (Grid x : {box.x0, box.x1}) obstacles_x.push_back(x);
    for (Grid y : {box.y0, box.y1}) obstacles_y.push_back(y);
  }
  for (const Segment& s : request.segments) {
    const GridBox line = s.is_level ? GridBox{s.low, s.at, s.high, s.at} : GridBox{s.at, s.low, s.at, s.high};
    const Grid distance = distance_from(s.wire);
    if (!line.grown(distance + 1).overlaps(window)) continue;
    near_.push_back(s);
    auto& lines = s.is_level ? ys_ : xs_;
    lines.push_back(s.at - distance);
    lines.push_back(s.at + distance);
    (s.is_level ? obstacles_y : obstacles_x).push_back(s.at);
  }
  if (may_squeeze()) {
    add_middles(xs_, std::move(obstacles_x));
    add_middles(ys_, std::move(obstacles_y));
    for (const ThreadEnd& end : {request.from, request.to})
      for (const Grid by : {-squeezed_stub, squeezed_stub}) {
        xs_.push_back(end.at.x + by);
        ys_.push_back(end.at.y + by);
      }
  }
  for (const ThreadEnd& end : {request.from, request.to}) {
    xs_.push_back(end.at.x);
    ys_.push_back(end.at.y);
  }
  sort_unique(xs_);
  sort_unique(ys_);
  const auto outside = [&](Grid low, Grid high) { return [low, high](Grid g) { return g < low || g > high; }; };
  std::erase_if(xs_, outside(window.x0, window.x1));
  std::erase_if(ys_, outside(window.y0, window.y1));
  levels_.resize(ys_.size());
  uprights_.resize(xs_.size());
}

/// A line between each two neighbours, however near they are.
void ThreadLines::add_middles(std::vector<Grid>& lines, std::vector<Grid> obstacles) const {
  sort_unique(obstacles);
  for (std::size_t i = 1; i < obstacles.size(); ++i)
    if (obstacles[i] - obstacles[i - 1] >= 2) lines.push_back((obstacles[i] + obstacles[i - 1]) / 2);
}

/// The first or last stretch of a wire that shares the terminal, on the very line that the new wire leaves by.
bool ThreadLines::is_own_stub(const Segment& s) const {
  if (request_.figure[s.wire] != request_.figure[request_.wire]) return false;
  for (const ThreadEnd& end : {request_.from, request_.to}) {
    const bool is_level = end.side == Side::left || end.side == Side::right;
    if (s.is_level != is_level || s.at != (is_level ? end.at.y : end.at.x)) continue;
    const Grid along = is_level ? end.at.x : end.at.y;
    if (s.low == along || s.high == along) return true;
  }
  return false;
}

/// The line on which the new wire leaves one of its terminals.
bool ThreadLines::is_exit_line(LineAxis axis, Grid at) const {
  for (const ThreadEnd& end : {request_.from, request_.to}) {
    const bool is_level = end.side == Side::left || end.side == Side::right;
    if (is_level == (axis == LineAxis::level) && at == (is_level ? end.at.y : end.at.x)) return true;
  }
  return false;
}

void ThreadLines::block_near_boxes(Line& line, bool is_level, Grid at) const {
  const auto add = [&](std::vector<std::pair<Grid, Grid>>& to, const GridBox& box) {
    if (is_level ? at > box.y0 && at < box.y1 : at > box.x0 && at < box.x1)
      to.emplace_back(is_level ? box.x0 : box.y0, is_level ? box.x1 : box.y1);
  };
  for (const GridBox& box : request_.boxes) {
    if (box.width() == 0) continue;
    add(line.blocked, box.grown(may_squeeze() ? squeezed_stub : clear_));
    if (may_squeeze()) add(line.tight, box.grown(clear_));
  }
}

/// A parallel run blocks what is too near; one that can be pushed, since it ends at no part, only what lies on it.
void ThreadLines::block_beside(Line& line, const Segment& s, Grid at) const {
  const Grid distance = distance_from(s.wire), off = std::abs(s.at - at);
  if (off >= distance) return;
  const bool can_give = may_squeeze() && off > 0 && !s.is_end;
  (can_give ? line.tight : line.blocked).emplace_back(s.low - spacing_.least, s.high + spacing_.least);
}

void ThreadLines::fill(Line& line, LineAxis axis, Grid at) const {
  const bool is_level = axis == LineAxis::level;
  block_near_boxes(line, is_level, at);
  for (const Segment& s : near_) {
    const bool is_own = is_own_stub(s), is_own_figure = request_.figure[s.wire] == request_.figure[request_.wire];
    if (s.is_level == is_level) {
      if (!is_own || s.at != at) block_beside(line, s, at);
    } else if (at >= s.low && at <= s.high && !is_own) {
      if (is_own_figure && (at == s.low || at == s.high) && is_exit_line(axis, at))
        continue;  // turns off the shared stub: a joint
      if (at == s.low || at == s.high)
        line.blocked.emplace_back(s.at - 1, s.at + 1);
      else
        line.crossed.insert(line.crossed.end(), is_own_figure ? 2 : 1, s.at);  // its own figure is hopped too, but dearer
    }
  }
  merge(line.blocked);
  merge(line.tight);
  std::sort(line.crossed.begin(), line.crossed.end());
  line.is_known = true;
}

ThreadLines::Line& ThreadLines::line_of(LineAxis axis, int line) {
  Line& out = axis == LineAxis::level ? levels_[line] : uprights_[line];
  if (!out.is_known) fill(out, axis, axis == LineAxis::level ? ys_[line] : xs_[line]);
  return out;
}

bool ThreadLines::is_free(LineAxis axis, int line, Grid low, Grid high) {
  const auto& blocked = line_of(axis, line).blocked;
  const auto it =
      std::upper_bound(blocked.begin(), blocked.end(), low, [](Grid g, const auto& i) { return g < i.second; });
  return it == blocked.end() || it->first >= high;
}

int ThreadLines::count_crossed(LineAxis axis, int line, Grid from, Grid to) {
  const auto& crossed = line_of(axis, line).crossed;
  if (from < to)
    return static_cast<int>(std::upper_bound(crossed.begin(), crossed.end(), to) -
                            std::upper_bound(crossed.begin(), crossed.end(), from));
  return static_cast<int>(std::lower_bound(crossed.begin(), crossed.end(), from) -
                          std::lower_bound(crossed.begin(), crossed.end(), to));
}

Grid ThreadLines::squeezed(LineAxis axis, int line, Grid low, Grid high) {
  Grid sum = 0;
  for (const auto& [from, to] : line_of(axis, line).tight) {
    if (from >= high) break;
    sum += std::max(0, std::min(to, high) - std::max(from, low));
  }
  return sum;
}

}  // namespace loomfolio::laying
