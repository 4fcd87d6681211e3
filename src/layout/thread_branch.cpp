// SPDX-License-Identifier: MIT
// The idea. Where a terminal's own line is taken on both sides, a further wire parts from one of those that are there,
// at a dot with three ways. It keeps to that wire as shortly as it can.
//
//        |                 +--- new
//     ---+---           ---+-o-        no fourth way at the dot: the next branch is a little farther
//        |                 |
//      (o) terminal      (o)
#include "layout/thread_branch.h"

#include <algorithm>

namespace loomfolio::laying {
namespace {

constexpr int shared_length = 3;  ///< how much dearer a shared stretch is: it reads as a splice

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

bool is_level_side(Side side) { return side == Side::left || side == Side::right; }

/// The course of a wire that is drawn to the same terminal, from there on; empty when it is not.
std::vector<GridPoint> course_from(const ThreadRequest& request, const ThreadEnd& end, int wire) {
  const GraphWire& g = request.graph.wires[wire];
  std::vector<GridPoint> points = request.courses[wire].points;
  if (g.from_box == end.box && g.from_terminal == end.terminal) return points;
  if (g.to_box != end.box || g.to_terminal != end.terminal) return {};
  std::reverse(points.begin(), points.end());
  return points;
}

class Branching {
 public:
  Branching(const ThreadRequest& request, ThreadLines& lines, const RouteWeights& weights, Grid distance, std::vector<Branch>& out)
      : request_(request), lines_(lines), weights_(weights), distance_(distance), out_(out) {}
  void along(const std::vector<GridPoint>& course);

 private:
  bool is_by_an_exit(LineAxis axis, Grid at) const;
  void off_stretch(const std::vector<GridPoint>& course, std::size_t index, long cost);

  const ThreadRequest& request_;
  ThreadLines& lines_;
  const RouteWeights& weights_;
  Grid distance_;
  std::vector<Branch>& out_;
};

/// On the line that leaves a terminal of the wire, where other branches part from it.
bool Branching::is_by_an_exit(LineAxis axis, Grid at) const {
  for (const ThreadEnd& end : {request_.from, request_.to}) {
    const bool is_level = is_level_side(end.side);
    if (is_level == (axis == LineAxis::level) && std::abs(at - (is_level ? end.at.y : end.at.x)) < distance_) return true;
  }
  return false;
}

/// To both sides of a stretch, at each line that crosses it clear of its ends and of other branches.
void Branching::off_stretch(const std::vector<GridPoint>& course, std::size_t index, long cost) {
  const GridPoint a = course[index], b = course[index + 1];
  const bool is_level = a.y == b.y;
  const Grid at = is_level ? a.y : a.x, from = is_level ? a.x : a.y, to = is_level ? b.x : b.y;
  const auto& places = is_level ? lines_.xs() : lines_.ys();
  const LineAxis axis = is_level ? LineAxis::upright : LineAxis::level;
  const Grid low = std::min(from, to) + distance_, high = std::max(from, to) - distance_;
  for (auto it = std::lower_bound(places.begin(), places.end(), low); it != places.end() && *it <= high; ++it) {
    if (is_by_an_exit(axis, *it)) continue;
    const int line = static_cast<int>(it - places.begin());
    if (!lines_.is_free(axis, line, at + 1, at + distance_) || !lines_.is_free(axis, line, at - distance_, at - 1))
      continue;
    for (const Grid side : {-distance_, distance_}) {
      const GridPoint joint = is_level ? GridPoint{*it, at} : GridPoint{at, *it};
      Branch branch{is_level ? GridPoint{*it, at + side} : GridPoint{at + side, *it},
                    axis,
                    cost + shared_length * std::abs(*it - from) + distance_ + weights_.bend,
                    {course.begin(), course.begin() + static_cast<long>(index) + 1}};
      branch.path.push_back(joint);
      out_.push_back(std::move(branch));
    }
  }
}

void Branching::along(const std::vector<GridPoint>& course) {
  long cost = 0;
  for (std::size_t i = 0; i + 1 < course.size(); ++i) {
    off_stretch(course, i, cost);
    const Grid length = std::abs(course[i + 1].x - course[i].x) + std::abs(course[i + 1].y - course[i].y);
    cost += static_cast<long>(shared_length) * length + weights_.bend;
  }
}

}  // namespace

std::vector<Branch> find_branches(const ThreadRequest& request, const ThreadEnd& end, ThreadLines& lines,
                                  const RouteWeights& weights) {
  std::vector<Branch> out{
      {step_from(end, lines.stub()), is_level_side(end.side) ? LineAxis::level : LineAxis::upright, 0, {end.at}}};
  for (int w = 0; w < static_cast<int>(request.courses.size()); ++w) {
    if (w == request.wire || request.figure[w] != request.figure[request.wire]) continue;
    const std::vector<GridPoint> course = course_from(request, end, w);
    if (!course.empty()) Branching(request, lines, weights, lines.distance_from(w), out).along(course);
  }
  return out;
}

}  // namespace loomfolio::laying
