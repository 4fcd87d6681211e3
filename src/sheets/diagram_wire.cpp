// SPDX-License-Identifier: MIT
// Hops are drawn as the layout has them, but for two cases: hops that all but touch become one long one, and a hop that leaves
// no room for the bend beside it takes the bend along, so that the wire turns at the height of the hop. Where there is a little room
// the bend is tighter than others.
//
//      |  _|_               ____|_
//      | / | )    becomes   |  | )
//      |/  | (___           |  | (___
#include "sheets/diagram_wire.h"

#include <algorithm>
#include <cmath>
#include <optional>

namespace loomfolio {
namespace {

constexpr Grid bend_radius = 120, least_radius = 35, hops_apart = 60;
constexpr double quarter_reach = 0.5522847498;  // reach of the controls of a quarter circle

/// What a wire needs beside a hop so that its bend is not torn by its own width.
Grid room_to_turn(Grid pen) { return std::max(least_radius, pen * 19 / 20); }

/// The thickest pen among upright stretches that pass the hop.
Grid pen_under(const Graph& graph, const Laid& laid, std::size_t wire, const Hop& hop) {
  Grid pen = 0;
  for (std::size_t other = 0; other < laid.courses.size(); ++other) {
    if (other == wire) continue;
    const auto& points = laid.courses[other].points;
    for (std::size_t i = 1; i < points.size(); ++i) {
      const GridPoint a = std::min(points[i - 1], points[i]), b = std::max(points[i - 1], points[i]);
      if (a.x == b.x && std::abs(a.x - hop.at.x) <= hop.half && hop.at.y > a.y && hop.at.y < b.y)
        pen = std::max(pen, graph.wires[other].pen);
    }
  }
  return pen;
}

struct PathMaker {
  Point origin;
  std::vector<PathPiece> path;

  Point place(double x, double y) const { return {origin.x + Millimetres(x / 100), origin.y + Millimetres(y / 100)}; }
  void line(double x, double y) { path.push_back(PathLine{place(x, y)}); }
  void curve(double x1, double y1, double x2, double y2, double x, double y) {
    path.push_back(PathCurve{place(x1, y1), place(x2, y2), place(x, y)});
  }
};

/// Up, across and down again; `way` is 1 to the right, -1 to the left.
void add_hop(PathMaker& maker, const DrawnHop& hop, double way) {
  const double y = hop.at.y, rise = hop.rise, x0 = hop.at.x - way * hop.half, x1 = hop.at.x + way * hop.half;
  const double corner = std::min<double>(rise, hop.half);
  maker.line(x0, y);
  maker.curve(x0, y - rise * quarter_reach, x0 + way * corner * (1 - quarter_reach), y - rise, x0 + way * corner, y - rise);
  maker.line(x1 - way * corner, y - rise);
  maker.curve(x1 - way * corner * (1 - quarter_reach), y - rise, x1, y - rise * quarter_reach, x1, y);
}

/// Hops of the level stretch between the points, from its start to its end.
std::vector<DrawnHop> hops_between(const WireCourse& course, GridPoint from, GridPoint to) {
  std::vector<DrawnHop> hops;
  if (from.y != to.y) return hops;
  for (const DrawnHop& hop : course.hops)
    if (hop.at.y == from.y && hop.at.x > std::min(from.x, to.x) && hop.at.x < std::max(from.x, to.x))
      hops.push_back(hop);
  std::sort(hops.begin(), hops.end(), [](const DrawnHop& a, const DrawnHop& b) { return a.at.x < b.at.x; });
  if (to.x < from.x) std::reverse(hops.begin(), hops.end());
  return hops;
}

void add_stretch(PathMaker& maker, const WireCourse& course, GridPoint from, GridPoint to) {
  for (const DrawnHop& hop : hops_between(course, from, to)) add_hop(maker, hop, to.x > from.x ? 1 : -1);
}

Grid length_of(GridPoint a, GridPoint b) { return std::abs(a.x - b.x) + std::abs(a.y - b.y); }

GridPoint toward(GridPoint from, GridPoint to, Grid by) {
  const Grid length = std::max<Grid>(length_of(from, to), 1);
  return {from.x + (to.x - from.x) * by / length, from.y + (to.y - from.y) * by / length};
}

/// Of hops in a row, those with hardly a stretch between them as one.
std::vector<DrawnHop> joined_hops(const std::vector<DrawnHop>& hops) {
  std::vector<DrawnHop> joined;
  for (const DrawnHop& hop : hops) {
    if (!joined.empty() && std::abs(hop.at.x - joined.back().at.x) < hop.half + joined.back().half + hops_apart) {
      DrawnHop& last = joined.back();
      const Grid x0 = std::min(last.at.x - last.half, hop.at.x - hop.half),
                 x1 = std::max(last.at.x + last.half, hop.at.x + hop.half);
      last = {{(x0 + x1) / 2, hop.at.y}, (x1 - x0) / 2, std::max(last.rise, hop.rise)};
    } else {
      joined.push_back(hop);
    }
  }
  return joined;
}

/// Whether the wire turns at the height of the hop instead of at the bend: where it has no room to turn beside the hop, the less the
/// thicker it is, and its upright arm reaches so far.
bool takes_bend_along(const DrawnHop& hop, GridPoint arm, GridPoint bend, Grid pen) {
  if (arm.x != bend.x || std::abs(hop.at.x - bend.x) - hop.half >= room_to_turn(pen)) return false;
  return arm.y > bend.y || arm.y < bend.y - hop.rise - hops_apart;
}

/// From a bend along its level arm to the foot of the nearest hop.
Grid room_beside(const WireCourse& course, GridPoint bend, GridPoint arm) {
  Grid room = bend_radius;
  for (const DrawnHop& hop : hops_between(course, bend, arm)) room = std::min(room, std::abs(hop.at.x - bend.x) - hop.half);
  return std::max(room, least_radius);
}

/// Where hops may lie, with a bend that one of them takes along.
std::vector<Rect> rooms_of_hops(const WireCourse& course, Point origin) {
  std::vector<Rect> rooms;
  for (std::size_t i = 1; i < course.points.size(); ++i)
    for (const DrawnHop& hop : joined_hops(hops_between(course, course.points[i - 1], course.points[i]))) {
      const Grid aside = hop.half + std::max(bend_radius, room_to_turn(course.pen));
      const Rect room = to_mm(GridBox{hop.at.x - aside, hop.at.y - hop.rise, hop.at.x + aside, hop.at.y});
      rooms.push_back({origin.x + room.x, origin.y + room.y, room.width, room.height});
    }
  return rooms;
}

std::optional<Point> end_of(const PathPiece& piece) {
  if (const auto* move = std::get_if<PathMove>(&piece)) return move->to;
  if (const auto* line = std::get_if<PathLine>(&piece)) return line->to;
  if (const auto* curve = std::get_if<PathCurve>(&piece)) return curve->to;
  return std::nullopt;
}

WireCourse with_settled_hops(const WireCourse& course) {
  const auto& points = course.points;
  WireCourse settled;
  settled.pen = course.pen;
  for (std::size_t i = 0; i < points.size(); ++i) {
    settled.points.push_back(points[i]);
    if (i + 1 >= points.size()) break;
    const GridPoint from = points[i], to = points[i + 1];
    std::vector<DrawnHop> hops = joined_hops(hops_between(course, from, to));
    const Grid way = to.x > from.x ? 1 : -1;
    if (!hops.empty() && i > 0 && takes_bend_along(hops.front(), points[i - 1], from, course.pen)) {
      const DrawnHop hop = hops.front();
      const Grid y = from.y - hop.rise, foot = hop.at.x + way * hop.half;
      settled.points.back().y = y;
      settled.points.push_back({foot, y});
      settled.points.push_back({foot, from.y});
      hops.erase(hops.begin());
    }
    const bool has_bend = i + 2 < points.size();
    if (!hops.empty() && has_bend && takes_bend_along(hops.back(), points[i + 2], to, course.pen)) {
      const DrawnHop hop = hops.back();
      const Grid foot = hop.at.x - way * hop.half;
      settled.points.push_back({foot, to.y});
      settled.points.push_back({foot, to.y - hop.rise});
      settled.points.push_back({to.x, to.y - hop.rise});
      hops.pop_back();
      ++i;  // the bend itself is gone
      settled.hops.insert(settled.hops.end(), hops.begin(), hops.end());
      // The next stretch is upright and has no hops.
      continue;
    }
    settled.hops.insert(settled.hops.end(), hops.begin(), hops.end());
  }
  return settled;
}

}  // namespace

WireCourse course_of(const Graph& graph, const Laid& laid, std::size_t wire) {
  WireCourse course{laid.courses[wire].points, {}, graph.wires[wire].pen};
  for (const Hop& hop : laid.courses[wire].hops) {
    const Grid under = pen_under(graph, laid, wire, hop), own = graph.wires[wire].pen;
    const Grid rise = rise_of_hop(own, under);
    course.hops.push_back({hop.at, std::max(hop.half, rise), rise});
  }
  return course;
}

std::vector<PathPiece> path_of(const WireCourse& drawn, Point origin) {
  const WireCourse course = with_settled_hops(drawn);
  PathMaker maker{origin, {}};
  const auto& points = course.points;
  if (points.empty()) return {};
  maker.path.push_back(PathMove{maker.place(points[0].x, points[0].y)});
  GridPoint at = points[0];
  for (std::size_t i = 1; i < points.size(); ++i) {
    const GridPoint corner = points[i];
    if (i + 1 == points.size()) {
      add_stretch(maker, course, at, corner);
      maker.line(corner.x, corner.y);
      break;
    }
    const GridPoint next = points[i + 1];
    const Grid radius = std::min({room_beside(course, corner, points[i - 1]), room_beside(course, corner, next),
                                  length_of(points[i - 1], corner) / 2, length_of(corner, next) / 2});
    const GridPoint before = toward(corner, points[i - 1], radius), after = toward(corner, next, radius);
    add_stretch(maker, course, at, before);
    maker.line(before.x, before.y);
    const auto mix = [](Grid a, Grid b) { return a + (b - a) * quarter_reach; };
    maker.curve(mix(before.x, corner.x), mix(before.y, corner.y), mix(after.x, corner.x), mix(after.y, corner.y),
                after.x, after.y);
    at = after;
  }
  return maker.path;
}

std::vector<std::vector<PathPiece>> hops_along(const std::vector<PathPiece>& path, const WireCourse& course, Point origin) {
  constexpr Millimetres slack(0.02);
  const std::vector<Rect> rooms = rooms_of_hops(course, origin);
  const auto is_in_hop = [&](Point a, Point b) {
    return std::any_of(rooms.begin(), rooms.end(), [&](const Rect& room) {
      const auto holds = [&](Point p) {
        return p.x > room.x - slack && p.x < room.right() + slack && p.y > room.y - slack && p.y < room.bottom() + slack;
      };
      return holds(a) && holds(b);
    });
  };
  std::vector<std::vector<PathPiece>> hops;
  bool goes_on = false;
  std::optional<Point> before;
  for (const PathPiece& piece : path) {
    const std::optional<Point> end = end_of(piece);
    const bool is_hop = before && end && is_in_hop(*before, *end);
    if (is_hop && !goes_on) hops.push_back({PathMove{*before}});
    if (is_hop) hops.back().push_back(piece);
    goes_on = is_hop;
    before = end;
  }
  // A straight piece that happens to lie there goes over nothing.
  std::erase_if(hops, [](const auto& hop) {
    return std::none_of(hop.begin(), hop.end(), [](const PathPiece& p) { return std::holds_alternative<PathCurve>(p); });
  });
  return hops;
}

}  // namespace loomfolio
