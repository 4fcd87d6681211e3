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
#include "layout/thread_branch.h"
#include "layout/thread_lines.h"

namespace loomfolio::laying {
namespace {

constexpr Grid window_margin = 6000, outer_margin = 2000;
constexpr std::size_t most_states = 24'000'000;

/// True when every point is a bend and no stretch meets another than its neighbours.
bool is_simple(const std::vector<GridPoint>& p) {
  const auto cover = [&](std::size_t i) {
    return GridBox{std::min(p[i].x, p[i + 1].x), std::min(p[i].y, p[i + 1].y), std::max(p[i].x, p[i + 1].x),
                   std::max(p[i].y, p[i + 1].y)};
  };
  for (std::size_t i = 0; i + 1 < p.size(); ++i) {
    if (i + 2 < p.size() && (p[i].x == p[i + 1].x) == (p[i + 1].x == p[i + 2].x)) return false;
    for (std::size_t j = i + 2; j + 1 < p.size(); ++j) {
      const GridBox a = cover(i), b = cover(j);
      if (a.x0 <= b.x1 && b.x0 <= a.x1 && a.y0 <= b.y1 && b.y0 <= a.y1) return false;
    }
  }
  return true;
}

class Threading {
 public:
  Threading(const ThreadRequest& request, const Spacing& spacing, const RouteWeights& weights, GridBox window)
      : request_(request), weights_(weights), lines_(request, spacing, window) {
    starts_ = find_branches(request, request.from, lines_, weights);
    goals_ = find_branches(request, request.to, lines_, weights);
    for (const Branch& goal : goals_)
      around_ = {std::min(around_.x0, goal.at.x), std::min(around_.y0, goal.at.y), std::max(around_.x1, goal.at.x),
                 std::max(around_.y1, goal.at.y)};
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
  long left_at(int state) const;
  int state_at(const Branch& branch) const;
  Threaded read_back(int goal) const;

  const ThreadRequest& request_;
  const RouteWeights& weights_;
  ThreadLines lines_;
  std::vector<Branch> starts_, goals_;
  GridBox around_{INT32_MAX, INT32_MAX, INT32_MIN, INT32_MIN};  ///< all goals
  std::vector<std::pair<int, int>> goal_states_;                ///< in order, with the goal
  int states_ = 0;                                              ///< beyond them: arrived at that goal
  std::vector<long> cost_;
  std::vector<int> before_;  ///< a state; -1 - n: start n
  std::priority_queue<Open, std::vector<Open>, std::greater<>> queue_;
};

bool Threading::find(const std::vector<Grid>& lines, Grid at, int& index) const {
  const auto it = std::lower_bound(lines.begin(), lines.end(), at);
  index = static_cast<int>(it - lines.begin());
  return it != lines.end() && *it == at;
}

/// What is left at least: the straight way to the box around all goals.
long Threading::left_at(int state) const {
  const int vertex = state / axes, count = static_cast<int>(lines_.ys().size());
  const Grid x = lines_.xs()[vertex / count], y = lines_.ys()[vertex % count];
  return std::max({around_.x0 - x, x - around_.x1, 0}) + std::max({around_.y0 - y, y - around_.y1, 0});
}

void Threading::reach(int state, long cost, int bends, int before) {
  if (cost_[state] <= cost) return;
  cost_[state] = cost;
  before_[state] = before;
  queue_.push({cost + left_at(state), bends, state});
  for (const int axis : {0, 1}) {  // the last bend may be at the goal itself
    const int own = state / axes * axes + axis, turn = axis != state % axes;
    auto it = std::lower_bound(goal_states_.begin(), goal_states_.end(), std::pair(own, 0));
    for (; it != goal_states_.end() && it->first == own; ++it) {
      const long arrived = cost + turn * weights_.bend + goals_[it->second].cost;
      if (cost_[states_ + it->second] <= arrived) continue;
      cost_[states_ + it->second] = arrived;
      before_[states_ + it->second] = state;
      queue_.push({arrived, bends + turn, states_ + it->second});
    }
  }
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
                        static_cast<long>(lines_.count_crossed(line_axis, line, from, to)) * weights_.crossing +
                        lines_.squeezed(line_axis, line, std::min(from, to), std::max(from, to)) * weights_.squeeze;
      reach(state_of(nx, ny, to_axis), cost, open.bends + turn, state);
    }
}

Threaded Threading::read_back(int goal) const {
  Threaded out;
  out.cost = cost_[states_ + goal];
  out.points = goals_[goal].path;
  const int count = static_cast<int>(lines_.ys().size());
  int s = before_[states_ + goal];
  for (; s >= 0; s = before_[s]) out.points.push_back({lines_.xs()[s / axes / count], lines_.ys()[s / axes % count]});
  const auto& begin = starts_[-1 - s].path;
  out.points.insert(out.points.end(), begin.rbegin(), begin.rend());
  std::reverse(out.points.begin(), out.points.end());
  simplify(out.points);
  return out;
}

/// The state in which a branch is left; -1 when it is not on the lines.
int Threading::state_at(const Branch& branch) const {
  int x = 0, y = 0;
  if (!find(lines_.xs(), branch.at.x, x) || !find(lines_.ys(), branch.at.y, y)) return -1;
  return state_of(x, y, branch.axis == LineAxis::level ? 0 : 1);
}

std::optional<Threaded> Threading::run() {
  const std::size_t states = lines_.xs().size() * lines_.ys().size() * axes;
  if (states > most_states) return std::nullopt;
  states_ = static_cast<int>(states);
  cost_.assign(states + goals_.size(), INT64_MAX);
  before_.assign(states + goals_.size(), -1);
  for (std::size_t i = 0; i < goals_.size(); ++i)
    if (const int state = state_at(goals_[i]); state >= 0) goal_states_.emplace_back(state, static_cast<int>(i));
  std::sort(goal_states_.begin(), goal_states_.end());
  for (std::size_t i = 0; i < starts_.size(); ++i)
    if (const int state = state_at(starts_[i]); state >= 0) reach(state, starts_[i].cost, 0, -1 - static_cast<int>(i));
  while (!queue_.empty()) {
    const Open open = queue_.top();
    queue_.pop();
    if (open.state >= states_) {
      Threaded found = read_back(open.state - states_);
      if (is_simple(found.points)) return found;
      continue;  // both ends along one wire, and back over itself
    }
    if (open.estimate - left_at(open.state) > cost_[open.state]) continue;
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
