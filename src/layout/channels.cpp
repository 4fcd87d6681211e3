// SPDX-License-Identifier: MIT
// Passes: the order of the level runs in each channel, then places from top to bottom.
#include <algorithm>

#include "layout/settle.h"
#include "layout/tracks.h"
#include "layout/wishes.h"

namespace loomfolio::laying {
namespace {

StripPin make_pin(const Plan& plan, const Tracks& tracks, const ChannelEnd& end, int wire, int tag) {
  if (end.pin >= 0) return {tracks.body_x[plan.pins[end.pin].body] + offset_of(plan, end.pin).x, end.side, tag};
  const StripSide opening = end.side == StripSide::low ? StripSide::high : StripSide::low;
  return {tracks.alley_x[end.alley][open_piece(tracks.alleys[end.alley], wire, opening)], end.side, tag};
}

/// How far jogs inside a row's alleys stick out above and below the row.
struct Margin {
  Grid above = 0, below = 0;
};

std::vector<Margin> find_margins(const Plan& plan, const Streets& streets, const Tracks& tracks) {
  std::vector<Margin> margins(plan.rows.size());
  for (std::size_t a = 0; a < tracks.alleys.size(); ++a)
    for (const StripLink& link : tracks.alleys[a].links) {
      const int row = streets.alleys[a].row;
      margins[row].above = std::max(margins[row].above, -link.at);
      margins[row].below = std::max(margins[row].below, link.at - tracks.row_height[row]);
    }
  return margins;
}

void measure_rows(const Plan& plan, Tracks& tracks) {
  tracks.row_height.assign(plan.rows.size(), 0);
  for (const Body& body : plan.bodies)
    tracks.row_height[body.row] = std::max(tracks.row_height[body.row], body.drop + body.height);
}

void hold_channel(const Plan& plan, const Tracks& tracks, const std::vector<Margin>& margins, int channel, int base,
                  SettleProblem& problem) {
  const int rows = static_cast<int>(plan.rows.size());
  const Strip& strip = tracks.channels[channel];
  for (int index : strip.order) {
    const StripPiece& piece = strip.pieces[index];
    const Grid clear = plan.spacing.clear + half_pen(plan, piece.wire), label_height = plan.graph->wires[piece.wire].label_height;
    const bool has_label = label_height > 0 && plan.flow == Flow::down;
    const Grid label = has_label ? label_height + 2 * plan.spacing.label_gap : 0;
    int low_pins = 0, high_pins = 0;
    for (const StripPin& pin : piece.pins) ++(pin.side == StripSide::low ? low_pins : high_pins);
    if (channel > 0) {
      const Grid gap = tracks.row_height[channel - 1] + margins[channel - 1].below + std::max(clear, label + half_pen(plan, piece.wire));
      problem.arcs.push_back({channel - 1, base + index, gap});
      problem.pulls.push_back({channel - 1, base + index, tracks.row_height[channel - 1], low_pins});
    }
    if (channel < rows) {
      problem.arcs.push_back({base + index, channel, margins[channel].above + clear});
      problem.pulls.push_back({base + index, channel, 0, high_pins});
    }
  }
  for (const StripArc& arc : strip.arcs) problem.arcs.push_back({base + arc.before, base + arc.after, arc.gap});
}

}  // namespace

void order_channels(const Plan& plan, const Streets& streets, const Routes& routes, Tracks& tracks) {
  tracks.channels.assign(plan.rows.size() + 1, {});
  for (int w = 0; w < static_cast<int>(routes.size()); ++w)
    for (std::size_t leg = 0; leg < routes[w].size(); ++leg) {
      if (routes[w][leg].in_alley) continue;
      const auto [one, two] = ends_of_leg(plan, streets, routes[w], w, leg);
      StripPiece piece;
      piece.wire = w;
      piece.pins = {make_pin(plan, tracks, one, w, 0), make_pin(plan, tracks, two, w, 1)};
      tracks.channels[routes[w][leg].street].pieces.push_back(std::move(piece));
    }
  for (Strip& strip : tracks.channels) order_strip(strip, plan, StripKind::channel);
}

void place_down(const Plan& plan, const Streets& streets, Tracks& tracks) {
  const int rows = static_cast<int>(plan.rows.size());
  measure_rows(plan, tracks);
  const std::vector<Margin> margins = find_margins(plan, streets, tracks);
  SettleProblem problem;
  problem.count = rows;
  for (int r = 1; r < rows; ++r) {
    Grid gap = std::max(margins[r - 1].below + margins[r].above + plan.spacing.row_gap, row_gap_for_apart(plan, tracks.body_x, r - 1));
    if (plan.flow == Flow::across && plan.zone_of_row[r] != plan.zone_of_row[r - 1])
      gap = std::max(gap, plan.spacing.band_gap + 2 * plan.spacing.band_margin);
    problem.arcs.push_back({r - 1, r, tracks.row_height[r - 1] + gap});
    problem.pulls.push_back({r - 1, r, 0, 2});
  }
  std::vector<int> base;
  for (int ch = 0; ch <= rows; ++ch) {
    base.push_back(problem.count);
    problem.count += static_cast<int>(tracks.channels[ch].pieces.size());
    hold_channel(plan, tracks, margins, ch, base.back(), problem);
  }
  const std::vector<Grid> places = settle(problem);
  tracks.row_y.assign(places.begin(), places.begin() + rows);
  tracks.channel_y.clear();
  for (int ch = 0; ch <= rows; ++ch) {
    const auto begin = places.begin() + base[ch];
    tracks.channel_y.emplace_back(begin, begin + static_cast<long>(tracks.channels[ch].pieces.size()));
  }
}

}  // namespace loomfolio::laying
