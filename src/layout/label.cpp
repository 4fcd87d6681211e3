// SPDX-License-Identifier: MIT
// The idea. A label stands beside one straight stretch of its wire, parallel to it, its foot or head at a fixed distance. Along the
// stretch its place has one unknown: what lies in the strip beside the stretch blocks intervals of it, and the free place nearest
// to the wire's end is the candidate. The best candidate of all stretches wins: near the end, level before upright, above before
// below. Wires with the least free room choose first.
#include "layout/label.h"

#include <algorithm>
#include <map>
#include <tuple>

#include "layout/segments.h"

namespace loomfolio::laying {
namespace {

constexpr Grid own_gap = 30;          // between a label and its own wire
constexpr Grid foreign_gap = 40;      // between a label and anything else
constexpr Grid from_bend = 100;       // between a label and the bend before it
constexpr Grid bucket = 1000;
constexpr Grid second_label_over = 8000;
constexpr long per_mm = 20, upright_charge = 1500, below_charge = 600;

/// Things that labels must not touch, in square buckets.
class Occupied {
 public:
  explicit Occupied(const Laid& laid) : columns_(laid.width / bucket + 2), buckets_(columns_ * (laid.height / bucket + 2)) {}
  void add(GridBox box);
  /// Calls `f` for each thing that overlaps `area`; a thing may come more than once.
  template <class F>
  void visit(GridBox area, F f) const {
    for (std::size_t y = row(area.y0); y <= row(area.y1); ++y)
      for (std::size_t x = column(area.x0); x <= column(area.x1); ++x)
        for (int i : buckets_[y * columns_ + x])
          if (boxes_[i].overlaps(area)) f(boxes_[i]);
  }

 private:
  std::size_t column(Grid x) const { return std::min<std::size_t>(columns_ - 1, static_cast<std::size_t>(std::max(0, x / bucket))); }
  std::size_t row(Grid y) const {
    return std::min<std::size_t>(buckets_.size() / columns_ - 1, static_cast<std::size_t>(std::max(0, y / bucket)));
  }
  std::size_t columns_;
  std::vector<std::vector<int>> buckets_;
  std::vector<GridBox> boxes_;
};

void Occupied::add(GridBox box) {
  boxes_.push_back(box);
  for (std::size_t y = row(box.y0); y <= row(box.y1); ++y)
    for (std::size_t x = column(box.x0); x <= column(box.x1); ++x)
      buckets_[y * columns_ + x].push_back(static_cast<int>(boxes_.size()) - 1);
}

struct Candidate {
  GridBox box;
  bool is_upright = false;
  long cost = 0;
};

enum class WireEnd : std::uint8_t { from, to };
enum class Beside : std::uint8_t { before, after };  ///< above or left of the stretch; below or right of it

/// A stretch with the way along the wire to it, seen from the end that the label belongs to.
struct Stretch {
  GridPoint near, far;
  Grid way = 0;
  bool is_level() const { return near.y == far.y; }
};

std::vector<Stretch> stretches_of(const Course& course, WireEnd end) {
  std::vector<GridPoint> p = course.points;
  if (end == WireEnd::to) std::reverse(p.begin(), p.end());
  std::vector<Stretch> out;
  Grid way = 0;
  for (std::size_t i = 1; i < p.size(); ++i) {
    out.push_back({p[i - 1], p[i], way});
    way += std::abs(p[i].x - p[i - 1].x) + std::abs(p[i].y - p[i - 1].y);
  }
  return out;
}

Grid length_of(const Course& course) {
  Grid sum = 0;
  for (std::size_t i = 1; i < course.points.size(); ++i)
    sum += std::abs(course.points[i].x - course.points[i - 1].x) + std::abs(course.points[i].y - course.points[i - 1].y);
  return sum;
}

class Labelling {
 public:
  Labelling(const Graph& graph, Laid& laid);
  void keep_free(const GridBox& box) { occupied_.add(box); }
  std::vector<int> run();
  void place_one_each();

 private:
  void add_hops(const std::vector<Segment>& segments);
  bool find_best(int wire, WireEnd end, Candidate& best) const;
  bool offer(int wire, const Stretch& stretch, Beside beside, Candidate& out) const;
  bool find_free(GridBox strip, bool level, Grid length, Grid near, Grid far, Grid& at) const;
  bool place(int wire, WireEnd end);
  std::vector<std::pair<Grid, int>> turns() const;
  const Graph& graph_;
  Laid& laid_;
  Occupied occupied_;
};

Labelling::Labelling(const Graph& graph, Laid& laid) : graph_(graph), laid_(laid), occupied_(laid) {
  for (const PlacedBox& b : laid.boxes) occupied_.add(b.box);
  for (const Segment& s : find_segments(laid)) {
    const GridBox line = s.is_level ? GridBox{s.low, s.at, s.high, s.at} : GridBox{s.at, s.low, s.at, s.high};
    occupied_.add(line.grown(std::max<Grid>(1, graph.wires[s.wire].pen / 2)));
  }
  add_hops(find_segments(laid));
}

/// Arches as they are drawn.
void Labelling::add_hops(const std::vector<Segment>& segments) {
  std::multimap<Grid, const Segment*> uprights;
  for (const Segment& s : segments)
    if (!s.is_level) uprights.emplace(s.at, &s);
  for (std::size_t w = 0; w < laid_.courses.size(); ++w)
    for (const Hop& hop : laid_.courses[w].hops) {
      const Grid own = graph_.wires[w].pen;
      Grid under = 0;
      for (auto s = uprights.lower_bound(hop.at.x - hop.half); s != uprights.end() && s->first <= hop.at.x + hop.half; ++s)
        if (hop.at.y > s->second->low && hop.at.y < s->second->high) under = std::max(under, graph_.wires[s->second->wire].pen);
      const Grid rise = rise_of_hop(own, under), half = std::max(hop.half, rise);
      occupied_.add({hop.at.x - half, hop.at.y - rise - own / 2, hop.at.x + half, hop.at.y});
    }
}

/// The free place for `length` in the strip, nearest to `near`; `at` is its lesser end.
bool Labelling::find_free(GridBox strip, bool level, Grid length, Grid near, Grid far, Grid& at) const {
  std::vector<std::pair<Grid, Grid>> blocked;
  const GridBox area = level ? GridBox{strip.x0 - foreign_gap, strip.y0, strip.x1 + foreign_gap, strip.y1}
                             : GridBox{strip.x0, strip.y0 - foreign_gap, strip.x1, strip.y1 + foreign_gap};
  occupied_.visit(area, [&](GridBox b) {
    blocked.push_back(level ? std::pair{b.x0 - foreign_gap, b.x1 + foreign_gap} : std::pair{b.y0 - foreign_gap, b.y1 + foreign_gap});
  });
  std::sort(blocked.begin(), blocked.end());
  const Grid low = std::min(near, far), high = std::max(near, far);
  const bool from_low = near < far;
  bool found = false;
  Grid free_from = low;
  const auto offer_gap = [&](Grid to) {
    if (to - free_from < length || (found && from_low)) return;
    found = true;
    at = from_low ? free_from : to - length;
  };
  for (const auto& [from, to] : blocked) {
    offer_gap(std::min(from, high));
    free_from = std::max(free_from, to);
  }
  offer_gap(high);
  return found;
}

bool Labelling::offer(int wire, const Stretch& s, Beside beside, Candidate& out) const {
  const GraphWire& g = graph_.wires[wire];
  const bool level = s.is_level();
  const Grid line = level ? s.near.y : s.near.x;
  const Grid off = g.pen / 2 + own_gap;
  const Grid low = beside == Beside::before ? line - off - g.label_height : line + off, high = low + g.label_height;
  Grid near = level ? s.near.x : s.near.y, far = level ? s.far.x : s.far.y;
  const Grid step = near < far ? from_bend : -from_bend;
  near += step;
  far -= step;
  if (std::abs(far - near) < g.label_width || (near < far) != (step > 0)) return false;
  const Grid from = std::min(near, far), to = std::max(near, far);
  // The strip is widened away from the own wire only; towards it the own wire itself would block it.
  const Grid strip_low = beside == Beside::before ? low - foreign_gap : low, strip_high = beside == Beside::before ? high : high + foreign_gap;
  const GridBox strip = level ? GridBox{from, strip_low, to, strip_high} : GridBox{strip_low, from, strip_high, to};
  Grid at = 0;
  if (!find_free(strip, level, g.label_width, near, far, at)) return false;
  out.box = level ? GridBox{at, low, at + g.label_width, high} : GridBox{low, at, high, at + g.label_width};
  if (out.box.x0 < 0 || out.box.y0 < 0 || out.box.x1 > laid_.width || out.box.y1 > laid_.height) return false;
  out.is_upright = !level;
  const Grid along = std::min(std::abs(at - (level ? s.near.x : s.near.y)), std::abs(at + g.label_width - (level ? s.near.x : s.near.y)));
  out.cost = (s.way + along) * per_mm / grid_per_mm + (level ? 0 : upright_charge) + (beside == Beside::after ? below_charge : 0);
  return true;
}

bool Labelling::find_best(int wire, WireEnd end, Candidate& best) const {
  bool found = false;
  for (const Stretch& s : stretches_of(laid_.courses[wire], end))
    for (Beside beside : {Beside::before, Beside::after}) {
      Candidate c;
      if (!offer(wire, s, beside, c) || (found && c.cost >= best.cost)) continue;
      best = c;
      found = true;
    }
  return found;
}

bool Labelling::place(int wire, WireEnd end) {
  Candidate best;
  if (!find_best(wire, end, best)) return false;
  laid_.labels.push_back({wire, best.box, best.is_upright, end == WireEnd::from});
  occupied_.add(best.box);
  return true;
}

/// Length and wire; short wires have least choice and come first.
std::vector<std::pair<Grid, int>> Labelling::turns() const {
  std::vector<std::pair<Grid, int>> turn;
  for (int w = 0; w < static_cast<int>(laid_.courses.size()); ++w)
    if (graph_.wires[w].label_width > 0 && !laid_.courses[w].points.empty()) turn.push_back({length_of(laid_.courses[w]), w});
  std::sort(turn.begin(), turn.end());
  return turn;
}

void Labelling::place_one_each() {
  for (const auto& [length, w] : turns())
    if (!place(w, WireEnd::from)) place(w, WireEnd::to);
}

std::vector<int> Labelling::run() {
  const std::vector<std::pair<Grid, int>> turn = turns();
  std::vector<int> missing;
  for (const auto& [length, w] : turn)
    if (!place(w, WireEnd::from) && !place(w, WireEnd::to)) missing.push_back(w);
  for (const auto& [length, w] : turn)
    if (length > second_label_over && !std::binary_search(missing.begin(), missing.end(), w)) place(w, WireEnd::to);
  std::sort(missing.begin(), missing.end());
  std::stable_sort(laid_.labels.begin(), laid_.labels.end(), [](const PlacedLabel& a, const PlacedLabel& b) {
    return std::tuple(a.wire, !a.at_from_end) < std::tuple(b.wire, !b.at_from_end);
  });
  return missing;
}

}  // namespace

std::vector<int> add_labels(const Plan& plan, Laid& laid) {
  laid.labels.clear();
  return Labelling(*plan.graph, laid).run();
}

std::vector<PlacedLabel> find_places_beside(const Graph& graph, const Laid& laid, const std::vector<GridBox>& taken) {
  Laid noted = laid;
  noted.labels.clear();
  Labelling labelling(graph, noted);
  for (const PlacedLabel& label : laid.labels) labelling.keep_free(label.box);
  for (const GridBox& box : taken) labelling.keep_free(box);
  labelling.place_one_each();
  return std::move(noted.labels);
}

}  // namespace loomfolio::laying
