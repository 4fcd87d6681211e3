// SPDX-License-Identifier: MIT
#include "sheets/trunk_draw.h"

#include <algorithm>
#include <iterator>

#include "sheets/look.h"

namespace loomfolio {
namespace {

constexpr Grid beside = 60;                  // a hop's foot, from the thick course
constexpr Grid hop_reach = 160;              // of a hop over one wire, at most
constexpr Millimetres halo{0.5}, corner{0.5};
constexpr Millimetres sign_width{2.2};

Point place(Point origin, GridPoint p) { return origin + to_mm(p); }

/// Where a wire leaves its track for a trunk, and where it is back.
struct Cut {
  const Trunk* trunk = nullptr;
  const TrunkWire* wire = nullptr;
  bool is_forward = true;  ///< the course runs along the trunk from low to high

  GridPoint point(Grid along, Grid across) const { return trunk->is_level ? GridPoint{along, across} : GridPoint{across, along}; }
  Grid begin() const { return is_forward ? trunk->low : trunk->high; }
  Grid end() const { return is_forward ? trunk->high : trunk->low; }
  Grid into(Grid from, Grid by) const { return is_forward ? from + by : from - by; }
};

std::vector<Cut> find_cuts(const WireCourse& course, std::size_t wire, const std::vector<Trunk>& trunks) {
  std::vector<Cut> cuts;
  for (const Trunk& trunk : trunks)
    for (const TrunkWire& one : trunk.wires) {
      if (one.wire != wire) continue;
      const GridPoint from = course.points[one.index], to = course.points[one.index + 1];
      cuts.push_back({&trunk, &one, trunk.is_level ? from.x < to.x : from.y < to.y});
    }
  std::sort(cuts.begin(), cuts.end(), [](const Cut& a, const Cut& b) { return a.wire->index < b.wire->index; });
  return cuts;
}

/// From a wire's own track to the end of the thick course, or back, in one bow.
PathCurve bow(const Cut& cut, Grid from_along, Grid from_across, Grid to_along, Grid to_across, Point origin) {
  const Grid middle = (from_along + to_along) / 2;
  return {place(origin, cut.point(middle, from_across)), place(origin, cut.point(middle, to_across)),
          place(origin, cut.point(to_along, to_across))};
}

void draw_body(Items& items, const Rect& rect) {
  items.push_back(RectItem{rect, corner, {true, {look::ink, look::line}}, {true, look::trunk}});
}

}  // namespace

void hop_over_trunks(WireCourse& course, const std::vector<Trunk>& trunks) {
  for (const Trunk& trunk : trunks) {
    if (trunk.is_level) continue;
    const GridBox thick = trunk.thick();
    const Grid first = trunk.wires.front().at - hop_reach, last = trunk.wires.back().at + hop_reach;
    for (std::size_t i = 1; i < course.points.size(); ++i) {
      const GridPoint a = std::min(course.points[i - 1], course.points[i]), b = std::max(course.points[i - 1], course.points[i]);
      if (a.y != b.y || a.y <= thick.y0 || a.y >= thick.y1 || a.x >= thick.x0 || b.x <= thick.x1) continue;
      std::vector<DrawnHop> hops;
      Grid rise = 100;
      for (const DrawnHop& hop : course.hops) {
        const Grid left = hop.at.x - hop.half, right = hop.at.x + hop.half;
        if (hop.at.y != a.y || right <= first || left >= last) {
          hops.push_back(hop);
          continue;
        }
        // A hop that reaches farther keeps what it hops over there.
        rise = std::max(rise, hop.rise);
        if (left < first) hops.push_back({{(left + first) / 2, a.y}, (first - left) / 2, hop.rise});
        if (right > last) hops.push_back({{(right + last) / 2, a.y}, (right - last) / 2, hop.rise});
      }
      hops.push_back({{trunk.at, a.y}, trunk.width / 2 + beside + 40, rise});
      course.hops = std::move(hops);
    }
  }
}

std::vector<std::vector<PathPiece>> paths_of(const WireCourse& course, std::size_t wire, const std::vector<Trunk>& trunks, Point origin) {
  std::vector<std::vector<PathPiece>> paths;
  std::vector<PathPiece> head;  // the way back from a trunk onto the wire's track
  WireCourse piece{{}, course.hops, course.pen};
  std::size_t next = 0;  // point of the course
  const auto finish = [&] {
    std::vector<PathPiece> path = path_of(piece, origin);
    if (!head.empty() && !path.empty()) path.erase(path.begin());
    path.insert(path.begin(), head.begin(), head.end());
    return path;
  };
  for (const Cut& cut : find_cuts(course, wire, trunks)) {
    for (; next <= cut.wire->index; ++next) piece.points.push_back(course.points[next]);
    const Grid fan = cut.trunk->fan, own = cut.wire->at, joins = cut.wire->joins;
    piece.points.push_back(cut.point(cut.begin(), own));
    std::vector<PathPiece> path = finish();
    path.push_back(bow(cut, cut.begin(), own, cut.into(cut.begin(), fan), joins, origin));
    paths.push_back(std::move(path));
    const Grid from = cut.into(cut.end(), -fan);
    head = {PathMove{place(origin, cut.point(from, joins))}, bow(cut, from, joins, cut.end(), own, origin)};
    piece.points = {cut.point(cut.end(), own)};
  }
  for (; next < course.points.size(); ++next) piece.points.push_back(course.points[next]);
  paths.push_back(finish());
  return paths;
}

void draw_trunk(Items& items, const DiagramGraph& diagram, const Trunk& trunk, Point origin) {
  const GridBox thick = trunk.thick();
  const Point at = place(origin, {thick.x0, thick.y0});
  const Rect rect{at.x, at.y, to_mm(thick.width()), to_mm(thick.height())};
  if (trunk.is_level) add_filled_rect(items, {rect.x, rect.y - halo, rect.width, rect.height + halo * 2}, look::paper);
  draw_body(items, rect);
  const Millimetres half_height(0.95);  // of figures
  const Point middle = place(origin, trunk.is_level ? GridPoint{trunk.words_at, trunk.at} : GridPoint{trunk.at, trunk.words_at});
  const Point base = trunk.is_level ? Point{middle.x, middle.y + half_height} : Point{middle.x + half_height, middle.y};
  items.push_back(TextItem{base, trunk_words(diagram, trunk), look::wire_number, look::ink, Align::centre, !trunk.is_level});
}

void draw_trunk_sign(Items& items, Point from, Millimetres length) {
  const Millimetres fan(2), inner = length - fan * 2;
  for (const double across : {-1.2, 0.0, 1.2}) {
    const Millimetres y = from.y + Millimetres(across), joins = from.y + Millimetres(across / 2);
    add_line(items, {from.x, y}, {from.x + fan, joins}, {look::ink, Millimetres(0.4), {}, Cap::butt});
    add_line(items, {from.x + fan + inner, joins}, {from.x + length, y}, {look::ink, Millimetres(0.4), {}, Cap::butt});
  }
  draw_body(items, {from.x + fan, from.y - sign_width / 2, inner, sign_width});
}

}  // namespace loomfolio
