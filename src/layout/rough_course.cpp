// SPDX-License-Identifier: MIT
// The idea. Between two terminals there are few sensible courses: which channel each end opens on (a terminal at a
// part's end may take the one above or below), and whether the wire first goes down and then across, or first across.
// Each is drawn as runs in channels and alleys, priced with length, bends and crossings, and the cheapest is taken.
#include <algorithm>

#include "layout/rough.h"

namespace loomfolio::laying {
namespace {

RoughRun make_run(Grid at_a, RunEnd a, Grid at_b, RunEnd b) {
  RoughRun run;
  run.at[0] = at_a, run.at[1] = at_b;
  run.low = std::min(at_a, at_b);
  run.high = std::max(at_a, at_b);
  run.end[0] = a, run.end[1] = b;
  return run;
}

signed char sign_of(Grid d) { return d < 0 ? -1 : d > 0 ? 1 : 0; }

}  // namespace

Rough::EndPoint Rough::end_point(int pin) const {
  const int body = plan_.pins[pin].body;
  const Pose& pose = pose_[body];
  const Reach& reach = reaches_[2 * static_cast<std::size_t>(pin) + (pose.is_mirrored ? 1 : 0)];
  return {pose.row, body, reach.side, pose.x + reach.x, reach.y, reach.above, reach.below};
}

/// The channels that an end may open on, first and last.
std::pair<int, int> Rough::channels_of(const EndPoint& end, const EndPoint& other) {
  if (end.side == Side::top) return {end.row, end.row};
  if (end.side == Side::bottom) return {end.row + 1, end.row + 1};
  if (other.row < end.row) return {end.row, end.row};
  if (other.row > end.row) return {end.row + 1, end.row + 1};
  return {end.row, end.row + 1};
}

/// The alley that an end on a left or right side opens into.
int Rough::alley_beside(const EndPoint& e) const {
  if (e.side == Side::right) return e.body;
  const auto& bodies = row_bodies_[e.row];
  const auto it = std::find(bodies.begin(), bodies.end(), e.body);
  if (it == bodies.end())
    return alley_right_of(plan_, e.row, left_body_at(e.row, pose_[e.body].x));  // on trial in this row
  return alley_right_of(plan_, e.row, it == bodies.begin() ? -1 : *(it - 1));
}

/// The last body of the row that stands left of x; -1 when none does.
int Rough::left_body_at(int row, Grid x) const {
  const auto& bodies = row_bodies_[row];
  const auto it = std::upper_bound(bodies.begin(), bodies.end(), x,
                                   [&](Grid at, int b) { return at < pose_[b].x + plan_.bodies[b].width / 2; });
  return it == bodies.begin() ? -1 : *(it - 1);
}

/// The alley of the row nearest to the wished x, and where in it.
void Rough::pass_row(int row, Grid wish, int& left_body, Grid& x) const {
  left_body = left_body_at(row, wish);
  const auto& bodies = row_bodies_[row];
  const auto next = left_body < 0 ? bodies.begin() : std::find(bodies.begin(), bodies.end(), left_body) + 1;
  x = wish;
  if (left_body >= 0) x = std::max(x, pose_[left_body].x + plan_.bodies[left_body].width + plan_.spacing.clear);
  if (next != bodies.end()) x = std::min(x, pose_[*next].x - plan_.spacing.clear);
}

/// A wire between two ends that face each other across one alley, or stand on the same side of one part.
bool Rough::draw_direct(const EndPoint& a, const EndPoint& b, Course& course) const {
  if (a.row != b.row || is_upright(a.side) || is_upright(b.side)) return false;
  course.clear();
  const int alley = alley_beside(a);
  if (alley != alley_beside(b)) return false;
  const auto end_of = [](const EndPoint& e) { return e.side == Side::right ? RunEnd::low_side : RunEnd::high_side; };
  course.runs.push_back({alley_strip(alley), make_run(a.y, end_of(a), b.y, end_of(b))});
  course.own =
      std::abs(a.x - b.x) + std::abs(a.y - b.y) + (a.y == b.y && a.side != b.side ? 0 : 2 * plan_.weights.bend);
  return true;
}

/// Gives up, with false, once length and bends alone cost `limit`.
bool Rough::draw_course(const EndPoint& a, const EndPoint& b, const Choice& route, long limit, Course& course) const {
  course.clear();
  course.from_channel = route.from_channel;
  course.to_channel = route.to_channel;
  const bool down = route.from_channel < route.to_channel;
  long length = 0;
  int bends = 0;
  // From a's own alley onto its channel; the heading is set when the next x is known.
  const auto add_side_run = [&](const EndPoint& e, int channel, Grid heading) {
    if (is_upright(e.side)) return;
    const bool up = channel == e.row;
    RoughRun run = make_run(e.y, e.side == Side::right ? RunEnd::low_side : RunEnd::high_side,
                            up ? -far_away : far_away, up ? RunEnd::open_low : RunEnd::open_high);
    run.heading[1] = sign_of(heading);
    course.runs.push_back({alley_strip(alley_beside(e)), run});
    length += up ? e.y : row_height_[e.row] - e.y;
    ++bends;
  };
  const auto side_on = [&](int row, int channel) { return row < channel ? RunEnd::low_side : RunEnd::high_side; };
  const Grid end_x = b.run_x(route.to_channel, plan_.spacing.pitch);
  Grid x = a.run_x(route.from_channel, plan_.spacing.pitch);
  RunEnd from_side = side_on(a.row, route.from_channel);
  Grid first_heading = 0;
  bool first = true;
  std::size_t last_pass = SIZE_MAX;
  for (int channel = route.from_channel;; channel += down ? 1 : -1) {
    const bool is_last = channel == route.to_channel;
    const int row = down ? channel : channel - 1;
    Grid next_x = end_x;
    int left_body = -1;
    RunEnd to_side = is_last ? side_on(b.row, channel) : down ? RunEnd::high_side : RunEnd::low_side;
    if (!is_last) pass_row(row, route.turns_late ? x : end_x, left_body, next_x);
    course.runs.push_back({channel_strip(channel), make_run(x, from_side, next_x, to_side)});
    length += std::abs(next_x - x) + channel_y_[channel];
    if (next_x != x || from_side == to_side) bends += 2;
    if (length + static_cast<long>(bends) * plan_.weights.bend >= limit) return false;
    if (first) first_heading = next_x - x;
    if (last_pass != SIZE_MAX) course.runs[last_pass].second.heading[1] = sign_of(next_x - x);
    first = false;
    if (is_last) {
      add_side_run(b, channel, x - next_x);
      break;
    }
    RoughRun pass = make_run(down ? -far_away : far_away, down ? RunEnd::open_low : RunEnd::open_high,
                             down ? far_away : -far_away, down ? RunEnd::open_high : RunEnd::open_low);
    pass.heading[0] = sign_of(x - next_x);
    course.runs.push_back({alley_strip(alley_right_of(plan_, row, left_body)), pass});
    last_pass = course.runs.size() - 1;
    course.passes.push_back({row, left_body, next_x});
    length += row_height_[row];
    from_side = down ? RunEnd::low_side : RunEnd::high_side;
    x = next_x;
  }
  add_side_run(a, route.from_channel, first_heading);
  course.own = length + static_cast<long>(bends) * plan_.weights.bend;
  return true;
}

/// Length and bends that every course between those channels has.
long Rough::least_cost(const EndPoint& a, const EndPoint& b, int from_channel, int to_channel) const {
  const auto [first, last] = std::minmax(from_channel, to_channel);
  const Grid across = std::abs(a.run_x(from_channel, plan_.spacing.pitch) - b.run_x(to_channel, plan_.spacing.pitch));
  long length = across + channel_top_[last] + channel_y_[last] - channel_top_[first];
  int bends = across == 0 ? 0 : 2;
  const auto add_side = [&](const EndPoint& e, int channel) {
    if (is_upright(e.side)) return;
    length += channel == e.row ? e.y : row_height_[e.row] - e.y;
    ++bends;
  };
  add_side(a, from_channel), add_side(b, to_channel);
  return length + static_cast<long>(bends) * plan_.weights.bend;
}

/// No course of the wire costs less, wherever the others run.
long Rough::least_cost(const EndPoint& a, const EndPoint& b) const {
  const bool may_be_direct = a.row == b.row && !is_upright(a.side) && !is_upright(b.side);
  long least = may_be_direct ? std::abs(a.x - b.x) + std::abs(a.y - b.y) : INT64_MAX;
  const auto [a1, a2] = channels_of(a, b);
  const auto [b1, b2] = channels_of(b, a);
  for (int from = a1; from <= a2; ++from)
    for (int to = b1; to <= b2; ++to) least = std::min(least, least_cost(a, b, from, to));
  return least;
}

/// Keeps `course` as the best when it is; what it held before is lost.
void Rough::offer(Course& course, Course& best, long& best_cost) const {
  if (course.own >= best_cost) return;
  // On trial in a row lower than its body a course may count as less than none, so that the difference to no limit would not fit.
  const long stop_at = best_cost == INT64_MAX ? INT64_MAX : (best_cost - course.own) / plan_.weights.crossing + 1;
  course.crossings = count_crossings_of(course, stop_at);
  const long cost = course.own + plan_.weights.crossing * course.crossings;
  if (cost >= best_cost) return;
  best_cost = cost;
  std::swap(course, best);
}

bool Rough::find_best(const EndPoint& a, const EndPoint& b, long limit, Course& best) {
  long best_cost = limit;
  if (draw_direct(a, b, drawn_)) offer(drawn_, best, best_cost);
  const auto [a1, a2] = channels_of(a, b);
  const auto [b1, b2] = channels_of(b, a);
  for (int from = a1; from <= a2; ++from)
    for (int to = b1; to <= b2; ++to)
      for (const bool late : {false, true}) {
        if (late && from == to) continue;
        if (draw_course(a, b, {from, to, late}, best_cost, drawn_)) offer(drawn_, best, best_cost);
      }
  return best_cost < limit;
}

void Rough::reroute(int rounds) {
  for (int round = 0; round < rounds; ++round) {
    const long before = total_;
    for (int w = 0; w < static_cast<int>(course_.size()); ++w) {
      remove(w);
      add_best(w);
    }
    if (total_ >= before) break;
  }
}

/// Alleys and channels in turn; a street that comes twice is a loop, which goes.
Routes Rough::routes() const {
  Routes routes(course_.size());
  for (int w = 0; w < static_cast<int>(course_.size()); ++w) {
    const Course& course = course_[w];
    Route& route = routes[w];
    const auto go = [&](Leg leg) {
      const auto same = std::find_if(route.begin(), route.end(), [&](const Leg& l) {
        return l.in_alley == leg.in_alley && l.street == leg.street;
      });
      if (same != route.end())
        route.erase(same + 1, route.end());
      else
        route.push_back(leg);
    };
    const EndPoint a = end_point(from_pin(w)), b = end_point(to_pin(w));
    const auto enter = [&](const EndPoint& e, int channel) {
      if (!is_upright(e.side)) go({true, alley_beside(e), e.run_x(channel, plan_.spacing.pitch)});
    };
    enter(a, course.from_channel);
    if (course.from_channel < 0) continue;
    const int step = course.from_channel < course.to_channel ? 1 : -1;
    int channel = course.from_channel;
    for (const Passing& pass : course.passes) {
      go({false, channel, 0});
      go({true, alley_right_of(plan_, pass.row, pass.left_body), pass.x});
      channel += step;
    }
    go({false, channel, 0});
    enter(b, course.to_channel);
  }
  return routes;
}

}  // namespace loomfolio::laying
