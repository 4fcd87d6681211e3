// SPDX-License-Identifier: MIT
#include "check/ways.h"

#include <algorithm>
#include <deque>
#include <limits>

#include "base/text.h"

namespace loomfolio {

namespace {

constexpr int cost_through_load = 1, cost_open = 100;

bool joins_in_position(const Facts& facts, const Situation& situation, const Bridge& bridge) {
  const Inside& inside = inside_of(facts.build, bridge.inside);
  const int position = position_of(facts.build, situation, bridge.inside);
  if (position < 0 || static_cast<std::size_t>(position) >= inside.positions.size()) return false;
  const std::vector<PathPoint> points = facts.paths.points(facts.build, bridge.inside);
  for (const std::vector<int>& group : inside.positions[static_cast<std::size_t>(position)].joined) {
    const auto has = [&](PathPoint p) {
      return std::any_of(group.begin(), group.end(), [&](int n) { return points[static_cast<std::size_t>(n)] == p; });
    };
    if (has(bridge.a) && has(bridge.b)) return true;
  }
  return false;
}

int cost_of(Step step) {
  switch (step) {
    case Step::closed:
      return 0;
    case Step::through_load:
      return cost_through_load;
    case Step::open:
      return cost_open;
    case Step::barred:
      break;
  }
  return std::numeric_limits<int>::max();
}

/// Points where a way may end: poles of batteries, the live pole of a generator that gives, the frame where no battery
/// is.
std::vector<bool> poles(const Seen& seen, Toward toward) {
  const Facts& facts = seen.facts;
  std::vector<bool> is_pole(facts.paths.at.size(), false);
  bool any = false;
  each_inside(facts.build, [&](InsideRef ref, const Part&, const Inside& inside) {
    const bool is_source = inside.type == InsideType::source;
    const bool gives = inside.type == InsideType::charger && toward == Toward::supply &&
                       seen.solution.insides[ref.part.at()][static_cast<std::size_t>(ref.inside)].is_on;
    if ((!is_source && !gives) || inside.nodes.size() < 2) return;
    const bool first = (toward == Toward::supply) != facts.build.electrics.is_positive_earth;
    is_pole[static_cast<std::size_t>(facts.paths.points(facts.build, ref)[first ? 0 : 1])] = true;
    any = any || is_source;
  });
  if (!any && toward == Toward::earth) is_pole[static_cast<std::size_t>(facts.paths.frame)] = true;
  return is_pole;
}

struct Search {
  std::vector<int> cost, by;  ///< by point: cheapest cost, and the bridge that led there
};

/// Dijkstra over small whole costs, kept in order by a deque of points sorted by cost: ties go to the point found
/// first.
Search search_from(const Seen& seen, PathPoint from, InsideRef load) {
  const Paths& paths = seen.facts.paths;
  constexpr int unreached = std::numeric_limits<int>::max();
  Search search{std::vector<int>(paths.at.size(), unreached), std::vector<int>(paths.at.size(), -1)};
  search.cost[static_cast<std::size_t>(from)] = 0;
  std::deque<std::pair<int, PathPoint>> open = {{0, from}};
  while (!open.empty()) {
    const auto [cost, here] = open.front();
    open.pop_front();
    if (cost > search.cost[static_cast<std::size_t>(here)]) continue;
    const bool is_home = paths.is_earthed(here) || paths.is_live(here);
    for (const int b : paths.at[static_cast<std::size_t>(here)]) {
      const Bridge& bridge = paths.bridges[static_cast<std::size_t>(b)];
      if (bridge.inside.part.is_set() && bridge.inside == load) continue;
      const Step step = step_of(seen, bridge);
      // Current that comes to earth goes home by metal, and takes no other load on its way to the supply.
      if (step == Step::barred || (is_home && !is_plain_metal(seen.facts.build, bridge))) continue;
      const auto next = static_cast<std::size_t>(bridge.other(here));
      const int next_cost = cost + cost_of(step);
      if (next_cost >= search.cost[next]) continue;
      search.cost[next] = next_cost;
      search.by[next] = b;
      const std::pair<int, PathPoint> entry{next_cost, static_cast<PathPoint>(next)};
      open.insert(std::upper_bound(open.begin(), open.end(), entry), entry);
    }
  }
  return search;
}

Way way_to(const Seen& seen, const Search& search, PathPoint from, PathPoint to) {
  const Paths& paths = seen.facts.paths;
  Way way;
  way.found = true;
  for (PathPoint here = to; here != from;) {
    const int b = search.by[static_cast<std::size_t>(here)];
    way.bridges.push_back(b);
    here = paths.bridges[static_cast<std::size_t>(b)].other(here);
  }
  std::reverse(way.bridges.begin(), way.bridges.end());
  for (const int b : way.bridges) {
    const Bridge& bridge = paths.bridges[static_cast<std::size_t>(b)];
    const Step step = step_of(seen, bridge);
    if (step == Step::open) way.open.push_back(bridge.inside);
    if (step == Step::through_load) way.loads.push_back(bridge.inside);
  }
  return way;
}

int price(const Way& way) {
  if (!way.found) return cost_open * 1000;
  return static_cast<int>(way.open.size()) * cost_open + static_cast<int>(way.loads.size()) * cost_through_load;
}

}  // namespace

int position_of(const Build& build, const Situation& situation, InsideRef ref) {
  for (const Setting& setting : situation.settings)
    if (setting.actuator == ref) return setting.position;
  return inside_of(build, ref).rest_position;
}

Step step_of(const Seen& seen, const Bridge& bridge) {
  if (!bridge.inside.part.is_set()) return Step::closed;
  const InsideState& state =
      seen.solution.insides[bridge.inside.part.at()][static_cast<std::size_t>(bridge.inside.inside)];
  switch (inside_of(seen.facts.build, bridge.inside).type) {
    case InsideType::source:
    case InsideType::charger:
      return Step::barred;
    case InsideType::switch_:
      return joins_in_position(seen.facts, seen.situation, bridge) ? Step::closed : Step::open;
    case InsideType::contact:
    case InsideType::output:
      return state.is_on ? Step::closed : Step::open;
    case InsideType::load:
    case InsideType::lamp:
    case InsideType::motor:
    case InsideType::coil:
      return Step::through_load;
    default:
      return Step::closed;
  }
}

Way find_way(const Seen& seen, PathPoint from, Toward toward, InsideRef load) {
  const Search search = search_from(seen, from, load);
  const std::vector<bool> is_pole = poles(seen, toward);
  int best = std::numeric_limits<int>::max();
  PathPoint end = -1;
  for (std::size_t p = 0; p < is_pole.size(); ++p)
    if (is_pole[p] && search.cost[p] < best) {
      best = search.cost[p];
      end = static_cast<PathPoint>(p);
    }
  return end < 0 ? Way{} : way_to(seen, search, from, end);
}

LoadWays find_load_ways(const Seen& seen, InsideRef load) {
  const std::vector<PathPoint> points = seen.facts.paths.points(seen.facts.build, load);
  if (points.size() < 2) return {};
  LoadWays straight{find_way(seen, points[0], Toward::supply, load), find_way(seen, points[1], Toward::earth, load)};
  LoadWays turned{find_way(seen, points[1], Toward::supply, load), find_way(seen, points[0], Toward::earth, load)};
  const bool turned_is_cheaper =
      price(turned.to_supply) + price(turned.to_earth) < price(straight.to_supply) + price(straight.to_earth);
  return turned_is_cheaper ? turned : straight;
}

std::string say_way(const Build& build, const Paths& paths, const Way& way) {
  std::vector<std::string> names;
  for (const int b : way.bridges) {
    const Bridge& bridge = paths.bridges[static_cast<std::size_t>(b)];
    if (!bridge.inside.part.is_set() || inside_of(build, bridge.inside).type == InsideType::link) continue;
    const std::string name = say_inside(build, bridge.inside);
    if (names.empty() || names.back() != name) names.push_back(name);
  }
  return join(names, ", ");
}

std::string say_way_with_wires(const Build& build, const Paths& paths, const Way& way) {
  std::vector<std::string> names, wires;
  const auto put_wires = [&] {
    if (!wires.empty()) names.push_back((wires.size() == 1 ? "wire " : "wires ") + join(wires, ", "));
    wires.clear();
  };
  for (const int b : way.bridges) {
    const Bridge& bridge = paths.bridges[static_cast<std::size_t>(b)];
    if (bridge.wire.is_set()) wires.push_back("`" + build.wire(bridge.wire).id + "`");
    if (!bridge.inside.part.is_set() || inside_of(build, bridge.inside).type == InsideType::link) continue;
    put_wires();
    const std::string name = say_inside(build, bridge.inside);
    if (names.empty() || names.back() != name) names.push_back(name);
  }
  put_wires();
  return join(names, ", ");
}

}  // namespace loomfolio
