// SPDX-License-Identifier: MIT
// Pass: places from left to right. Bodies, the borders between columns and the upright runs are the unknowns; what
// stands beside what in a row keeps its distance; ends that one channel joins pull together, hardest where the wire
// could be straight.
#include <algorithm>

#include "layout/settle.h"
#include "layout/tracks.h"

namespace loomfolio::laying {
namespace {

class Across {
 public:
  Across(const Plan& plan, const Streets& streets, const Routes& routes, const Tracks& tracks)
      : plan_(plan), streets_(streets), routes_(routes), tracks_(tracks) {
    borders_ = static_cast<int>(plan.bodies.size());
    problem_.count = borders_ + plan.columns - 1;
    for (const Strip& strip : tracks.alleys) {
      pieces_.push_back(problem_.count);
      problem_.count += static_cast<int>(strip.pieces.size());
    }
  }
  void run(Tracks& out);

 private:
  struct End {
    int unknown = -1;
    Grid offset = 0;
  };
  void hold_columns();
  void hold_alley(int alley);
  void pull_alley(int alley);
  void pull_channels();
  void pull_pinned();
  void pull_pairs();
  Grid gap_between_bodies(int left, int right) const;
  End end_of(const ChannelEnd& end, int wire) const;
  void keep(int from, int to, Grid gap) { problem_.arcs.push_back({from, to, gap}); }
  Grid clear_of(const StripPiece& piece) const { return plan_.spacing.clear + half_pen(plan_, piece.wire); }

  const Plan& plan_;
  const Streets& streets_;
  const Routes& routes_;
  const Tracks& tracks_;
  SettleProblem problem_;
  int borders_ = 0;
  std::vector<int> pieces_;  ///< by alley: its first unknown
};

/// Border c stands right of column c and left of column c + 1 in every row; bodies keep a margin from it.
void Across::hold_columns() {
  const Grid margin = plan_.spacing.band_margin + plan_.spacing.band_gap / 2;
  for (int c = 0; c + 1 < plan_.columns; ++c) {
    if (c > 0) {
      keep(borders_ + c - 1, borders_ + c, 2 * plan_.spacing.band_gap);
      problem_.pulls.push_back({borders_ + c - 1, borders_ + c, 0, 4 * plan_.weights.loose_pull});
    }
    for (const auto& row : plan_.rows) {
      if (!row[c].empty()) keep(row[c].back(), borders_ + c, plan_.bodies[row[c].back()].width + margin);
      if (!row[c + 1].empty()) keep(borders_ + c, row[c + 1].front(), margin);
    }
  }
}

/// Each body has the box of its own number.
Grid Across::gap_between_bodies(int left, int right) const {
  const std::vector<int>& apart = plan_.graph->boxes[plan_.bodies[left].members[0].box].apart;
  const bool is_apart = std::find(apart.begin(), apart.end(), plan_.bodies[right].members[0].box) != apart.end();
  return is_apart ? plan_.spacing.apart : plan_.spacing.part_gap;
}

/// Bodies that are pinned to the left or right of their zone's band are drawn to its edge.
void Across::pull_pinned() {
  const Grid margin = plan_.spacing.band_margin + plan_.spacing.band_gap / 2;
  const int weight = 4 * plan_.weights.straight_pull;
  for (int b = 0; b < borders_; ++b) {
    const Body& body = plan_.bodies[b];
    if (body.place_pin == PinnedEnd::first && body.column > 0)
      problem_.pulls.push_back({borders_ + body.column - 1, b, margin, weight});
    if (body.place_pin == PinnedEnd::last && body.column + 1 < plan_.columns)
      problem_.pulls.push_back({b, borders_ + body.column, body.width + margin, weight});
  }
}

/// The two of a pair that stand in two rows have their left edges in line.
void Across::pull_pairs() {
  for (int b = 0; b < borders_; ++b) {
    const int partner = plan_.graph->boxes[plan_.bodies[b].members[0].box].partner;
    if (partner <= b || plan_.bodies[partner].row == plan_.bodies[b].row || plan_.bodies[partner].zone_column != plan_.bodies[b].zone_column)
      continue;
    problem_.pulls.push_back({b, partner, 0, plan_.weights.pair_pull});
  }
}

void Across::hold_alley(int alley) {
  const Alley& a = streets_.alleys[alley];
  const Strip& strip = tracks_.alleys[alley];
  const int base = pieces_[alley];
  if (a.left_body >= 0 && a.right_body >= 0)
    keep(a.left_body, a.right_body, plan_.bodies[a.left_body].width + gap_between_bodies(a.left_body, a.right_body));
  const bool is_banded = plan_.columns > 1;
  const Grid inside = plan_.spacing.band_gap / 2 + plan_.spacing.least;
  for (int index : strip.order) {
    const Grid clear = clear_of(strip.pieces[index]) + plan_.spacing.spare;
    if (a.left_body >= 0)
      keep(a.left_body, base + index, plan_.bodies[a.left_body].width + clear);
    else if (is_banded && (a.right_body < 0 || plan_.bodies[a.right_body].column > 0))
      keep(borders_, base + index, inside);
    if (a.right_body >= 0)
      keep(base + index, a.right_body, clear);
    else if (is_banded && (a.left_body < 0 || plan_.bodies[a.left_body].column + 1 < plan_.columns))
      keep(base + index, borders_ + plan_.columns - 2, inside);
  }
  for (const StripArc& arc : strip.arcs) keep(base + arc.before, base + arc.after, arc.gap);
}

void Across::pull_alley(int alley) {
  const Strip& strip = tracks_.alleys[alley];
  for (int index : strip.order)
    for (const StripPin& pin : strip.pieces[index].pins) {
      if (pin.tag < 0) continue;
      const int body = plan_.pins[pin.tag].body;
      const Grid edge = pin.side == StripSide::low ? plan_.bodies[body].width : 0;
      problem_.pulls.push_back({body, pieces_[alley] + index, edge, plan_.weights.loose_pull});
    }
}

Across::End Across::end_of(const ChannelEnd& end, int wire) const {
  if (end.pin >= 0) return {plan_.pins[end.pin].body, offset_of(plan_, end.pin).x};
  const StripSide opening = end.side == StripSide::low ? StripSide::high : StripSide::low;
  return {pieces_[end.alley] + open_piece(tracks_.alleys[end.alley], wire, opening), 0};
}

void Across::pull_channels() {
  for (int w = 0; w < static_cast<int>(routes_.size()); ++w)
    for (std::size_t leg = 0; leg < routes_[w].size(); ++leg) {
      if (routes_[w][leg].in_alley) continue;
      const auto [one, two] = ends_of_leg(plan_, streets_, routes_[w], w, leg);
      const End a = end_of(one, w), b = end_of(two, w);
      const int weight = one.side != two.side ? plan_.weights.straight_pull : plan_.weights.loose_pull;
      problem_.pulls.push_back({a.unknown, b.unknown, a.offset - b.offset, weight});
    }
}

void Across::run(Tracks& out) {
  hold_columns();
  for (int a = 0; a < static_cast<int>(streets_.alleys.size()); ++a) {
    hold_alley(a);
    pull_alley(a);
  }
  pull_channels();
  pull_pinned();
  pull_pairs();
  const std::vector<Grid> places = settle(problem_);
  out.body_x.assign(places.begin(), places.begin() + borders_);
  out.border_x.assign(places.begin() + borders_, places.begin() + borders_ + plan_.columns - 1);
  out.alley_x.clear();
  for (std::size_t a = 0; a < tracks_.alleys.size(); ++a) {
    const auto begin = places.begin() + pieces_[a];
    out.alley_x.emplace_back(begin, begin + static_cast<long>(tracks_.alleys[a].pieces.size()));
  }
}

}  // namespace

void place_across(const Plan& plan, const Streets& streets, const Routes& routes, Tracks& tracks) {
  Across(plan, streets, routes, tracks).run(tracks);
}

}  // namespace loomfolio::laying
