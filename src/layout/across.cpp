// SPDX-License-Identifier: MIT
// Pass: places from left to right. Bodies, the borders between columns and the upright runs are the unknowns; what stands beside
// what in a row keeps its distance; ends that one channel joins pull together, hardest where the wire could be straight.
#include <algorithm>

#include "layout/settle.h"
#include "layout/tracks.h"

namespace loomfolio::laying {
namespace {

struct Unknowns {
  std::vector<int> piece_base;   ///< by alley
  int border_base = 0, count = 0;
};

Unknowns number_unknowns(const Plan& plan, const Tracks& tracks) {
  Unknowns u;
  u.border_base = static_cast<int>(plan.bodies.size());
  u.count = u.border_base + plan.columns - 1;
  for (const Strip& strip : tracks.alleys) {
    u.piece_base.push_back(u.count);
    u.count += static_cast<int>(strip.pieces.size());
  }
  return u;
}

int unknown_of(const Unknowns& u, RowItem item) { return is_border(item) ? u.border_base - 1 - item : item; }

Grid width_of(const Plan& plan, RowItem item) { return is_border(item) ? 0 : plan.bodies[item].width; }

/// Least distance from an item's edge to a run.
Grid clear_of(const Plan& plan, RowItem item, const StripPiece& piece) {
  if (is_border(item)) return plan.spacing.band_gap / 2 + plan.spacing.least;
  return plan.spacing.clear + plan.components[piece.component].half_pen;
}

Grid item_gap(const Plan& plan, RowItem left, RowItem right) {
  if (is_border(left) && is_border(right)) return plan.spacing.band_gap;
  if (is_border(left) || is_border(right)) return plan.spacing.band_margin + plan.spacing.band_gap / 2;
  return plan.spacing.part_gap;
}

void hold_alley(const Plan& plan, const Streets& streets, const Strip& strip, int alley_index, const Unknowns& u,
                SettleProblem& problem) {
  const Alley& alley = streets.alleys[alley_index];
  const auto& items = streets.items[alley.row];
  const bool has_left = alley.place > 0, has_right = alley.place < static_cast<int>(items.size());
  const int base = u.piece_base[alley_index];
  if (has_left && has_right) {
    const RowItem left = items[alley.place - 1], right = items[alley.place];
    problem.arcs.push_back({unknown_of(u, left), unknown_of(u, right), width_of(plan, left) + item_gap(plan, left, right)});
  }
  for (int index : strip.order) {
    if (has_left) {
      const RowItem left = items[alley.place - 1];
      problem.arcs.push_back({unknown_of(u, left), base + index, width_of(plan, left) + clear_of(plan, left, strip.pieces[index])});
    }
    if (has_right) {
      const RowItem right = items[alley.place];
      problem.arcs.push_back({base + index, unknown_of(u, right), clear_of(plan, right, strip.pieces[index])});
    }
  }
  for (const StripArc& arc : strip.arcs) problem.arcs.push_back({base + arc.before, base + arc.after, arc.gap});
}

void pull_alley(const Plan& plan, const Strip& strip, int base, SettleProblem& problem) {
  for (int index : strip.order)
    for (const StripPin& pin : strip.pieces[index].pins) {
      if (pin.tag < 0) continue;
      const int body = plan.pins[pin.tag].body;
      const Grid edge = pin.side == StripSide::low ? plan.bodies[body].width : 0;
      problem.pulls.push_back({body, base + index, edge, plan.weights.loose_pull});
    }
}

struct End {
  int unknown = -1;
  Grid offset = 0;
};

End end_of(const Plan& plan, const Streets& streets, const Tracks& tracks, const Unknowns& u, int stop_index, int component) {
  const Stop& stop = streets.stops[stop_index];
  if (stop.pin >= 0) return {plan.pins[stop.pin].body, offset_of(plan, stop.pin).x};
  const int piece = open_piece(tracks.alleys[stop.alley], component, stop.is_below ? StripSide::low : StripSide::high);
  return {u.piece_base[stop.alley] + piece, 0};
}

void pull_channels(const Plan& plan, const Streets& streets, const Routes& routes, const Tracks& tracks, const Unknowns& u,
                   SettleProblem& problem) {
  for (int c = 0; c < static_cast<int>(routes.of_component.size()); ++c)
    for (const ChannelUse& use : routes.of_component[c].channels)
      for (std::size_t i = 1; i < use.stops.size(); ++i) {
        const End a = end_of(plan, streets, tracks, u, use.stops[i - 1], c);
        const End b = end_of(plan, streets, tracks, u, use.stops[i], c);
        const bool faces = streets.stops[use.stops[i - 1]].is_below != streets.stops[use.stops[i]].is_below;
        const int weight = faces ? plan.weights.straight_pull : plan.weights.loose_pull;
        problem.pulls.push_back({a.unknown, b.unknown, a.offset - b.offset, weight});
      }
}

/// Runs in a part of the sheet that nothing bounds must still stand somewhere: hold them near the border they are beside.
void bound(const Plan& plan, const Unknowns& u, SettleProblem& problem) {
  for (int c = 1; c + 1 < plan.columns; ++c)
    problem.pulls.push_back({u.border_base + c - 1, u.border_base + c, 0, 4 * plan.weights.loose_pull});
}

}  // namespace

void place_across(const Plan& plan, const Streets& streets, const Routes& routes, Tracks& tracks) {
  const Unknowns u = number_unknowns(plan, tracks);
  SettleProblem problem;
  problem.count = u.count;
  for (int a = 0; a < static_cast<int>(streets.alleys.size()); ++a) {
    hold_alley(plan, streets, tracks.alleys[a], a, u, problem);
    pull_alley(plan, tracks.alleys[a], u.piece_base[a], problem);
  }
  pull_channels(plan, streets, routes, tracks, u, problem);
  bound(plan, u, problem);
  const std::vector<Grid> places = settle(problem);
  tracks.body_x.assign(places.begin(), places.begin() + u.border_base);
  tracks.border_x.assign(places.begin() + u.border_base, places.begin() + u.border_base + plan.columns - 1);
  tracks.alley_x.clear();
  for (std::size_t a = 0; a < tracks.alleys.size(); ++a) {
    const auto begin = places.begin() + u.piece_base[a];
    tracks.alley_x.emplace_back(begin, begin + static_cast<long>(tracks.alleys[a].pieces.size()));
  }
}

}  // namespace loomfolio::laying
