// SPDX-License-Identifier: MIT
// The idea. A shortest path search over the crossings of all useful lines. A state is a crossing and the axis on which
// it was reached; a step goes to the next line; what it costs is its length, 1 bend when the axis changes, and every
// wire it crosses. The estimate of what is left is the straight way, which never is too much, so the first arrival is
// the best. Each end runs straight out to the clearance before the search begins.
//
// First only a window around the two ends is searched, then the whole drawing with a margin.
#include "layout/thread.h"

#include <algorithm>
#include <queue>
#include <tuple>

#include "layout/draw.h"
#include "layout/thread_lines.h"

namespace loomfolio::laying {
namespace {

constexpr Grid window_margin = 6000, outer_margin = 2000;
constexpr std::size_t most_states = 24'000'000;

GridPoint step_from(const ThreadEnd& end, Grid by) {
  switch (end.side) {
    case Side::top:
      return {end.at.x, end.at.y - by};
    case Side::bottom:
      return {end.at.x, end.at.y + by};
    case Side::left:
      return {end.at.x - by, end.at.y};
    case Side::right:
      return {end.at.x + by, end.at.y};
  }
  return end.at;
}

int axis_of(Side side) { return side == Side::top || side == Side::bottom ? 1 : 0; }

class Threading {
 public:
  Threading(const ThreadRequest& request, const Spacing& spacing, const RouteWeights& weights, GridBox window)
      : request_(request), weights_(weights), lines_(request, spacing, window) {
    const Grid stub = spacing.clear + (request.graph.wires[request.wire].pen + 1) / 2;
    start_ = step_from(request.from, stub);
    goal_ = step_from(request.to, stub);
  }
  std::optional<Threaded> run();

 private:
  struct Open {
    long estimate = 0;
    int bends = 0, state = 0;
    auto key() const { return std::tie(estimate, bends, state); }
    bool operator>(const Open& o) const { return key() > o.key(); }
  };
  static constexpr int axes = 2;
  int state_of(int x, int y, int axis) const { return (x * static_cast<int>(lines_.ys().size()) + y) * axes + axis; }
  bool find(const std::vector<Grid>& lines, Grid at, int& index) const;
  void reach(int state, long cost, int bends, int before);
  void expand(int state, const Open& open);
  Threaded read_back(int state) const;

  const ThreadRequest& request_;
  const RouteWeights& weights_;
  ThreadLines lines_;
  GridPoint start_, goal_;
  std::vector<long> cost_;
  std::vector<int> before_;
  std::priority_queue<Open, std::vector<Open>, std::greater<>> queue_;
};

bool Threading::find(const std::vector<Grid>& lines, Grid at, int& index) const {
  const auto it = std::lower_bound(lines.begin(), lines.end(), at);
  index = static_cast<int>(it - lines.begin());
  return it != lines.end() && *it == at;
}

void Threading::reach(int state, long cost, int bends, int before) {
  if (cost_[state] <= cost) return;
  cost_[state] = cost;
  before_[state] = before;
  const int vertex = state / axes, count = static_cast<int>(lines_.ys().size());
  const Grid x = lines_.xs()[vertex / count], y = lines_.ys()[vertex % count];
  queue_.push({cost + std::abs(x - goal_.x) + std::abs(y - goal_.y), bends, state});
  const int axis = axis_of(request_.to.side);  // the last bend may be at the goal itself
  if (x == goal_.x && y == goal_.y && state % axes != axis)
    reach(vertex * axes + axis, cost + weights_.bend, bends + 1, state);
}

void Threading::expand(int state, const Open& open) {
  const int axis = state % axes, vertex = state / axes, count = static_cast<int>(lines_.ys().size());
  const int x = vertex / count, y = vertex % count;
  for (const int to_axis : {0, 1})
    for (const int step : {-1, 1}) {
      const int nx = to_axis == 0 ? x + step : x, ny = to_axis == 1 ? y + step : y;
      if (nx < 0 || ny < 0 || nx >= static_cast<int>(lines_.xs().size()) || ny >= count) continue;
      const Grid from = to_axis == 0 ? lines_.xs()[x] : lines_.ys()[y],
                 to = to_axis == 0 ? lines_.xs()[nx] : lines_.ys()[ny];
      const LineAxis line_axis = to_axis == 0 ? LineAxis::level : LineAxis::upright;
      const int line = to_axis == 0 ? y : x;
      if (!lines_.is_free(line_axis, line, std::min(from, to), std::max(from, to))) continue;
      const int turn = to_axis != axis;
      const long cost = cost_[state] + std::abs(to - from) * weights_.length + turn * weights_.bend +
                        static_cast<long>(lines_.count_crossed(line_axis, line, from, to)) * weights_.crossing;
      reach(state_of(nx, ny, to_axis), cost, open.bends + turn, state);
    }
}

Threaded Threading::read_back(int state) const {
  Threaded out;
  out.cost = cost_[state];
  out.points.push_back(request_.to.at);
  const int count = static_cast<int>(lines_.ys().size());
  for (int s = state; s >= 0; s = before_[s])
    out.points.push_back({lines_.xs()[s / axes / count], lines_.ys()[s / axes % count]});
  out.points.push_back(request_.from.at);
  std::reverse(out.points.begin(), out.points.end());
  simplify(out.points);
  return out;
}

std::optional<Threaded> Threading::run() {
  int sx = 0, sy = 0, gx = 0, gy = 0;
  if (!find(lines_.xs(), start_.x, sx) || !find(lines_.ys(), start_.y, sy) || !find(lines_.xs(), goal_.x, gx) ||
      !find(lines_.ys(), goal_.y, gy))
    return std::nullopt;
  const std::size_t states = lines_.xs().size() * lines_.ys().size() * axes;
  if (states > most_states) return std::nullopt;
  cost_.assign(states, INT64_MAX);
  before_.assign(states, -1);
  reach(state_of(sx, sy, axis_of(request_.from.side)), 0, 0, -1);
  const int goal = state_of(gx, gy, axis_of(request_.to.side));
  while (!queue_.empty()) {
    const Open open = queue_.top();
    queue_.pop();
    if (open.state == goal) return read_back(goal);
    const int vertex = open.state / axes, count = static_cast<int>(lines_.ys().size());
    const long left = std::abs(lines_.xs()[vertex / count] - goal_.x) + std::abs(lines_.ys()[vertex % count] - goal_.y);
    if (open.estimate - left > cost_[open.state]) continue;
    expand(open.state, open);
  }
  return std::nullopt;
}

GridBox cover(const ThreadRequest& request) {
  GridBox all{INT32_MAX, INT32_MAX, INT32_MIN, INT32_MIN};
  const auto add = [&](GridBox b) {
    all = {std::min(all.x0, b.x0), std::min(all.y0, b.y0), std::max(all.x1, b.x1), std::max(all.y1, b.y1)};
  };
  for (const GridBox& box : request.boxes)
    if (box.width() > 0) add(box);
  for (const Segment& s : request.segments)
    add(s.is_level ? GridBox{s.low, s.at, s.high, s.at} : GridBox{s.at, s.low, s.at, s.high});
  return all;
}

}  // namespace

std::optional<Threaded> thread_wire(const ThreadRequest& request, const Spacing& spacing, const RouteWeights& weights) {
  const GridPoint a = request.from.at, b = request.to.at;
  const GridBox between{std::min(a.x, b.x), std::min(a.y, b.y), std::max(a.x, b.x), std::max(a.y, b.y)};
  if (auto found = Threading(request, spacing, weights, between.grown(window_margin)).run()) return found;
  return Threading(request, spacing, weights, cover(request).grown(outer_margin)).run();
}

}  // namespace loomfolio::laying
