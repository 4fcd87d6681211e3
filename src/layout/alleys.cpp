// SPDX-License-Identifier: MIT
// Pass: the order of the upright runs in each alley.
#include <algorithm>

#include "layout/tracks.h"

namespace loomfolio::laying {
namespace {

/// Where a component turns to on a channel beyond the alley: by the middle of its other stops.
int heading_of(const Streets& streets, const Route& route, int stop) {
  if (stop < 0) return 0;
  const int channel = streets.stops[stop].channel;
  for (const ChannelUse& use : route.channels) {
    if (use.channel != channel) continue;
    long sum = 0;
    int others = 0;
    for (int s : use.stops)
      if (s != stop) sum += streets.stops[s].x, ++others;
    if (others == 0) return 0;
    const long x = sum / others;
    const Alley& alley = streets.alleys[streets.stops[stop].alley];
    return x < alley.left ? -1 : x > alley.right ? 1 : 0;
  }
  return 0;
}

StripPiece make_piece(const Plan& plan, const Streets& streets, const Route& route, const AlleyUse& use, int component) {
  const Alley& alley = streets.alleys[use.alley];
  StripPiece piece;
  piece.component = piece.source = component;
  piece.is_open_low = use.goes_up;
  piece.is_open_high = use.goes_down;
  if (use.goes_up) piece.heading_low = heading_of(streets, route, alley.stop_above);
  if (use.goes_down) piece.heading_high = heading_of(streets, route, alley.stop_below);
  for (int pin : use.pins) {
    const StripSide side = plan.pins[pin].body == alley.left_body ? StripSide::low : StripSide::high;
    piece.pins.push_back({plan.bodies[plan.pins[pin].body].drop + offset_of(plan, pin).y, side, pin});
  }
  return piece;
}

}  // namespace

int open_piece(const Strip& strip, int component, StripSide end) {
  for (std::size_t i = 0; i < strip.pieces.size(); ++i) {
    const StripPiece& p = strip.pieces[i];
    if (p.component == component && (end == StripSide::low ? p.is_open_low : p.is_open_high)) return static_cast<int>(i);
  }
  return -1;
}

void order_alleys(const Plan& plan, const Streets& streets, const Routes& routes, Tracks& tracks) {
  tracks.alleys.assign(streets.alleys.size(), {});
  for (int c = 0; c < static_cast<int>(routes.of_component.size()); ++c)
    for (const AlleyUse& use : routes.of_component[c].alleys)
      tracks.alleys[use.alley].pieces.push_back(make_piece(plan, streets, routes.of_component[c], use, c));
  for (Strip& strip : tracks.alleys) order_strip(strip, plan, StripKind::alley);
}

}  // namespace loomfolio::laying
