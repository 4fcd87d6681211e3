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
  for (const GridBox& box : request.boxes) {
    if (box.width() == 0 || !box.grown(clear_ + 1).overlaps(window)) continue;
    for (Grid x : {box.x0 - clear_, box.x1 + clear_}) xs_.push_back(x);
    for (Grid y : {box.y0 - clear_, box.y1 + clear_}) ys_.push_back(y);
  }
  for (const Segment& s : request.segments) {
    const GridBox line = s.is_level ? GridBox{s.low, s.at, s.high, s.at} : GridBox{s.at, s.low, s.at, s.high};
    const Grid distance = distance_from(s.wire);
    if (!line.grown(distance + 1).overlaps(window)) continue;
    near_.push_back(s);
    auto& lines = s.is_level ? ys_ : xs_;
    lines.push_back(s.at - distance);
    lines.push_back(s.at + distance);
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

void ThreadLines::fill(Line& line, LineAxis axis, Grid at) const {
  const bool is_level = axis == LineAxis::level;
  for (const GridBox& box : request_.boxes) {
    if (box.width() == 0) continue;
    const GridBox wide = box.grown(clear_);
    if (is_level ? at > wide.y0 && at < wide.y1 : at > wide.x0 && at < wide.x1)
      line.blocked.emplace_back(is_level ? wide.x0 : wide.y0, is_level ? wide.x1 : wide.y1);
  }
  for (const Segment& s : near_) {
    const bool is_own = is_own_stub(s), is_own_figure = request_.figure[s.wire] == request_.figure[request_.wire];
    if (s.is_level == is_level) {
      const Grid distance = distance_from(s.wire);
      if (std::abs(s.at - at) >= distance || (is_own && s.at == at)) continue;
      line.blocked.emplace_back(s.low - spacing_.least, s.high + spacing_.least);
    } else if (at >= s.low && at <= s.high && !is_own) {
      if (is_own_figure && (at == s.low || at == s.high) && is_exit_line(axis, at))
        continue;  // turns off the shared stub: a joint
      if (is_own_figure || at == s.low || at == s.high)
        line.blocked.emplace_back(s.at - 1, s.at + 1);
      else
        line.crossed.push_back(s.at);
    }
  }
  merge(line.blocked);
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

}  // namespace loomfolio::laying
