// SPDX-License-Identifier: MIT
// The idea. A wire leaves its terminal by the side it is on: up or down onto a channel, or sideways into an alley. From then on it
// is always in one of three states, and Dijkstra's search over them finds the cheapest course:
//
//   standing (stop)          on a channel, come vertically from the alley or terminal that opens there
//   running  (stop, left or right)   along a channel, at that stop
//   inside   (alley)         in an alley, free to leave it upwards or downwards
//
//   ===o======o=====>=====o====   channel        standing -> running costs a bend, and so does leaving a run;
//      |  [A] |    [B]    |  [C]  row            a stop above and a stop below that can share one x need none
//   ===o======o===========o====   channel
//
// A component of many terminals grows as a tree: everything it has already costs nothing to start from. The first move leaves
// the terminal outwards and the last one enters inwards, so wires always attach the right way.
#include "layout/route.h"

#include <algorithm>
#include <queue>
#include <tuple>

namespace loomfolio::laying {
namespace {

enum class Heading : int { standing = 0, left = 1, right = 2 };

class Search {
 public:
  Search(const Plan& plan, const Streets& streets, const Traffic& traffic)
      : plan_(plan), streets_(streets), traffic_(traffic) {
    const std::size_t states = 3 * streets.stops.size() + streets.alleys.size();
    cost_.assign(states, unreached);
    came_from_.assign(states, -1);
  }
  Route grow(int component);

 private:
  static constexpr int unreached = INT32_MAX;
  int state_of(int stop, Heading h) const { return 3 * stop + static_cast<int>(h); }
  int inside(int alley) const { return 3 * static_cast<int>(streets_.stops.size()) + alley; }
  bool is_inside(int state) const { return state >= 3 * static_cast<int>(streets_.stops.size()); }

  void reach(int state, int cost, int from);
  void start_from_pin(int pin);
  void start_from_tree(const Route& route);
  void expand(int state);
  void expand_inside(int alley, int cost);
  void expand_standing(int stop, int cost);
  void expand_running(int stop, Heading h, int cost);
  void pass_straight(int stop, int cost);
  int passing_price(int stop) const;
  int arrival_price(int state, int pin) const;
  void connect(int state, Route& route) const;
  void find(const std::vector<char>& wanted, int& goal_pin, int& goal_state);

  const Plan& plan_;
  const Streets& streets_;
  const Traffic& traffic_;
  std::vector<int> cost_, came_from_, touched_;
  std::priority_queue<std::pair<int, int>, std::vector<std::pair<int, int>>, std::greater<>> queue_;
  std::vector<int> goal_pins_;
};

void Search::reach(int state, int cost, int from) {
  if (cost >= cost_[state]) return;
  if (cost_[state] == unreached) touched_.push_back(state);
  cost_[state] = cost;
  came_from_[state] = from;
  queue_.push({cost, state});
}

void Search::start_from_pin(int pin) {
  if (is_upright(side_of(plan_, pin))) reach(state_of(streets_.stop_of_pin[pin], Heading::standing), 0, -1);
  else reach(inside(alley_of(plan_, streets_, pin)), plan_.weights.bend, -1);
}

void Search::start_from_tree(const Route& route) {
  for (const AlleyUse& use : route.alleys) reach(inside(use.alley), 0, -1);
  for (const ChannelUse& use : route.channels)
    for (int s = use.stops.front(); s <= use.stops.back(); ++s) {
      reach(state_of(s, Heading::left), 0, -1);
      reach(state_of(s, Heading::right), 0, -1);
    }
}

int Search::passing_price(int stop) const {
  return traffic_.through[stop] * plan_.weights.crossing + traffic_.ending[stop] * plan_.weights.crossing_maybe;
}

void Search::expand_inside(int alley_index, int cost) {
  const Alley& alley = streets_.alleys[alley_index];
  const int price = cost + streets_.row_height[alley.row] / 2 + traffic_.in_alley[alley_index] * plan_.spacing.pitch;
  const int from = came_from_[inside(alley_index)];
  const int from_channel = from < 0 ? -1 : streets_.stops[from / 3].channel;
  if (alley.stop_above >= 0 && from_channel != alley.row)
    reach(state_of(alley.stop_above, Heading::standing), price, inside(alley_index));
  if (alley.stop_below >= 0 && from_channel != alley.row + 1)
    reach(state_of(alley.stop_below, Heading::standing), price, inside(alley_index));
}

/// From the row above to the row below (or back) at one x, where their openings overlap.
void Search::pass_straight(int stop, int cost) {
  const Stop& here = streets_.stops[stop];
  if (here.alley < 0 && here.pin < 0) return;
  const auto span = [&](const Stop& s) {
    return s.pin >= 0 ? std::pair{s.x, s.x} : std::pair{streets_.alleys[s.alley].left, streets_.alleys[s.alley].right};
  };
  const auto [left, right] = span(here);
  const int own = state_of(stop, Heading::standing);
  for (int t = streets_.first_stop[here.channel]; t < streets_.first_stop[here.channel + 1]; ++t) {
    const Stop& there = streets_.stops[t];
    if (there.is_below == here.is_below || there.alley < 0) continue;
    const auto [from, to] = span(there);
    if (from > right || to < left) continue;
    reach(inside(there.alley), cost + 4 * plan_.spacing.row_gap, own);
  }
}

void Search::expand_standing(int stop, int cost) {
  const int own = state_of(stop, Heading::standing);
  reach(state_of(stop, Heading::left), cost + plan_.weights.bend, own);
  reach(state_of(stop, Heading::right), cost + plan_.weights.bend, own);
  pass_straight(stop, cost);
}

void Search::expand_running(int stop, Heading h, int cost) {
  const int own = state_of(stop, h);
  const Stop& here = streets_.stops[stop];
  if (here.alley >= 0) reach(inside(here.alley), cost + plan_.weights.bend + 2 * plan_.spacing.row_gap, own);
  const int next = stop + (h == Heading::right ? 1 : -1);
  if (next < streets_.first_stop[here.channel] || next >= streets_.first_stop[here.channel + 1]) return;
  const bool is_start = came_from_[own] == state_of(stop, Heading::standing) || came_from_[own] == -1;
  const int price = (is_start ? 0 : passing_price(stop)) + std::abs(streets_.stops[next].x - here.x);
  reach(state_of(next, h), cost + price, own);
}

void Search::expand(int state) {
  const int cost = cost_[state];
  if (is_inside(state)) return expand_inside(state - inside(0), cost);
  const Heading h = static_cast<Heading>(state % 3);
  if (h == Heading::standing) expand_standing(state / 3, cost);
  else expand_running(state / 3, h, cost);
}

/// What is still to pay from `state` into `pin`; `unreached` when it does not open there.
int Search::arrival_price(int state, int pin) const {
  if (is_inside(state)) {
    if (is_upright(side_of(plan_, pin)) || inside(alley_of(plan_, streets_, pin)) != state) return unreached;
    return came_from_[state] == -1 ? 0 : plan_.weights.bend;
  }
  const int stop = streets_.stop_of_pin[pin];
  if (stop < 0) return unreached;
  if (static_cast<Heading>(state % 3) != Heading::standing) return state / 3 == stop ? plan_.weights.bend : unreached;
  const Stop& from = streets_.stops[state / 3];
  const Stop& to = streets_.stops[stop];
  if (from.channel != to.channel || from.is_below == to.is_below) return unreached;
  if (from.pin >= 0) return std::abs(from.x - to.x) <= 2 * plan_.spacing.part_gap ? plan_.weights.bend / 2 : unreached;
  const Alley& alley = streets_.alleys[from.alley];
  return to.x > alley.left && to.x < alley.right ? 0 : unreached;
}

/// Runs until the cheapest of the wanted pins is reached.
void Search::find(const std::vector<char>& wanted, int& goal_pin, int& goal_state) {
  int best = unreached;
  goal_pin = goal_state = -1;
  while (!queue_.empty()) {
    const auto [cost, state] = queue_.top();
    queue_.pop();
    if (cost > cost_[state]) continue;
    if (cost >= best) break;
    for (int pin : goal_pins_) {
      if (!wanted[pin]) continue;
      const int rest = arrival_price(state, pin);
      if (rest != unreached && cost + rest < best) {
        best = cost + rest;
        goal_pin = pin;
        goal_state = state;
      }
    }
    expand(state);
  }
  queue_ = {};
}

ChannelUse& channel_use(Route& route, int channel) {
  for (ChannelUse& use : route.channels)
    if (use.channel == channel) return use;
  route.channels.push_back({channel, {}});
  return route.channels.back();
}

AlleyUse& alley_use(Route& route, int alley) {
  for (AlleyUse& use : route.alleys)
    if (use.alley == alley) return use;
  AlleyUse use;
  use.alley = alley;
  route.alleys.push_back(use);
  return route.alleys.back();
}

void join_stop(Route& route, const Streets& streets, int stop) {
  std::vector<int>& stops = channel_use(route, streets.stops[stop].channel).stops;
  const auto at = std::lower_bound(stops.begin(), stops.end(), stop);
  if (at == stops.end() || *at != stop) stops.insert(at, stop);
  const Stop& s = streets.stops[stop];
  if (s.alley < 0) return;
  AlleyUse& use = alley_use(route, s.alley);
  (s.is_below ? use.goes_up : use.goes_down) = true;
}

/// Adds the path that ends in `state` to the route.
void Search::connect(int state, Route& route) const {
  for (; state >= 0; state = came_from_[state]) {
    const int from = came_from_[state];
    if (!is_inside(state)) {
      if (static_cast<Heading>(state % 3) == Heading::standing) join_stop(route, streets_, state / 3);
      continue;
    }
    const Alley& alley = streets_.alleys[state - inside(0)];
    alley_use(route, state - inside(0));
    if (from < 0) continue;
    // Entered from a channel: by the stop that opens there.
    join_stop(route, streets_, streets_.stops[from / 3].channel == alley.row ? alley.stop_above : alley.stop_below);
  }
}

Route Search::grow(int component) {
  const std::vector<int>& pins = plan_.components[component].pins;
  Route route;
  std::vector<char> wanted(plan_.pins.size(), 0);
  for (int p : pins) wanted[p] = 1;
  goal_pins_ = pins;
  wanted[pins[0]] = 0;
  const auto add_pin = [&](int pin) {
    if (!is_upright(side_of(plan_, pin))) {
      std::vector<int>& side_pins = alley_use(route, alley_of(plan_, streets_, pin)).pins;
      side_pins.insert(std::upper_bound(side_pins.begin(), side_pins.end(), pin), pin);
    } else {
      join_stop(route, streets_, streets_.stop_of_pin[pin]);
    }
  };
  for (std::size_t n = 1; n < pins.size(); ++n) {
    for (int s : touched_) cost_[s] = unreached, came_from_[s] = -1;
    touched_.clear();
    if (n == 1) start_from_pin(pins[0]);
    else start_from_tree(route);
    int pin = -1, state = -1;
    find(wanted, pin, state);
    if (pin < 0) break;
    connect(state, route);
    if (n == 1) add_pin(pins[0]);
    add_pin(pin);
    wanted[pin] = 0;
  }
  return route;
}

/// Keeps of a route what a tree over its pins needs: no rings, no loose ends.
class Pruner {
 public:
  Pruner(const Streets& streets, Route& route) : streets_(streets), route_(route) {}
  void run();

 private:
  struct Joint {
    int channel_use, alley_use, stop;
  };
  int find(int i) {
    while (root_[i] != i) i = root_[i] = root_[root_[i]];
    return i;
  }
  const Streets& streets_;
  Route& route_;
  std::vector<int> root_;
};

void Pruner::run() {
  const int channels = static_cast<int>(route_.channels.size()), alleys = static_cast<int>(route_.alleys.size());
  root_.resize(static_cast<std::size_t>(channels + alleys));
  for (int i = 0; i < channels + alleys; ++i) root_[i] = i;
  std::vector<Joint> joints;
  std::vector<int> degree(root_.size(), 0);
  for (int c = 0; c < channels; ++c) {
    std::vector<int> kept;
    for (int stop : route_.channels[c].stops) {
      const int alley = streets_.stops[stop].alley;
      if (alley < 0) {
        kept.push_back(stop);
        degree[c] += 2;              // a terminal keeps its run alive
        continue;
      }
      int a = 0;
      while (route_.alleys[a].alley != alley) ++a;
      const int one = find(c), two = find(channels + a);
      if (one == two) continue;      // would close a ring
      root_[std::max(one, two)] = std::min(one, two);
      kept.push_back(stop);
      joints.push_back({c, a, stop});
      ++degree[c];
      ++degree[channels + a];
    }
    route_.channels[c].stops = kept;
  }
  for (int a = 0; a < alleys; ++a) degree[channels + a] += 2 * static_cast<int>(route_.alleys[a].pins.size());
  for (bool changed = true; changed;) {
    changed = false;
    for (Joint& j : joints) {
      if (j.stop < 0) continue;
      if (degree[j.channel_use] > 1 && degree[channels + j.alley_use] > 1) continue;
      auto& stops = route_.channels[j.channel_use].stops;
      stops.erase(std::find(stops.begin(), stops.end(), j.stop));
      --degree[j.channel_use];
      --degree[channels + j.alley_use];
      j.stop = -1;
      changed = true;
    }
  }
  for (AlleyUse& use : route_.alleys) use.goes_up = use.goes_down = false;
  for (const Joint& j : joints)
    if (j.stop >= 0) (streets_.stops[j.stop].is_below ? route_.alleys[j.alley_use].goes_up
                                                      : route_.alleys[j.alley_use].goes_down) = true;
  std::erase_if(route_.channels, [](const ChannelUse& use) { return use.stops.empty(); });
  std::erase_if(route_.alleys, [](const AlleyUse& use) { return use.pins.empty() && !use.goes_up && !use.goes_down; });
  std::sort(route_.channels.begin(), route_.channels.end(),
            [](const ChannelUse& a, const ChannelUse& b) { return a.channel < b.channel; });
  std::sort(route_.alleys.begin(), route_.alleys.end(),
            [](const AlleyUse& a, const AlleyUse& b) { return a.alley < b.alley; });
}

/// Lower bound of a component's length, to route the short ones first.
Grid span_of(const Plan& plan, const Streets& s, const Component& component) {
  Grid x0 = INT32_MAX, x1 = INT32_MIN, y0 = INT32_MAX, y1 = INT32_MIN;
  for (int p : component.pins) {
    const int body = plan.pins[p].body;
    const Grid x = s.body_x[body] + offset_of(plan, p).x, y = s.row_y[plan.bodies[body].row] + offset_of(plan, p).y;
    x0 = std::min(x0, x), x1 = std::max(x1, x), y0 = std::min(y0, y), y1 = std::max(y1, y);
  }
  return x1 - x0 + y1 - y0;
}

}  // namespace

Traffic no_traffic(const Streets& streets) {
  Traffic t;
  t.through.assign(streets.stops.size(), 0);
  t.ending.assign(streets.stops.size(), 0);
  t.in_alley.assign(streets.alleys.size(), 0);
  return t;
}

void add_traffic(Traffic& traffic, const Streets& streets, const Route& route, int sign) {
  for (const AlleyUse& use : route.alleys) traffic.in_alley[use.alley] += sign;
  for (const ChannelUse& use : route.channels) {
    const bool is_pass = use.stops.size() == 2 && streets.stops[use.stops[0]].is_below != streets.stops[use.stops[1]].is_below;
    if (is_pass) traffic.through[use.stops[0]] += sign;
    else for (int s : use.stops) traffic.ending[s] += sign;
  }
}

Route route_component(const Plan& plan, const Streets& streets, const Traffic& traffic, int component) {
  Search search(plan, streets, traffic);
  Route route = search.grow(component);
  Pruner(streets, route).run();
  return route;
}

Routes route_all(const Plan& plan, const Streets& streets, int rounds) {
  std::vector<int> turn(plan.components.size());
  std::vector<std::tuple<int, Grid, int>> keys;
  for (int c = 0; c < static_cast<int>(plan.components.size()); ++c)
    keys.push_back({-static_cast<int>(plan.components[c].pins.size()), span_of(plan, streets, plan.components[c]), c});
  std::sort(keys.begin(), keys.end());
  Traffic traffic = no_traffic(streets);
  Routes routes;
  routes.of_component.resize(plan.components.size());
  for (int round = 0; round <= rounds; ++round)
    for (const auto& [pins, span, c] : keys) {
      if (round > 0) add_traffic(traffic, streets, routes.of_component[c], -1);
      routes.of_component[c] = route_component(plan, streets, traffic, c);
      add_traffic(traffic, streets, routes.of_component[c], 1);
    }
  return routes;
}

}  // namespace loomfolio::laying
