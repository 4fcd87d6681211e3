// SPDX-License-Identifier: MIT
#include "sheets/feed_way.h"

#include <algorithm>
#include <cmath>
#include <set>

namespace loomfolio {
namespace {

constexpr double least_current = 0.01;  // A: less is a stray current
constexpr double least_step = 0.05;     // V: a closed contact's ends differ by less, whatever way its current goes

enum class Direction { upstream, downstream };

class Walker {
 public:
  Walker(const Build& build, const Paths& paths, const Situation& situation, const Solution& solution)
      : build_(build), paths_(paths), situation_(situation), solution_(solution) {}

  std::vector<InsideRef> walk(InsideRef consumer) {
    from_element(consumer);
    return {met_.begin(), met_.end()};
  }

 private:
  void from_element(InsideRef ref) {
    const std::vector<PathPoint> ends = paths_.points(build_, ref);
    if (ends.size() < 2 || !walked_.insert(ref).second) return;
    const bool enters_first = state_of(ref).amperes.number() >= 0;
    follow(ends[enters_first ? 0 : 1], Direction::upstream);
    follow(ends[enters_first ? 1 : 0], Direction::downstream);
  }

  const InsideState& state_of(InsideRef ref) const {
    return solution_.insides[ref.part.at()][static_cast<std::size_t>(ref.inside)];
  }

  void follow(PathPoint start, Direction direction) {
    std::set<PathPoint> seen{start};
    std::vector<PathPoint> open{start};
    while (!open.empty()) {
      const PathPoint here = open.back();
      open.pop_back();
      if (paths_.is_earthed(here) || here == paths_.frame) continue;
      for (const int index : paths_.at[static_cast<std::size_t>(here)]) {
        const Bridge& bridge = paths_.bridges[static_cast<std::size_t>(index)];
        const PathPoint there = bridge.other(here);
        if (!passes(bridge, here, there, direction)) continue;
        note(bridge);
        if (seen.insert(there).second) open.push_back(there);
      }
    }
  }

  bool passes(const Bridge& bridge, PathPoint here, PathPoint there, Direction direction) const {
    if (bridge.wire.is_set()) return carries_towards(bridge, direction == Direction::upstream ? here : there);
    if (bridge.inside.inside < 0) return false;  // a bolt to the frame ends the way
    const Inside& inside = inside_of(build_, bridge.inside);
    if (inside.type == InsideType::link) return true;
    const bool is_closed =
        inside.type == InsideType::switch_ ? is_joined(bridge)
        : inside.type == InsideType::contact || inside.type == InsideType::output || inside.type == InsideType::diode
            ? state_of(bridge.inside).is_on || inside.type == InsideType::diode
            : false;
    if (!is_closed || std::abs(state_of(bridge.inside).amperes.number()) < least_current) return false;
    return falls(direction == Direction::upstream ? there : here, direction == Direction::upstream ? here : there);
  }

  /// The wire's current arrives at that point.
  bool carries_towards(const Bridge& bridge, PathPoint point) const {
    const double amperes = solution_.wire_amperes[bridge.wire.at()].number();
    const bool ends_here = build_.wire(bridge.wire).to.index == point;
    return (ends_here ? amperes : -amperes) > least_current;
  }

  /// Volts do not rise on the way; inner points have none that is known.
  bool falls(PathPoint from, PathPoint to) const {
    const auto count = static_cast<PathPoint>(solution_.terminal_volts.size());
    if (from >= count || to >= count) return true;
    const double drop = solution_.terminal_volts[static_cast<std::size_t>(from)].number() -
                        solution_.terminal_volts[static_cast<std::size_t>(to)].number();
    return !(drop < -least_step);
  }

  bool is_joined(const Bridge& bridge) const {
    const Inside& element = inside_of(build_, bridge.inside);
    int position = element.rest_position;
    for (const Setting& setting : situation_.settings)
      if (setting.actuator == bridge.inside) position = setting.position;
    const std::vector<PathPoint> points = paths_.points(build_, bridge.inside);
    for (const std::vector<int>& group : element.positions[static_cast<std::size_t>(position)].joined) {
      const auto holds = [&](PathPoint point) {
        return std::any_of(group.begin(), group.end(),
                           [&](int node) { return points[static_cast<std::size_t>(node)] == point; });
      };
      if (holds(bridge.a) && holds(bridge.b)) return true;
    }
    return false;
  }

  void note(const Bridge& bridge) {
    if (bridge.inside.inside < 0) return;
    const Inside& inside = inside_of(build_, bridge.inside);
    if (inside.type == InsideType::switch_ || inside.type == InsideType::contact || inside.type == InsideType::output)
      met_.insert(bridge.inside);
    if (inside.type != InsideType::contact || inside.coil.empty()) return;
    const std::vector<Inside>& insides = build_.part(bridge.inside.part).insides;
    for (std::size_t i = 0; i < insides.size(); ++i)
      if (insides[i].id == inside.coil && insides[i].type == InsideType::coil)
        from_element({bridge.inside.part, static_cast<int>(i)});
  }

  const Build& build_;
  const Paths& paths_;
  const Situation& situation_;
  const Solution& solution_;
  std::set<InsideRef> met_, walked_;
};

}  // namespace

std::vector<InsideRef> find_feed_way(const Build& build, const Paths& paths, const Situation& situation,
                                     const Solution& solution, InsideRef consumer) {
  return Walker(build, paths, situation, solution).walk(consumer);
}

}  // namespace loomfolio
