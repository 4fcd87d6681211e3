// SPDX-License-Identifier: MIT
#include "check/feed.h"

namespace loomfolio {

namespace {

/// Everything but what uses the current up. A ballast or a winding passes it on, a charger is a supply of its own.
bool conducts(const Build& build, const Bridge& bridge) {
  if (!bridge.inside.part.is_set()) return true;
  switch (inside_of(build, bridge.inside).type) {
    case InsideType::source:
    case InsideType::charger:
    case InsideType::load:
    case InsideType::lamp:
    case InsideType::motor:
    case InsideType::coil:
      return false;
    default:
      return true;
  }
}

bool is_left_open(const Facts& facts, InsideRef ref) {
  const Part& part = facts.build.part(ref.part);
  for (const Inside::Node& node : inside_of(facts.build, ref).nodes) {
    if (node.terminal < 0) continue;
    const auto k = static_cast<std::size_t>(node.terminal);
    const KindTerminal& terminal = facts.build.kind_of(part).terminals[k];
    if (terminal.may_stay_open && terminal.form != TerminalForm::body && facts.wires_at[part.terminals[k].at()].empty())
      return true;
  }
  return false;
}

}  // namespace

std::vector<PathPoint> live_points(const Facts& facts) {
  std::vector<PathPoint> live;
  each_inside(facts.build, [&](InsideRef ref, const Part&, const Inside& inside) {
    const bool gives = inside.type == InsideType::source || inside.type == InsideType::charger;
    if (gives && inside.nodes.size() >= 2)
      live.push_back(facts.paths.points(facts.build, ref)[facts.build.electrics.is_positive_earth ? 1 : 0]);
  });
  return live;
}

Poles reach_poles(const Facts& facts) {
  Poles poles;
  std::vector<PathPoint> earthed = {facts.paths.frame};
  each_inside(facts.build, [&](InsideRef ref, const Part&, const Inside& inside) {
    if (inside.type != InsideType::source || inside.nodes.size() < 2) return;
    poles.any_source = true;
    earthed.push_back(facts.paths.points(facts.build, ref)[facts.build.electrics.is_positive_earth ? 0 : 1]);
  });
  const auto passes = [&](const Bridge& bridge) { return conducts(facts.build, bridge); };
  poles.from_live = reach(facts.paths, live_points(facts), passes);
  poles.from_earth = reach(facts.paths, earthed, passes);
  return poles;
}

Feed feed_of(const Facts& facts, const Poles& poles, InsideRef ref) {
  const std::vector<PathPoint> points = facts.paths.points(facts.build, ref);
  if (points.size() < 2 || is_left_open(facts, ref)) return Feed::unused;
  const auto a = static_cast<std::size_t>(points[0]), b = static_cast<std::size_t>(points[1]);
  const bool live_a = poles.from_live[a], live_b = poles.from_live[b];
  const bool earth_a = poles.from_earth[a], earth_b = poles.from_earth[b];
  if ((live_a && earth_b) || (live_b && earth_a)) return Feed::whole;
  const bool live = live_a || live_b, earth = earth_a || earth_b;
  if (live && earth) return Feed::one_sided;
  if (live) return Feed::no_return;
  return earth ? Feed::no_supply : Feed::nothing;
}

std::string say_missing(Feed feed) {
  switch (feed) {
    case Feed::no_supply:
      return " has no way to the supply";
    case Feed::no_return:
      return " has no way to earth";
    case Feed::one_sided:
      return " has supply and earth at the same end, and nothing at the other";
    case Feed::nothing:
      return " has no way to the supply nor to earth";
    case Feed::whole:
    case Feed::unused:
      break;
  }
  return {};
}

bool is_wired(const Facts& facts, InsideRef ref) {
  const Part& part = facts.build.part(ref.part);
  for (const Inside::Node& node : inside_of(facts.build, ref).nodes)
    if (node.terminal >= 0 && facts.wires_at[part.terminals[static_cast<std::size_t>(node.terminal)].at()].empty())
      return false;
  return true;
}

std::vector<InsideRef> loads_never_on(const Facts& facts) {
  std::vector<InsideRef> never;
  const std::vector<SettledSituation> all = settled_situations(facts);
  if (all.empty() || all.size() != facts.build.situations.size()) return never;
  const Poles poles = reach_poles(facts);
  each_inside(facts.build, [&](InsideRef ref, const Part&, const Inside& inside) {
    const bool is_load = inside.type == InsideType::load || inside.type == InsideType::lamp ||
                         inside.type == InsideType::motor || inside.type == InsideType::coil;
    if (!is_load || !is_wired(facts, ref) || feed_of(facts, poles, ref) != Feed::whole) return;
    for (const SettledSituation& settled : all)
      if (settled.solution->insides[ref.part.at()][static_cast<std::size_t>(ref.inside)].is_on) return;
    never.push_back(ref);
  });
  return never;
}

bool is_starter_cable(const Wire& wire) { return !wire.is_auto_size && wire.area.number() * size_tolerance >= 8; }

bool is_starter_motor(const Build& build, InsideRef ref) {
  const Inside& inside = inside_of(build, ref);
  if (inside.type != InsideType::motor) return false;
  return inside.only_when == "cranking" || build.kind_of(build.part(ref.part)).group == "starting";
}

bool feeds_starter(const Facts& facts, PathPoint point) {
  bool feeds = false;
  const auto net = [&](PathPoint p) { return facts.paths.net[static_cast<std::size_t>(p)]; };
  each_inside(facts.build, [&](InsideRef ref, const Part&, const Inside& inside) {
    if (inside.type != InsideType::motor || !is_starter_motor(facts.build, ref)) return;
    for (const PathPoint end : facts.paths.points(facts.build, ref))
      if (net(end) == net(point) && !facts.paths.is_earthed(end)) feeds = true;
  });
  return feeds;
}

}  // namespace loomfolio
