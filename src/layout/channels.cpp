// SPDX-License-Identifier: MIT
// Passes: the order of the level runs in each channel, then places from top to bottom.
#include <algorithm>

#include "layout/settle.h"
#include "layout/tracks.h"

namespace loomfolio::laying {
namespace {

StripPiece make_piece(const Plan& plan, const Streets& streets, const Tracks& tracks, const ChannelUse& use, int component) {
  StripPiece piece;
  piece.component = piece.source = component;
  for (int s : use.stops) {
    const Stop& stop = streets.stops[s];
    Grid x = 0;
    if (stop.pin >= 0) {
      x = tracks.body_x[plan.pins[stop.pin].body] + offset_of(plan, stop.pin).x;
    } else {
      const StripSide end = stop.is_below ? StripSide::low : StripSide::high;
      x = tracks.alley_x[stop.alley][open_piece(tracks.alleys[stop.alley], component, end)];
    }
    piece.pins.push_back({x, stop.is_below ? StripSide::high : StripSide::low, s});
  }
  return piece;
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
    const Component& c = plan.components[piece.component];
    const Grid clear = plan.spacing.clear + c.half_pen;
    const Grid label = c.label_height > 0 ? c.label_height + 2 * plan.spacing.label_gap : 0;
    int low_pins = 0, high_pins = 0;
    for (const StripPin& pin : piece.pins) ++(pin.side == StripSide::low ? low_pins : high_pins);
    if (channel > 0) {
      const Grid gap = tracks.row_height[channel - 1] + margins[channel - 1].below + std::max(clear, label + c.half_pen);
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
  tracks.channels.assign(static_cast<std::size_t>(streets.channels()), {});
  for (int c = 0; c < static_cast<int>(routes.of_component.size()); ++c)
    for (const ChannelUse& use : routes.of_component[c].channels)
      tracks.channels[use.channel].pieces.push_back(make_piece(plan, streets, tracks, use, c));
  for (Strip& strip : tracks.channels) order_strip(strip, plan, StripKind::channel);
}

void place_down(const Plan& plan, const Streets& streets, Tracks& tracks) {
  const int rows = static_cast<int>(plan.rows.size());
  measure_rows(plan, tracks);
  const std::vector<Margin> margins = find_margins(plan, streets, tracks);
  SettleProblem problem;
  problem.count = rows;
  for (int r = 1; r < rows; ++r) {
    problem.arcs.push_back({r - 1, r, tracks.row_height[r - 1] + margins[r - 1].below + margins[r].above + plan.spacing.row_gap});
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
