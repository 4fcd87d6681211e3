// SPDX-License-Identifier: MIT
// Courses along streets: which channels and alleys each component uses, before anything has an exact track.
#pragma once

#include <vector>

#include "layout/streets.h"

namespace loomfolio::laying {

/// A component's run in a channel, joined to these stops.
struct ChannelUse {
  int channel = -1;
  std::vector<int> stops;   ///< sorted
};

/// A component's run in an alley, joined to side pins, to the channel above and to the channel below.
struct AlleyUse {
  int alley = -1;
  std::vector<int> pins;    ///< sorted
  bool goes_up = false, goes_down = false;
};

struct Route {
  std::vector<ChannelUse> channels;   ///< at most one a channel, sorted
  std::vector<AlleyUse> alleys;       ///< at most one an alley, sorted
};

struct Routes {
  std::vector<Route> of_component;
};

/// What others already use: decides the price of crossing.
struct Traffic {
  std::vector<int> through;   ///< by stop: components that certainly pass here from row to row
  std::vector<int> ending;    ///< by stop: components that end on a run of this channel
  std::vector<int> in_alley;  ///< by alley: runs
};

Traffic no_traffic(const Streets& streets);
void add_traffic(Traffic& traffic, const Streets& streets, const Route& route, int sign);

/// The cheapest course of one component among the others' traffic.
Route route_component(const Plan& plan, const Streets& streets, const Traffic& traffic, int component);

/// All components, then each again among all others, `rounds` times.
Routes route_all(const Plan& plan, const Streets& streets, int rounds);

}  // namespace loomfolio::laying
