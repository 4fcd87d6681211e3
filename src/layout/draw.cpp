// SPDX-License-Identifier: MIT
// The idea. The ends and runs of a wire are the knots of a tree; what joins two knots is one point (a run and a stub, an alley's run
// and a channel's run) or two (a jog). The course is the path between the two ends, read off point by point.
#include "layout/draw.h"

#include <algorithm>
#include <utility>

#include "layout/joints.h"

namespace loomfolio::laying {
namespace {

struct Joint {
  int to = -1;
  std::vector<GridPoint> points;   ///< from here to there
};

/// Knots of one wire: its two ends first, then its runs.
class Tree {
 public:
  Tree() : joints_(2) {}
  int add_knot() {
    joints_.emplace_back();
    return static_cast<int>(joints_.size()) - 1;
  }
  void join(int a, int b, std::vector<GridPoint> points) {
    joints_[a].push_back({b, points});
    std::reverse(points.begin(), points.end());
    joints_[b].push_back({a, std::move(points)});
  }
  std::vector<GridPoint> path(int from, int to) const;

 private:
  std::vector<std::vector<Joint>> joints_;
};

std::vector<GridPoint> Tree::path(int from, int to) const {
  std::vector<int> before(joints_.size(), -1), queue{to};
  before[to] = to;
  for (std::size_t i = 0; i < queue.size(); ++i)
    for (const Joint& j : joints_[queue[i]])
      if (before[j.to] < 0) before[j.to] = queue[i], queue.push_back(j.to);
  std::vector<GridPoint> points;
  if (before[from] < 0) return points;
  for (int knot = from; knot != to; knot = before[knot])
    for (const Joint& j : joints_[knot])
      if (j.to == before[knot]) {
        points.insert(points.end(), j.points.begin(), j.points.end());
        break;
      }
  return points;
}

/// The runs of the wire in hand in one street.
struct Runs {
  int first_knot = -1;
  std::vector<int> pieces;         ///< pieces of the strip, in order of knots
  int knot_of(int piece) const {
    return first_knot + static_cast<int>(std::find(pieces.begin(), pieces.end(), piece) - pieces.begin());
  }
};

class Drawing {
 public:
  Drawing(const Plan& plan, const Streets& streets, const Routes& routes, const Tracks& tracks)
      : plan_(plan), streets_(streets), routes_(routes), tracks_(tracks) {}
  std::vector<GridPoint> course(int wire) const;

 private:
  GridPoint pin_point(int pin) const;
  const Strip& strip_of(const Leg& leg) const { return leg.in_alley ? tracks_.alleys[leg.street] : tracks_.channels[leg.street]; }
  Runs add_runs(Tree& tree, const Leg& leg, int wire) const;
  void join_alley(Tree& tree, const Leg& leg, const Runs& runs) const;
  void join_channel(Tree& tree, int wire, std::size_t leg, const std::vector<Runs>& runs) const;
  const Plan& plan_;
  const Streets& streets_;
  const Routes& routes_;
  const Tracks& tracks_;
};

GridPoint Drawing::pin_point(int pin) const {
  const Body& body = plan_.bodies[plan_.pins[pin].body];
  const GridPoint offset = offset_of(plan_, pin);
  return {tracks_.body_x[plan_.pins[pin].body] + offset.x, tracks_.row_y[body.row] + body.drop + offset.y};
}

Runs Drawing::add_runs(Tree& tree, const Leg& leg, int wire) const {
  Runs runs;
  const Strip& strip = strip_of(leg);
  for (std::size_t i = 0; i < strip.pieces.size(); ++i) {
    if (strip.pieces[i].wire != wire) continue;
    const int knot = tree.add_knot();
    if (runs.first_knot < 0) runs.first_knot = knot;
    runs.pieces.push_back(static_cast<int>(i));
  }
  return runs;
}

void Drawing::join_alley(Tree& tree, const Leg& leg, const Runs& runs) const {
  const Strip& strip = tracks_.alleys[leg.street];
  const Grid top = tracks_.row_y[streets_.alleys[leg.street].row];
  const std::vector<Grid>& x = tracks_.alley_x[leg.street];
  for (int piece : runs.pieces)
    for (const StripPin& pin : strip.pieces[piece].pins) {
      if (pin.tag < 0) continue;
      const GridPoint at = pin_point(pin.tag);
      std::vector<GridPoint> points{at};
      if (!strip.pieces[piece].is_straight()) points.push_back({x[piece], at.y});
      tree.join(pin.tag % 2, runs.knot_of(piece), std::move(points));
    }
  for (const StripLink& link : strip.links)
    if (std::find(runs.pieces.begin(), runs.pieces.end(), link.before) != runs.pieces.end())
      tree.join(runs.knot_of(link.before), runs.knot_of(link.after),
                {{x[link.before], top + link.at}, {x[link.after], top + link.at}});
}

void Drawing::join_channel(Tree& tree, int wire, std::size_t leg, const std::vector<Runs>& runs) const {
  const Route& route = routes_[wire];
  const Strip& strip = tracks_.channels[route[leg].street];
  const std::vector<Grid>& y = tracks_.channel_y[route[leg].street];
  const auto [back, onward] = ends_of_leg(plan_, streets_, route, wire, leg);
  for (int piece : runs[leg].pieces)
    for (const StripPin& pin : strip.pieces[piece].pins) {
      if (pin.tag < 0) continue;
      const ChannelEnd& end = pin.tag == 0 ? back : onward;
      std::vector<GridPoint> points;
      int knot = pin.tag;
      if (end.pin >= 0) {
        points.push_back(pin_point(end.pin));
      } else {
        const StripSide opening = end.side == StripSide::low ? StripSide::high : StripSide::low;
        knot = runs[pin.tag == 0 ? leg - 1 : leg + 1].knot_of(open_piece(tracks_.alleys[end.alley], wire, opening));
      }
      if (!strip.pieces[piece].is_straight()) points.push_back({pin.at, y[piece]});
      tree.join(knot, runs[leg].knot_of(piece), std::move(points));
    }
  for (const StripLink& link : strip.links)
    if (strip.pieces[link.before].wire == wire)
      tree.join(runs[leg].knot_of(link.before), runs[leg].knot_of(link.after), {{link.at, y[link.before]}, {link.at, y[link.after]}});
}

std::vector<GridPoint> Drawing::course(int wire) const {
  const Route& route = routes_[wire];
  Tree tree;
  std::vector<Runs> runs;
  for (const Leg& leg : route) runs.push_back(add_runs(tree, leg, wire));
  for (std::size_t i = 0; i < route.size(); ++i) {
    if (route[i].in_alley) join_alley(tree, route[i], runs[i]);
    else join_channel(tree, wire, i, runs);
  }
  std::vector<GridPoint> points = tree.path(0, 1);
  if (plan_.flow == Flow::across)
    for (GridPoint& p : points) p = turned(p);
  simplify(points);
  return points;
}

/// Width and height of a box on the sheet; those of a joint are its body's.
std::pair<Grid, Grid> size_of(const Plan& plan, const Body& body, const BodyMember& member) {
  const GraphBox& box = plan.graph->boxes[member.box];
  if (!body.is_joint) return {box.width, box.height};
  return plan.flow == Flow::down ? std::pair(body.width, body.height) : std::pair(body.height, body.width);
}

void place_boxes(const Plan& plan, const Tracks& tracks, Laid& laid) {
  for (std::size_t b = 0; b < plan.bodies.size(); ++b) {
    const Body& body = plan.bodies[b];
    GridPoint at{tracks.body_x[b], tracks.row_y[body.row] + body.drop};
    if (plan.flow == Flow::across) at = turned(at);
    const Grid width = plan.flow == Flow::down ? body.width : body.height;
    for (const BodyMember& m : body.members) {
      const auto [box_width, box_height] = size_of(plan, body, m);
      const Grid left = body.is_mirrored ? width - m.at.x - box_width : m.at.x;
      laid.boxes[m.box] = {{at.x + left, at.y + m.at.y, at.x + left + box_width, at.y + m.at.y + box_height}, body.is_mirrored};
    }
  }
}

/// Left and right of each zone's band; bands stand apart and hold the bodies of their zone.
std::vector<std::pair<Grid, Grid>> find_bands(const Plan& plan, const Tracks& tracks) {
  std::vector<std::pair<Grid, Grid>> bands;
  const Grid half_gap = plan.spacing.band_gap / 2;
  if (plan.flow == Flow::down) {
    for (std::size_t z = 0; z < plan.graph->zones.size(); ++z)
      bands.emplace_back(tracks.border_x[z] + half_gap, tracks.border_x[z + 1] - half_gap);
    return bands;
  }
  const auto rows = static_cast<int>(plan.rows.size());
  Grid at = rows > 0 ? tracks.row_y[0] : 0;   // a zone of no rows gets a band of no width where it would stand
  for (int z = 0; z < static_cast<int>(plan.graph->zones.size()); ++z) {
    int first = -1, last = -1;
    for (int r = 0; r < rows; ++r)
      if (plan.zone_of_row[r] == z + 1) first = first < 0 ? r : first, last = r;
    if (first < 0) {
      bands.emplace_back(at, at);
      continue;
    }
    const Grid top = tracks.row_y[first], bottom = tracks.row_y[last] + tracks.row_height[last];
    const Grid left = first == 0 ? top - plan.spacing.band_margin
                                 : (tracks.row_y[first - 1] + tracks.row_height[first - 1] + top) / 2 + half_gap;
    const Grid right = last + 1 == rows ? bottom + plan.spacing.band_margin : (bottom + tracks.row_y[last + 1]) / 2 - half_gap;
    bands.emplace_back(left, right);
    at = right;
  }
  return bands;
}

/// Moves everything so that the top left is the origin; bands span the whole height.
void frame(const Plan& plan, const Tracks& tracks, Laid& laid) {
  GridBox all{INT32_MAX, INT32_MAX, INT32_MIN, INT32_MIN};
  const auto cover = [&](GridBox b) {
    all = {std::min(all.x0, b.x0), std::min(all.y0, b.y0), std::max(all.x1, b.x1), std::max(all.y1, b.y1)};
  };
  for (const PlacedBox& b : laid.boxes) cover(b.box);
  for (const Course& c : laid.courses)
    for (GridPoint p : c.points) cover({p.x, p.y, p.x, p.y});
  if (all.y0 > all.y1) all = {0, 0, 0, 0};
  const auto bands = find_bands(plan, tracks);
  for (const auto& [left, right] : bands) cover({left, all.y0, right, all.y1});
  const Grid dx = -all.x0, dy = plan.spacing.band_head - all.y0;
  for (PlacedBox& b : laid.boxes) b.box = {b.box.x0 + dx, b.box.y0 + dy, b.box.x1 + dx, b.box.y1 + dy};
  for (Course& c : laid.courses)
    for (GridPoint& p : c.points) p = {p.x + dx, p.y + dy};
  laid.width = all.x1 + dx;
  laid.height = all.y1 + dy + plan.spacing.band_margin;
  for (const auto& [left, right] : bands) laid.bands.push_back({left + dx, 0, right + dx, laid.height});
}

}  // namespace

void simplify(std::vector<GridPoint>& points) {
  std::vector<GridPoint> out;
  for (GridPoint p : points) {
    if (!out.empty() && out.back() == p) continue;
    while (out.size() >= 2) {
      const GridPoint a = out[out.size() - 2], b = out.back();
      const bool level = a.y == b.y && b.y == p.y && (b.x - a.x > 0) == (p.x - b.x > 0);
      const bool upright = a.x == b.x && b.x == p.x && (b.y - a.y > 0) == (p.y - b.y > 0);
      if (!level && !upright) break;
      out.pop_back();
    }
    out.push_back(p);
  }
  points = std::move(out);
}

Laid draw(const Plan& plan, const Streets& streets, const Routes& routes, const Tracks& tracks) {
  Laid laid;
  laid.boxes.resize(plan.graph->boxes.size());
  laid.courses.resize(plan.graph->wires.size());
  place_boxes(plan, tracks, laid);
  laid.joints = settled_joints(plan);
  Drawing drawing(plan, streets, routes, tracks);
  for (int w = 0; w < wires_of(plan); ++w) laid.courses[w].points = drawing.course(w);
  frame(plan, tracks, laid);
  return laid;
}

}  // namespace loomfolio::laying
