// SPDX-License-Identifier: MIT
// The idea. People learn a drawing: after a small edit everything they know must be where it was. So nothing known
// moves at all. The new parts are set where there is room, nearest to what they are wired to; the new wires are
// threaded through what is drawn, one after the other; one that finds no way is squeezed in and pushes runs aside,
// which keep their shapes; and if all promises hold, that is the drawing.
#include "layout/keep.h"

#include <algorithm>
#include <climits>
#include <map>

#include "layout/decorate.h"
#include "layout/keep_canvas.h"
#include "layout/keep_joints.h"
#include "layout/keep_match.h"
#include "layout/keep_room.h"
#include "layout/label.h"
#include "layout/verify.h"

namespace loomfolio::laying {
namespace {

constexpr std::size_t most_places = 6;  // tried for a new part

class Keeping {
 public:
  Keeping(const Graph& graph, const Laid& earlier, const Graph& earlier_graph, const KeepMatch& match)
      : graph_(graph),
        earlier_(earlier),
        earlier_graph_(earlier_graph),
        match_(match),
        plan_(make_plan(graph, Flow::down)) {}
  std::optional<Laid> run();

 private:
  void take_over();
  bool resize();
  bool grow(const std::vector<char>& is_thicker);
  bool add_box(int box);
  void widen_band_for(int box);
  std::vector<GridPoint> candidates_of(int box);
  bool can_stay(int box, GridBox place) const;
  std::vector<GridPoint> places_of(int box) const;
  void frame();

  const Graph& graph_;
  const Laid& earlier_;
  const Graph& earlier_graph_;  ///< with joints as they were settled
  const KeepMatch& match_;
  Plan plan_;
  Canvas canvas_;
  Laid& laid_ = canvas_.laid;
  std::vector<GridBox>& boxes_ = canvas_.boxes;
  std::vector<Segment>& segments_ = canvas_.segments;
};

void Keeping::take_over() {
  laid_.bands = earlier_.bands;
  laid_.boxes.resize(graph_.boxes.size());
  laid_.courses.resize(graph_.wires.size());
  boxes_.resize(graph_.boxes.size());
  for (std::size_t b = 0; b < graph_.boxes.size(); ++b)
    if (match_.is_same_box[b]) {
      laid_.boxes[b] = earlier_.boxes[match_.box[b]];
      boxes_[b] = laid_.boxes[b].box;
    }
  for (std::size_t w = 0; w < graph_.wires.size(); ++w) {
    if (match_.wire[w] < 0) continue;
    laid_.courses[w].points = earlier_.courses[match_.wire[w]].points;
    for (const Segment& s : segments_of(static_cast<int>(w), laid_.courses[w])) segments_.push_back(s);
  }
}

/// A part that has changed stays where it was when nothing else is in its way there.
bool Keeping::can_stay(int box, GridBox place) const {
  const GridBox band = laid_.bands.empty() ? place : laid_.bands[graph_.boxes[box].zone];
  if (graph_.boxes[box].role != BoxRole::reference && (place.x0 < band.x0 || place.x1 > band.x1)) return false;
  const GridBox wide = place.grown(2 * plan_.spacing.clear);
  for (const GridBox& other : boxes_)
    if (other.width() > 0 && other.overlaps(wide)) return false;
  const GridBox near = place.grown(plan_.spacing.clear);
  return std::none_of(segments_.begin(), segments_.end(), [&](const Segment& s) {
    const GridBox line = s.is_level ? GridBox{s.low, s.at, s.high, s.at} : GridBox{s.at, s.low, s.at, s.high};
    return line.x0 < near.x1 && line.x1 > near.x0 && line.y0 < near.y1 && line.y1 > near.y0;
  });
}

std::vector<GridPoint> Keeping::places_of(int box) const {
  const GraphBox& g = graph_.boxes[box];
  if (g.role == BoxRole::reference || laid_.bands.empty()) return {};
  RoomRequest room;
  room.area = laid_.bands[g.zone];
  room.area.x0 += plan_.spacing.band_margin;
  room.area.x1 -= plan_.spacing.band_margin;
  room.area.y0 += plan_.spacing.band_head;
  room.width = g.width;
  room.height = g.height;
  room.clear = 2 * plan_.spacing.clear + plan_.spacing.pitch;
  for (const GraphWire& w : graph_.wires) {
    if (w.from_box == box && boxes_[w.to_box].width() > 0)
      room.partners.push_back(thread_end(graph_, canvas_, w.to_box, w.to_terminal).at);
    if (w.to_box == box && boxes_[w.from_box].width() > 0)
      room.partners.push_back(thread_end(graph_, canvas_, w.from_box, w.from_terminal).at);
  }
  std::vector<GridBox> taken;
  for (const GridBox& b : boxes_)
    if (b.width() > 0) taken.push_back(b);
  for (const Segment& s : segments_)
    taken.push_back(s.is_level ? GridBox{s.low, s.at, s.high, s.at} : GridBox{s.at, s.low, s.at, s.high});
  return find_room(room, taken, most_places);
}

std::vector<GridPoint> Keeping::candidates_of(int box) {
  const GraphBox& g = graph_.boxes[box];
  if (match_.box[box] >= 0) {
    const PlacedBox& old = earlier_.boxes[match_.box[box]];
    laid_.boxes[box].is_mirrored = old.is_mirrored && g.may_mirror;
    const GridBox place{old.box.x0, old.box.y0, old.box.x0 + g.width, old.box.y0 + g.height};
    if (can_stay(box, place)) return {{place.x0, place.y0}};
  }
  return places_of(box);
}

/// A band too narrow for a new part grows at its right; what stands right of it goes along, and no shape changes.
void Keeping::widen_band_for(int box) {
  const GraphBox& g = graph_.boxes[box];
  if (g.role == BoxRole::reference || laid_.bands.empty()) return;
  const GridBox band = laid_.bands[g.zone];
  const Grid by = g.width + 2 * plan_.spacing.band_margin - band.width();
  if (by <= 0) return;
  const auto shift = [&](Grid& x) {
    if (x >= band.x1) x += by;
  };
  for (std::size_t b = 0; b < boxes_.size(); ++b)
    for (GridBox* one : {&boxes_[b], &laid_.boxes[b].box}) {
      if (one->width() == 0 || one->x0 < band.x1) continue;
      one->x0 += by;
      one->x1 += by;
    }
  for (Course& course : laid_.courses)
    for (GridPoint& p : course.points) shift(p.x);
  for (Segment& s : segments_)
    if (s.is_level)
      shift(s.low), shift(s.high);
    else
      shift(s.at);
  for (GridBox& other : laid_.bands) {
    shift(other.x0);
    shift(other.x1);
  }
}

/// The best of its places, with its wires; where no place goes as things stand, the best that pushes runs aside.
bool Keeping::add_box(int box) {
  const GraphBox& g = graph_.boxes[box];
  if (match_.box[box] < 0) widen_band_for(box);
  const std::vector<GridPoint> places = candidates_of(box);
  for (const Squeeze squeeze : {Squeeze::never, Squeeze::allowed}) {
    const Canvas before = canvas_;
    Canvas best;
    long best_cost = INT64_MAX;
    for (GridPoint at : places) {
      laid_.boxes[box].box = boxes_[box] = {at.x, at.y, at.x + g.width, at.y + g.height};
      const long cost = draw_wires_of(plan_, canvas_, box, squeeze);
      if (cost < best_cost) best_cost = cost, best = canvas_;
      canvas_ = before;
    }
    if (best_cost == INT64_MAX) continue;
    canvas_ = std::move(best);
    return true;
  }
  return false;
}

/// What went beyond the old edges makes the sheet larger; at the top and the left everything shifts together.
void Keeping::frame() {
  GridBox all{0, plan_.spacing.band_head, earlier_.width, earlier_.height - plan_.spacing.band_margin};
  const auto add = [&](GridBox b) {
    all = {std::min(all.x0, b.x0), std::min(all.y0, b.y0), std::max(all.x1, b.x1), std::max(all.y1, b.y1)};
  };
  for (const PlacedBox& b : laid_.boxes) add(b.box);
  for (const GridBox& band : laid_.bands) all.x1 = std::max(all.x1, band.x1);
  for (const Course& c : laid_.courses)
    for (GridPoint p : c.points) add({p.x, p.y, p.x, p.y});
  const Grid dx = -all.x0, dy = plan_.spacing.band_head - all.y0;
  for (PlacedBox& b : laid_.boxes) b.box = {b.box.x0 + dx, b.box.y0 + dy, b.box.x1 + dx, b.box.y1 + dy};
  for (Course& c : laid_.courses)
    for (GridPoint& p : c.points) p = {p.x + dx, p.y + dy};
  laid_.width = all.x1 + dx;
  laid_.height = all.y1 + dy + plan_.spacing.band_margin;
  for (GridBox& b : laid_.bands) b = {b.x0 + dx, 0, b.x1 + dx, laid_.height};
}

/// Room for what grew: to the right and down, to the left and up, or half each way, as fewest parts move.
bool Keeping::grow(const std::vector<char>& is_thicker) {
  const Canvas before = canvas_;
  Canvas best;
  int fewest = INT_MAX;
  for (const int halves : {0, 2, 1}) {
    std::vector<GridPoint> lean(graph_.boxes.size());
    for (std::size_t b = 0; b < graph_.boxes.size(); ++b)
      if (match_.is_same_box[b]) {
        const GraphBox &is = graph_.boxes[b], &was = earlier_graph_.boxes[match_.box[b]];
        lean[b] = {std::max(0, is.width - was.width) * halves / 2, std::max(0, is.height - was.height) * halves / 2};
      }
    canvas_ = before;
    if (!push_aside(plan_, canvas_, is_thicker, lean)) continue;
    const int moved = count_moved(before, canvas_);
    if (moved < fewest) fewest = moved, best = canvas_;
    if (moved == 0) break;
  }
  canvas_ = fewest == INT_MAX ? before : std::move(best);
  return fewest != INT_MAX;
}

/// Parts with other sizes and thicker wires push aside what is in their way; where that does not go, the thicker wires
/// are drawn anew.
bool Keeping::resize() {
  std::vector<char> is_thicker(graph_.wires.size(), 0);
  for (std::size_t w = 0; w < graph_.wires.size(); ++w)
    is_thicker[w] = match_.wire[w] >= 0 && graph_.wires[w].pen > earlier_graph_.wires[match_.wire[w]].pen;
  bool has_changed = std::count(is_thicker.begin(), is_thicker.end(), 1) > 0;
  for (std::size_t b = 0; b < graph_.boxes.size(); ++b)
    has_changed |= match_.is_same_box[b] && !has_same_size(graph_.boxes[b], earlier_graph_.boxes[match_.box[b]]);
  if (!has_changed) return true;
  const Canvas before = canvas_;
  if (grow(is_thicker) && 10 * count_moved(before, canvas_) <= static_cast<int>(boxes_.size())) return true;
  canvas_ = before;
  for (std::size_t w = 0; w < graph_.wires.size(); ++w)
    if (is_thicker[w]) laid_.courses[w].points.clear();
  std::fill(is_thicker.begin(), is_thicker.end(), 0);
  return grow(is_thicker);
}

std::optional<Laid> Keeping::run() {
  take_over();
  if (!resize()) return std::nullopt;
  for (int b = 0; b < static_cast<int>(graph_.boxes.size()); ++b)
    if (!match_.is_same_box[b] && !add_box(b)) return std::nullopt;
  for (int w = 0; w < static_cast<int>(graph_.wires.size()); ++w)
    if (laid_.courses[w].points.empty() && !work_in(plan_, canvas_, w)) return std::nullopt;
  frame();
  add_dots(plan_, laid_);
  add_hops(laid_);
  for (int w : add_labels(plan_, laid_))
    laid_.warnings.push_back({graph_.wires[w].name, "no room for its label beside the wire"});
  if (!verify(graph_, laid_).empty()) return std::nullopt;
  return std::move(laid_);
}

}  // namespace

std::optional<Laid> keep_placement(const Graph& graph, const Laid& earlier, const Graph& earlier_graph) {
  if (earlier.boxes.size() != earlier_graph.boxes.size() || earlier.courses.size() != earlier_graph.wires.size() ||
      earlier.bands.size() != earlier_graph.zones.size())
    return std::nullopt;
  Graph settled = graph;
  std::vector<SettledJoint> joints = keep_joints(earlier, earlier_graph, settled);
  const Graph before = with_settled_joints(earlier_graph, earlier);
  for (const Likeness likeness : {Likeness::terminals, Likeness::sizes}) {
    const KeepMatch match = match_graphs(settled, before, likeness);
    if (!match.is_small_edit) continue;
    auto kept = Keeping(settled, earlier, before, match).run();
    if (!kept) continue;
    kept->joints = std::move(joints);
    return kept;
  }
  return std::nullopt;
}

}  // namespace loomfolio::laying
