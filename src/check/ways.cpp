// SPDX-License-Identifier: MIT
#include "check/ways.h"

#include <algorithm>
#include <functional>
#include <limits>
#include <queue>

#include "base/text.h"

namespace loomfolio {

namespace {

constexpr int cost_through_load = 1, cost_open = 100;
constexpr int no_way = std::numeric_limits<int>::max();
constexpr std::uint8_t supply_pole = 1, earth_pole = 2;

bool joins_in_position(const Facts& facts, const Situation& situation, const Bridge& bridge) {
  const Inside& inside = inside_of(facts.build, bridge.inside);
  const int position = position_in(facts.build, situation, bridge.inside);
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
  return no_way;
}

int price(const Way& way) {
  if (!way.found) return cost_open * 1000;
  return static_cast<int>(way.open.size()) * cost_open + static_cast<int>(way.loads.size()) * cost_through_load;
}

}  // namespace

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

// A way ends at a pole of a battery, at the live pole of a generator that gives, on the frame where no battery is.
WayFinder::WayFinder(const Seen& seen) : seen_(seen) {
  const Facts& facts = seen.facts;
  for (const Bridge& bridge : facts.paths.bridges) steps_.push_back(step_of(seen, bridge));
  is_pole_.assign(facts.paths.at.size(), 0);
  cost_.assign(facts.paths.at.size(), no_way);
  by_.assign(facts.paths.at.size(), -1);
  const auto add_pole = [&](PathPoint point, Toward toward) {
    is_pole_[static_cast<std::size_t>(point)] |= toward == Toward::supply ? supply_pole : earth_pole;
    PathPoint& first = toward == Toward::supply ? first_supply_ : first_earth_;
    if (first < 0 || point < first) first = point;
  };
  bool any = false;
  each_inside(facts.build, [&](InsideRef ref, const Part&, const Inside& inside) {
    const bool is_source = inside.type == InsideType::source;
    const bool gives = inside.type == InsideType::charger &&
                       seen.solution.insides[ref.part.at()][static_cast<std::size_t>(ref.inside)].is_on;
    if ((!is_source && !gives) || inside.nodes.size() < 2) return;
    const std::vector<PathPoint> points = facts.paths.points(facts.build, ref);
    const bool is_turned = facts.build.electrics.is_positive_earth;
    add_pole(points[is_turned ? 1 : 0], Toward::supply);
    if (is_source) add_pole(points[is_turned ? 0 : 1], Toward::earth);
    any = any || is_source;
  });
  if (!any) add_pole(facts.paths.frame, Toward::earth);
}

// Dijkstra over small whole costs; of points as cheap the lowest comes first. It ends when no cheaper pole can come, nor one as
// cheap with a lower number.
WayFinder::Ends WayFinder::search_from(PathPoint from, InsideRef load) {
  const Paths& paths = seen_.facts.paths;
  using Entry = std::pair<int, PathPoint>;
  std::priority_queue<Entry, std::vector<Entry>, std::greater<>> open;
  const auto reach = [&](PathPoint point, int cost, int by) {
    const auto p = static_cast<std::size_t>(point);
    if (cost >= cost_[p]) return;
    if (cost_[p] == no_way) reached_.push_back(point);
    cost_[p] = cost;
    by_[p] = by;
    open.emplace(cost, point);
  };
  struct Best {
    PathPoint pole = -1;
    int cost = no_way;
  } supply, earth;
  const auto is_done = [](const Best& best, PathPoint first, int cost) {
    return first < 0 || (best.pole >= 0 && (cost > best.cost || best.pole == first));
  };
  reach(from, 0, -1);
  while (!open.empty()) {
    const auto [cost, here] = open.top();
    open.pop();
    const auto h = static_cast<std::size_t>(here);
    if (cost > cost_[h]) continue;
    for (const auto& [pole, best] : {std::pair(supply_pole, &supply), std::pair(earth_pole, &earth)})
      if ((is_pole_[h] & pole) != 0 && (cost < best->cost || (cost == best->cost && here < best->pole)))
        *best = {here, cost};
    if (is_done(supply, first_supply_, cost) && is_done(earth, first_earth_, cost)) break;
    const bool is_home = paths.is_earthed(here) || paths.is_live(here);
    for (const int b : paths.at[h]) {
      const Bridge& bridge = paths.bridges[static_cast<std::size_t>(b)];
      if (bridge.inside.part.is_set() && bridge.inside == load) continue;
      const Step step = steps_[static_cast<std::size_t>(b)];
      // Current that comes to earth goes home by metal, and takes no other load on its way to the supply.
      if (step == Step::barred || (is_home && !is_plain_metal(seen_.facts.build, bridge))) continue;
      reach(bridge.other(here), cost + cost_of(step), b);
    }
  }
  Ends ends;
  if (supply.pole >= 0) ends.supply = way_to(from, supply.pole);
  if (earth.pole >= 0) ends.earth = way_to(from, earth.pole);
  for (const PathPoint point : reached_)
    cost_[static_cast<std::size_t>(point)] = no_way, by_[static_cast<std::size_t>(point)] = -1;
  reached_.clear();
  return ends;
}

Way WayFinder::way_to(PathPoint from, PathPoint to) const {
  const Paths& paths = seen_.facts.paths;
  Way way;
  way.found = true;
  for (PathPoint here = to; here != from;) {
    const int b = by_[static_cast<std::size_t>(here)];
    way.bridges.push_back(b);
    here = paths.bridges[static_cast<std::size_t>(b)].other(here);
  }
  std::reverse(way.bridges.begin(), way.bridges.end());
  for (const int b : way.bridges) {
    const Step step = steps_[static_cast<std::size_t>(b)];
    if (step == Step::open) way.open.push_back(paths.bridges[static_cast<std::size_t>(b)].inside);
    if (step == Step::through_load) way.loads.push_back(paths.bridges[static_cast<std::size_t>(b)].inside);
  }
  return way;
}

LoadWays WayFinder::find(InsideRef load) {
  const std::vector<PathPoint> points = seen_.facts.paths.points(seen_.facts.build, load);
  if (points.size() < 2) return {};
  Ends first = search_from(points[0], load), second = search_from(points[1], load);
  LoadWays straight{std::move(first.supply), std::move(second.earth)};
  LoadWays turned{std::move(second.supply), std::move(first.earth)};
  const bool turned_is_cheaper =
      price(turned.to_supply) + price(turned.to_earth) < price(straight.to_supply) + price(straight.to_earth);
  return turned_is_cheaper ? turned : straight;
}

LoadWays find_load_ways(const Seen& seen, InsideRef load) { return WayFinder(seen).find(load); }

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
