// SPDX-License-Identifier: MIT
#include "sheets/diagram_live.h"

#include <algorithm>
#include <functional>
#include <utility>

#include "sheets/diagram_tags.h"
#include "sheets/diagram_wire.h"
#include "sheets/wire_look.h"

namespace loomfolio {
namespace {

/// The outline of a wire with volts but no current is broken: no white wire looks so.
constexpr Millimetres hollow_dash{1.5}, hollow_gap{0.9};
constexpr Grid heads_apart = 900;
constexpr Grid least_stretch = 420, arrow_every = 5000, search_step = 100, keep_off = 90;

/// What arrowheads keep clear of, but for the wire they stand on.
struct ArrowObstacles {
  std::vector<GridBox> all;
  std::vector<GridBox> hops;    ///< with the labels: an arrow on a hop hides it
  std::vector<GridBox> labels;  ///< what they must keep clear of even on the shortest wire
};

ArrowObstacles obstacles_of(const DiagramInk& ink) {
  ArrowObstacles around;
  for (const PlacedLabel& label : ink.laid.labels) around.labels.push_back(label.box);
  for (const SpareTag& tag : find_spare_tags(ink.diagram, ink.laid))
    if (tag.is_placed) around.labels.push_back(tag.box);
  for (std::size_t wire = 0; wire < ink.laid.courses.size(); ++wire)
    for (const DrawnHop& hop : course_of(ink.diagram.graph, ink.laid, wire).hops)
      around.hops.push_back(GridBox{hop.at.x, hop.at.y, hop.at.x, hop.at.y}.grown(hop.half + keep_off));
  around.hops.insert(around.hops.end(), around.labels.begin(), around.labels.end());
  std::vector<GridBox> found = around.hops;
  for (const PlacedBox& placed : ink.laid.boxes) found.push_back(placed.box.grown(-keep_off));
  around.all = std::move(found);
  return around;
}

int sign(Grid g) { return (g > 0) - (g < 0); }

struct ArrowSeat {
  GridPoint at;
  bool is_found = false;
};

/// The free place nearest to `share` of the stretch.
ArrowSeat find_seat(GridPoint a, GridPoint b, double share, Grid half, const std::vector<GridBox>& obstacles) {
  const Grid length = std::abs(a.x - b.x) + std::abs(a.y - b.y), reach = to_grid(look::arrow_length) / 2 + keep_off;
  const int x = sign(b.x - a.x), y = sign(b.y - a.y);
  const auto wished = static_cast<Grid>(length * share);
  for (Grid off = 0; off <= length; off += search_step)
    for (const Grid along : {wished + off, wished - off}) {
      if (along < reach || along > length - reach) continue;
      const GridPoint at{a.x + x * along, a.y + y * along};
      const Grid half_x = x != 0 ? reach : half, half_y = x != 0 ? half : reach;
      const GridBox box{at.x - half_x, at.y - half_y, at.x + half_x, at.y + half_y};
      if (std::none_of(obstacles.begin(), obstacles.end(), [&](const GridBox& o) { return o.overlaps(box); }))
        return {at, true};
    }
  return {};
}

struct ArrowRequest {
  const std::vector<GridBox>& obstacles;
  Grid half = 0;           ///< of the head, across
  Grid least_stretch = 0;  ///< shorter ones get none
};

/// Arrowheads along the wire, one every so often on each stretch that is long enough; how many there are.
int draw_arrows_along(Items& items, const std::vector<GridPoint>& points, const ArrowRequest& request,
                      const std::function<void(Items&, GridPoint, int, int)>& draw) {
  int drawn = 0;
  std::vector<GridBox> taken = request.obstacles;  // with the heads drawn, which keep apart
  for (std::size_t i = 1; i < points.size(); ++i) {
    const GridPoint a = points[i - 1], b = points[i];
    const Grid length = std::abs(a.x - b.x) + std::abs(a.y - b.y);
    if (length < request.least_stretch) continue;
    const int count = 1 + length / arrow_every;
    for (int n = 0; n < count; ++n) {
      const ArrowSeat seat = find_seat(a, b, (n + 0.5) / count, request.half, taken);
      if (!seat.is_found) continue;
      draw(items, seat.at, sign(b.x - a.x), sign(b.y - a.y));
      taken.push_back(GridBox{seat.at.x, seat.at.y, seat.at.x, seat.at.y}.grown(heads_apart));
      ++drawn;
    }
  }
  return drawn;
}

/// The middle of the longest stretch.
void draw_arrow_anyhow(Items& items, const std::vector<GridPoint>& points,
                       const std::function<void(Items&, GridPoint, int, int)>& draw) {
  std::size_t longest = 0;
  Grid most = 0;
  for (std::size_t i = 1; i < points.size(); ++i) {
    const Grid length = std::abs(points[i].x - points[i - 1].x) + std::abs(points[i].y - points[i - 1].y);
    if (length > most) most = length, longest = i;
  }
  if (longest == 0) return;
  const GridPoint a = points[longest - 1], b = points[longest];
  draw(items, {(a.x + b.x) / 2, (a.y + b.y) / 2}, sign(b.x - a.x), sign(b.y - a.y));
}

/// A wire that carries current shows its way at least once: where there is no room, between what crowds it.
void draw_arrows_of(Items& items, const DiagramInk& ink, std::size_t wire, Point origin, const ArrowObstacles& around) {
  const WireId id = ink.diagram.wires[wire];
  const WireState& state = ink.state->wires[id.at()];
  if (state.liveness != Liveness::flowing || state.direction == 0) return;
  const Millimetres width = wire_width(ink.build.wire(id).area);
  const Grid half = to_grid(width / 2 + look::arrow_over);
  const int way = state.direction > 0 ? 1 : -1;
  const auto draw = [&](Items& to, GridPoint at, int x, int y) {
    add_arrow(to, origin + to_mm(at), way * x, way * y, width);
  };
  const std::vector<GridPoint>& points = ink.laid.courses[wire].points;
  if (draw_arrows_along(items, points, {around.all, half, least_stretch}, draw) > 0) return;
  if (draw_arrows_along(items, points, {around.hops, half, 0}, draw) > 0) return;
  if (draw_arrows_along(items, points, {around.labels, half, 0}, draw) > 0) return;
  draw_arrow_anyhow(items, points, draw);
}

}  // namespace

void add_arrow(Items& items, Point at, int way_x, int way_y, Millimetres wire) {
  const Millimetres ahead = look::arrow_length / 2, aside = wire / 2 + look::arrow_over;
  const auto spot = [&](double along, double across) {
    return Point{at.x + ahead * (along * way_x) - aside * (across * way_y),
                 at.y + ahead * (along * way_y) + aside * (across * way_x)};
  };
  add_polygon(items, {spot(1, 0), spot(-1, 1), spot(-1, -1)}, look::ink, {look::paper, look::arrow_rim});
}

void add_wire_in_state(Items& items, const std::vector<PathPiece>& path, const Wire& wire, const WireState& state, HollowLines lines) {
  const Millimetres width = wire_width(wire.area);
  const auto stroke = [&](Colour colour, Millimetres pen, std::vector<Millimetres> dashes = {}) {
    PathItem item;
    item.pieces = path;
    item.stroke = {true, {colour, pen, std::move(dashes), Cap::butt}};
    items.push_back(std::move(item));
  };
  switch (state.liveness) {
    case Liveness::dead:
      stroke(look::dead_wire, look::part_line);
      break;
    case Liveness::waiting:
      stroke(look::paper, width);
      stroke(look::ink, width, lines == HollowLines::broken ? std::vector<Millimetres>{hollow_dash, hollow_gap} : std::vector<Millimetres>{});
      stroke(look::paper, width - look::hollow_edge * 2);
      break;
    case Liveness::flowing:
      add_wire(items, path, wire.colour, width);
      break;
  }
}

void draw_live_stub(Items& items, Point top, Point foot, const Wire& wire, const WireState& state, int toward_earth) {
  add_wire_in_state(items, {PathMove{top}, PathLine{foot}}, wire, state);
  if (state.liveness != Liveness::flowing || state.direction == 0) return;
  const bool is_down = (state.direction > 0) == (toward_earth > 0);
  add_arrow(items, {top.x, top.y + (foot.y - top.y) * 0.6}, 0, is_down ? 1 : -1, wire_width(wire.area));
}

void draw_flow(Items& items, const DiagramInk& ink, Point origin) {
  const ArrowObstacles obstacles = obstacles_of(ink);
  for (std::size_t wire = 0; wire < ink.diagram.wires.size(); ++wire)
    draw_arrows_of(items, ink, wire, origin, obstacles);
}

}  // namespace loomfolio
