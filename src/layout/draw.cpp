// SPDX-License-Identifier: MIT
// The idea. Of each component, terminals and runs are the knots of a tree; what joins two knots is one point (a run and a stub, an
// alley's run and a channel's run) or two (a jog). A wire is the path between its two terminals, read off point by point.
#include "layout/draw.h"

#include <algorithm>

namespace loomfolio::laying {
namespace {

struct Joint {
  int to = -1;
  std::vector<GridPoint> points;   ///< from here to there
};

/// Knots of one component: its pins first, then its runs.
class Tree {
 public:
  explicit Tree(std::size_t pins) : joints_(pins) {}
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

class Drawing {
 public:
  Drawing(const Plan& plan, const Streets& streets, const Routes& routes, const Tracks& tracks)
      : plan_(plan), streets_(streets), routes_(routes), tracks_(tracks) {}
  GridPoint pin_point(int pin) const;
  void draw_component(int component, Laid& laid);

 private:
  struct Runs {
    int first_knot = -1;
    std::vector<int> pieces;         ///< pieces of the strip, in order of knots
    int knot_of(int piece) const {
      return first_knot + static_cast<int>(std::find(pieces.begin(), pieces.end(), piece) - pieces.begin());
    }
  };
  Runs add_runs(Tree& tree, const Strip& strip, int component) const;
  void join_alley(Tree& tree, const AlleyUse& use, const Runs& runs, int component) const;
  void join_channel(Tree& tree, const ChannelUse& use, const Runs& runs, int component) const;
  int knot_of_pin(int component, int pin) const {
    const auto& pins = plan_.components[component].pins;
    return static_cast<int>(std::find(pins.begin(), pins.end(), pin) - pins.begin());
  }
  const Plan& plan_;
  const Streets& streets_;
  const Routes& routes_;
  const Tracks& tracks_;
  std::vector<std::pair<int, Runs>> alley_runs_;  ///< of the component in hand
};

GridPoint Drawing::pin_point(int pin) const {
  const Body& body = plan_.bodies[plan_.pins[pin].body];
  const GridPoint offset = offset_of(plan_, pin);
  return {tracks_.body_x[plan_.pins[pin].body] + offset.x, tracks_.row_y[body.row] + body.drop + offset.y};
}

Drawing::Runs Drawing::add_runs(Tree& tree, const Strip& strip, int component) const {
  Runs runs;
  for (std::size_t i = 0; i < strip.pieces.size(); ++i) {
    if (strip.pieces[i].component != component) continue;
    const int knot = tree.add_knot();
    if (runs.first_knot < 0) runs.first_knot = knot;
    runs.pieces.push_back(static_cast<int>(i));
  }
  return runs;
}

void Drawing::join_alley(Tree& tree, const AlleyUse& use, const Runs& runs, int component) const {
  const Strip& strip = tracks_.alleys[use.alley];
  const Grid top = tracks_.row_y[streets_.alleys[use.alley].row];
  const std::vector<Grid>& x = tracks_.alley_x[use.alley];
  for (int piece : runs.pieces)
    for (const StripPin& pin : strip.pieces[piece].pins) {
      if (pin.tag < 0) continue;
      const GridPoint at = pin_point(pin.tag);
      std::vector<GridPoint> points{at};
      if (!strip.pieces[piece].is_straight()) points.push_back({x[piece], at.y});
      tree.join(knot_of_pin(component, pin.tag), runs.knot_of(piece), std::move(points));
    }
  for (const StripLink& link : strip.links)
    if (strip.pieces[link.before].component == component)
      tree.join(runs.knot_of(link.before), runs.knot_of(link.after),
                {{x[link.before], top + link.at}, {x[link.after], top + link.at}});
}

void Drawing::join_channel(Tree& tree, const ChannelUse& use, const Runs& runs, int component) const {
  const Strip& strip = tracks_.channels[use.channel];
  const std::vector<Grid>& y = tracks_.channel_y[use.channel];
  for (int piece : runs.pieces)
    for (const StripPin& pin : strip.pieces[piece].pins) {
      if (pin.tag < 0) continue;
      const Stop& stop = streets_.stops[pin.tag];
      int knot = -1;
      std::vector<GridPoint> points;
      if (stop.pin >= 0) {
        knot = knot_of_pin(component, stop.pin);
        points.push_back(pin_point(stop.pin));
      } else {
        const StripSide end = stop.is_below ? StripSide::low : StripSide::high;
        for (const auto& [alley, alley_runs] : alley_runs_)
          if (alley == stop.alley) knot = alley_runs.knot_of(open_piece(tracks_.alleys[alley], component, end));
      }
      if (!strip.pieces[piece].is_straight()) points.push_back({pin.at, y[piece]});
      tree.join(knot, runs.knot_of(piece), std::move(points));
    }
  for (const StripLink& link : strip.links)
    if (strip.pieces[link.before].component == component)
      tree.join(runs.knot_of(link.before), runs.knot_of(link.after), {{link.at, y[link.before]}, {link.at, y[link.after]}});
}

void Drawing::draw_component(int component, Laid& laid) {
  const Component& c = plan_.components[component];
  const Route& route = routes_.of_component[component];
  Tree tree(c.pins.size());
  alley_runs_.clear();
  for (const AlleyUse& use : route.alleys)
    alley_runs_.emplace_back(use.alley, add_runs(tree, tracks_.alleys[use.alley], component));
  for (std::size_t i = 0; i < route.alleys.size(); ++i) join_alley(tree, route.alleys[i], alley_runs_[i].second, component);
  for (const ChannelUse& use : route.channels)
    join_channel(tree, use, add_runs(tree, tracks_.channels[use.channel], component), component);
  for (int w : c.wires) {
    const int from = plan_.pin_of_wire_from[w], to = plan_.pin_of_wire_to[w];
    std::vector<GridPoint> points = tree.path(knot_of_pin(component, from), knot_of_pin(component, to));
    simplify(points);
    laid.courses[w].points = std::move(points);
  }
}

void place_boxes(const Plan& plan, const Tracks& tracks, Laid& laid) {
  for (std::size_t b = 0; b < plan.bodies.size(); ++b) {
    const Body& body = plan.bodies[b];
    const Grid x = tracks.body_x[b], y = tracks.row_y[body.row] + body.drop;
    for (const BodyMember& m : body.members) {
      const GraphBox& box = plan.graph->boxes[m.box];
      const Grid left = body.is_mirrored ? body.width - m.at.x - box.width : m.at.x;
      laid.boxes[m.box] = {{x + left, y + m.at.y, x + left + box.width, y + m.at.y + box.height}, body.is_mirrored};
    }
  }
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
  const Grid half_gap = plan.spacing.band_gap / 2;
  for (std::size_t z = 0; z < plan.graph->zones.size(); ++z)
    laid.bands.push_back({tracks.border_x[z] + half_gap, 0, tracks.border_x[z + 1] - half_gap, 0});
  if (all.y0 > all.y1) all = {0, 0, 0, 0};
  for (const GridBox& b : laid.bands) cover({b.x0, all.y0, b.x1, all.y1});
  const Grid dx = -all.x0, dy = plan.spacing.band_head - all.y0;
  for (PlacedBox& b : laid.boxes) b.box = {b.box.x0 + dx, b.box.y0 + dy, b.box.x1 + dx, b.box.y1 + dy};
  for (Course& c : laid.courses)
    for (GridPoint& p : c.points) p = {p.x + dx, p.y + dy};
  laid.width = all.x1 + dx;
  laid.height = all.y1 + dy + plan.spacing.band_margin;
  for (GridBox& b : laid.bands) b = {b.x0 + dx, 0, b.x1 + dx, laid.height};
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
  Drawing drawing(plan, streets, routes, tracks);
  for (int c = 0; c < static_cast<int>(plan.components.size()); ++c) drawing.draw_component(c, laid);
  frame(plan, tracks, laid);
  return laid;
}

}  // namespace loomfolio::laying
