// SPDX-License-Identifier: MIT
// A wire changes when it starts or stops to carry current, or carries another quarter of it. From wires that start or
// stop, and from consumers that change, the current is followed up to where it comes from and down to where it goes:
// wires only the way their current runs, parts through whatever joins their terminals as they stand. So siblings that
// branch off a common feed stay out of the story. A contact on the way brings its coil along.
#include "sheets/situation_paths.h"

#include <algorithm>
#include <cmath>

#include "check/paths.h"
#include "sheets/situation_state.h"

namespace loomfolio {
namespace {

constexpr double changed_share = 0.25, worth_telling = 0.01;  // of the wire's own current; of the greatest change
constexpr double fed_share = 0.9;                             // of what leaves a splice

enum class Way : std::uint8_t { up, down };
enum class Coils : std::uint8_t { follow, leave };

bool has_changed(double before, double after) {
  const double most = std::max(std::abs(before), std::abs(after));
  return most >= least_flow.number() && std::abs(before - after) > changed_share * most;
}

bool is_consumer_type(InsideType type) {
  switch (type) {
    case InsideType::load:
    case InsideType::lamp:
    case InsideType::motor:
    case InsideType::coil:
    case InsideType::resistor:
      return true;
    default:
      return false;
  }
}

/// Follows current through one state.
class Tracer {
 public:
  Tracer(const Build& build, const Paths& paths, const SolvedState& state, std::vector<bool>& story,
         Coils coils = Coils::follow)
      : build_(build), paths_(paths), state_(state), story_(story), coils_(coils) {
    joined_.resize(static_cast<std::size_t>(paths.frame) + 1);
    for (std::size_t p = 0; p < build.parts.size(); ++p)
      for (std::size_t i = 0; i < build.parts[p].insides.size(); ++i) note_joints(p, i);
    for (const bool is_up : {true, false}) seen_[is_up ? 0 : 1].assign(joined_.size(), false);
  }

  void follow(PathPoint start, Way way) {
    std::vector<PathPoint> open{start};
    std::vector<bool>& seen = seen_[way == Way::up ? 0 : 1];
    while (!open.empty()) {
      const PathPoint at = open.back();
      open.pop_back();
      if (at < 0 || at == paths_.frame || seen[static_cast<std::size_t>(at)]) continue;
      seen[static_cast<std::size_t>(at)] = true;
      if (is_earth(at)) continue;  // the frame takes it from here; what else is bolted there is another story
      for (const Joint& joint : joined_[static_cast<std::size_t>(at)]) {
        open.push_back(joint.other);
        if (coils_ == Coils::follow && joint.coil.part.is_set()) follow_element(joint.coil);
      }
      for (const int b : paths_.at[static_cast<std::size_t>(at)])
        follow_wire(paths_.bridges[static_cast<std::size_t>(b)], at, way, open);
    }
  }

  bool has_met(PathPoint point, Way way) const {
    return seen_[way == Way::up ? 0 : 1][static_cast<std::size_t>(point)];
  }
  /// Nothing is followed past that point.
  void bar(PathPoint point, Way way) { seen_[way == Way::up ? 0 : 1][static_cast<std::size_t>(point)] = true; }

  /// From both ends of an element.
  void follow_element(InsideRef ref) {
    for (const PathPoint point : paths_.points(build_, ref)) {
      follow(point, Way::up);
      follow(point, Way::down);
    }
  }

  void follow_from_wire(WireId wire) {
    const double amperes = state_.solution.wire_amperes[wire.at()].number();
    if (std::abs(amperes) < least_flow.number()) return;
    const TerminalId source = amperes > 0 ? build_.wire(wire).from : build_.wire(wire).to;
    const TerminalId drain = amperes > 0 ? build_.wire(wire).to : build_.wire(wire).from;
    follow(source.index, Way::up);
    follow(drain.index, Way::down);
  }

 private:
  struct Joint {
    PathPoint other = -1;
    InsideRef coil;  ///< that holds it
  };

  bool is_earth(PathPoint point) const {
    return static_cast<std::size_t>(point) < build_.terminals.size() &&
           build_.terminals[static_cast<std::size_t>(point)].owner == OwnerType::earth;
  }

  void note_joints(std::size_t p, std::size_t i) {
    const InsideRef ref{PartId{static_cast<std::int32_t>(p)}, static_cast<int>(i)};
    const Inside& inside = build_.parts[p].insides[i];
    InsideRef coil;
    if (inside.type == InsideType::contact)
      for (std::size_t c = 0; c < build_.parts[p].insides.size(); ++c)
        if (build_.parts[p].insides[c].type == InsideType::coil && build_.parts[p].insides[c].id == inside.coil)
          coil = {ref.part, static_cast<int>(c)};
    const auto terminals = static_cast<int>(build_.parts[p].terminals.size());
    const auto point = [&](int node) {
      return node < terminals ? build_.parts[p].terminals[static_cast<std::size_t>(node)].index
                              : paths_.first_inner[p] + node - terminals;
    };
    for (const NodeJoint& joint : joints_of(build_, state_.situation, state_.solution, ref)) {
      joined_[static_cast<std::size_t>(point(joint.a))].push_back({point(joint.b), coil});
      joined_[static_cast<std::size_t>(point(joint.b))].push_back({point(joint.a), coil});
    }
  }

  void follow_wire(const Bridge& bridge, PathPoint at, Way way, std::vector<PathPoint>& open) {
    if (!bridge.wire.is_set()) return;
    const double amperes = state_.solution.wire_amperes[bridge.wire.at()].number();
    if (std::abs(amperes) < least_flow.number() || is_stray_flow(build_, state_.solution, bridge.wire)) return;
    const TerminalId from = build_.wire(bridge.wire).from;
    const bool leaves = (from.index == at) == (amperes > 0);
    if (leaves != (way == Way::down)) return;
    story_[bridge.wire.at()] = true;
    open.push_back(bridge.other(at));
  }

  const Build& build_;
  const Paths& paths_;
  const SolvedState& state_;
  std::vector<bool>& story_;
  Coils coils_;
  std::vector<std::vector<Joint>> joined_;
  std::vector<bool> seen_[2];
};

double amperes_of(const SolvedState& state, InsideRef element) {
  return state.solution.insides[element.part.at()][static_cast<std::size_t>(element.inside)].amperes.number();
}

/// Parts with an element of which `holds` is true, in the order of the build.
template <class Holds>
std::vector<PartId> parts_where(const Build& build, const Holds& holds) {
  std::vector<PartId> parts;
  for (std::size_t p = 0; p < build.parts.size(); ++p)
    for (std::size_t i = 0; i < build.parts[p].insides.size(); ++i) {
      const InsideRef ref{PartId{static_cast<std::int32_t>(p)}, static_cast<int>(i)};
      if (!holds(ref, build.parts[p].insides[i].type)) continue;
      parts.push_back(ref.part);
      break;
    }
  return parts;
}

double change_in(const SituationPair& pair, WireId wire) {
  return std::abs(pair.before.solution.wire_amperes[wire.at()].number() -
                  pair.after.solution.wire_amperes[wire.at()].number());
}

double greatest_change(const Build& build, const SituationPair& pair) {
  double greatest = 0;
  for (std::size_t w = 0; w < build.wires.size(); ++w)
    greatest = std::max(greatest, change_in(pair, WireId{static_cast<std::int32_t>(w)}));
  return greatest;
}

/// A little current that volts between two earths drive through whatever joins them: no one's doing, and no story.
bool is_stray(const Build& build, const SituationPair& pair, WireId wire) {
  const auto ends_hold = [&](const Solution& solution) {
    for (const TerminalId end : {build.wire(wire).from, build.wire(wire).to})
      if (std::abs(solution.terminal_volts[end.at()].number()) >= waiting_share * build.electrics.nominal.number())
        return true;
    return false;
  };
  if (ends_hold(pair.before.solution) || ends_hold(pair.after.solution)) return false;
  const auto is_without_flow = [&](const Solution& solution) {
    return flow_in_wire(solution, wire) < least_flow || is_stray_flow(build, solution, wire);
  };
  return change_in(pair, wire) < worth_telling * greatest_change(build, pair) ||
         (is_without_flow(pair.before.solution) && is_without_flow(pair.after.solution));
}

bool is_changed_wire(const Build& build, const SituationPair& pair, WireId wire, StoryWidth width) {
  if (is_stray(build, pair, wire)) return false;
  const Liveness before = liveness_of(build, pair.before.solution, wire),
                 after = liveness_of(build, pair.after.solution, wire);
  if (width == StoryWidth::waiting && before != after) return true;
  if ((before == Liveness::flowing) != (after == Liveness::flowing)) return true;
  // When a starter pulls the battery down, every lamp takes a little less: that is not what the page is about.
  return change_in(pair, wire) >= worth_telling * greatest_change(build, pair) &&
         has_changed(pair.before.solution.wire_amperes[wire.at()].number(),
                     pair.after.solution.wire_amperes[wire.at()].number());
}

bool has_element(const Build& build, TerminalId id, InsideType type) {
  const Terminal& terminal = build.terminal(id);
  if (terminal.owner != OwnerType::part) return false;
  const Part& part = build.parts[static_cast<std::size_t>(terminal.owner_index)];
  return std::any_of(part.insides.begin(), part.insides.end(),
                     [type](const Inside& inside) { return inside.type == type; });
}

bool flows_ever(const Build& build, const SituationPair& pair, WireId id) {
  return liveness_of(build, pair.before.solution, id) == Liveness::flowing ||
         liveness_of(build, pair.after.solution, id) == Liveness::flowing;
}

/// Whether the part is at an end of a wire of the story.
bool is_part_told(const Build& build, const std::vector<bool>& story, TerminalId of) {
  if (build.terminal(of).owner != OwnerType::part) return false;
  for (std::size_t w = 0; w < build.wires.size(); ++w)
    if (story[w])
      for (const TerminalId end : {build.wires[w].from, build.wires[w].to})
        if (build.terminal(end).owner == OwnerType::part &&
            build.terminal(end).owner_index == build.terminal(of).owner_index)
          return true;
  return false;
}

/// A battery and a charger are drawn with all wires that carry their current: the strap to the frame closes every
/// circuit, generator leads make the charger's current.
void add_common(const Build& build, const SituationPair& pair, std::vector<bool>& story) {
  const auto alternates = [&](std::size_t w) {
    return w < pair.after.solution.wire_alternating.size() && pair.after.solution.wire_alternating[w] >= least_flow;
  };
  // A wire may bring the battery into the story whose other wires then belong to it as well.
  for (bool is_grown = true; is_grown;) {
    is_grown = false;
    const std::vector<bool> told = story;
    for (std::size_t w = 0; w < build.wires.size(); ++w) {
      if (story[w] || !flows_ever(build, pair, WireId{static_cast<std::int32_t>(w)})) continue;
      for (const TerminalId end : {build.wires[w].from, build.wires[w].to}) {
        const bool is_own = has_element(build, end, InsideType::source) || has_element(build, end, InsideType::charger);
        if ((is_own || alternates(w)) && is_part_told(build, told, end)) story[w] = is_grown = true;
      }
    }
  }
}

/// The wires of a switch that is moved stand in the story, though nothing may flow in them: who reads that it is set
/// looks for it.
void add_moved_switches(const Build& build, const SituationPair& pair, std::vector<bool>& story) {
  for (const MovedSwitch& moved : pair.moved) {
    const auto part = moved.actuator.part;
    std::vector<std::size_t> own;
    bool is_told = false;
    for (std::size_t w = 0; w < build.wires.size(); ++w)
      for (const TerminalId end : {build.wires[w].from, build.wires[w].to}) {
        const Terminal& terminal = build.terminal(end);
        if (terminal.owner != OwnerType::part || terminal.owner_index != part.index) continue;
        const std::vector<Inside::Node>& nodes = inside_of(build, moved.actuator).nodes;
        if (std::none_of(nodes.begin(), nodes.end(),
                         [&](const Inside::Node& node) { return node.terminal == terminal.kind_terminal; }))
          continue;
        own.push_back(w);
        is_told = is_told || story[w];
      }
    if (is_told) continue;
    for (const std::size_t w : own) story[w] = true;
  }
}

/// Consumers that take another current than before, in order.
std::vector<InsideRef> changed_consumers(const Build& build, const SituationPair& pair) {
  std::vector<InsideRef> found;
  const double worth = worth_telling * greatest_change(build, pair);
  for (std::size_t p = 0; p < build.parts.size(); ++p)
    for (std::size_t i = 0; i < build.parts[p].insides.size(); ++i) {
      if (!is_consumer_type(build.parts[p].insides[i].type)) continue;
      const InsideState &was = pair.before.solution.insides[p][i], &is = pair.after.solution.insides[p][i];
      const double before = was.amperes.number(), after = is.amperes.number();
      const double most_volts = std::max(std::abs(was.volts.number()), std::abs(is.volts.number()));
      if (most_volts < waiting_share * build.electrics.nominal.number()) continue;
      const bool starts_or_stops = (std::abs(before) < least_flow.number()) != (std::abs(after) < least_flow.number());
      if (has_changed(before, after) && (starts_or_stops || std::abs(before - after) >= worth))
        found.push_back({PartId{static_cast<std::int32_t>(p)}, static_cast<int>(i)});
    }
  return found;
}

/// Of all changes, those of the consumers in the share alone; of a whole story, those of wires as well.
void trace_changes(const Build& build, const Paths& paths, const SituationPair& pair, StoryWidth width,
                   StoryShare share, std::vector<bool>& story) {
  const std::vector<InsideRef> consumers = changed_consumers(build, pair);
  for (const SolvedState* state : {&pair.before, &pair.after}) {
    Tracer tracer(build, paths, *state, story);
    for (std::size_t w = 0; w < build.wires.size() && share.count == 1; ++w) {
      const WireId id{static_cast<std::int32_t>(w)};
      if (!is_changed_wire(build, pair, id, width)) continue;
      story[w] = true;
      // A wire that carries more or less, but always carries, is a trunk: past it lie others' ways.
      const bool is_trunk = liveness_of(build, pair.before.solution, id) == Liveness::flowing &&
                            liveness_of(build, pair.after.solution, id) == Liveness::flowing;
      if (!is_trunk) tracer.follow_from_wire(id);
    }
    for (std::size_t c = 0; c < consumers.size(); ++c)
      if (static_cast<int>(c) * share.count / static_cast<int>(consumers.size()) == share.index)
        tracer.follow_element(consumers[c]);
  }
}

/// Current that leaves a splice must be seen to arrive there: feeders that the story left out, up to their sources.
void add_feeders(const Build& build, const Paths& paths, const SituationPair& pair, std::vector<bool>& story) {
  for (const SolvedState* state : {&pair.before, &pair.after})
    for (const Splice& splice : build.splices) {
      double leaves = 0, arrives = 0;
      std::vector<WireId> feeders;
      for (std::size_t w = 0; w < build.wires.size(); ++w) {
        const Wire& wire = build.wires[w];
        if (wire.from != splice.terminal && wire.to != splice.terminal) continue;
        const double out = state->solution.wire_amperes[w].number() * (wire.from == splice.terminal ? 1 : -1);
        if (story[w]) (out > 0 ? leaves : arrives) += std::abs(out);
        if (!story[w] && out < -least_flow.number()) feeders.push_back(WireId{static_cast<std::int32_t>(w)});
      }
      if (leaves < least_flow.number() || arrives >= fed_share * leaves) continue;
      Tracer tracer(build, paths, *state, story, Coils::leave);
      for (const WireId feeder : feeders) {
        story[feeder.at()] = true;
        const bool is_to = build.wire(feeder).to == splice.terminal;
        tracer.follow((is_to ? build.wire(feeder).from : build.wire(feeder).to).index, Way::up);
      }
    }
}

}  // namespace

std::vector<WireId> find_story(const Build& build, const SituationPair& pair, StoryWidth width, StoryShare share) {
  std::vector<bool> story(build.wires.size(), false);
  if (width == StoryWidth::everything) {
    for (std::size_t w = 0; w < build.wires.size(); ++w) {
      const WireId id{static_cast<std::int32_t>(w)};
      story[w] = liveness_of(build, pair.before.solution, id) != Liveness::dead ||
                 liveness_of(build, pair.after.solution, id) != Liveness::dead;
    }
  } else {
    const Paths paths = trace_paths(build);
    trace_changes(build, paths, pair, width, share, story);
    if (std::none_of(story.begin(), story.end(), [](bool is_told) { return is_told; })) return {};
    if (width == StoryWidth::waiting) add_feeders(build, paths, pair, story);
    add_common(build, pair, story);
    add_moved_switches(build, pair, story);
  }
  std::vector<WireId> wires;
  for (std::size_t w = 0; w < build.wires.size(); ++w)
    if (story[w]) wires.push_back(WireId{static_cast<std::int32_t>(w)});
  return wires;
}

std::vector<PartId> find_fed(const Build& build, const SolvedState& state, InsideRef element) {
  const Paths paths = trace_paths(build);
  const std::vector<PathPoint> ends = paths.points(build, element);
  const double amperes = amperes_of(state, element);
  if (ends.size() < 2 || std::abs(amperes) < least_flow.number()) return {};
  std::vector<bool> passed(build.wires.size(), false);
  Tracer tracer(build, paths, state, passed, Coils::leave);
  tracer.bar(amperes > 0 ? ends[0] : ends[1], Way::down);
  tracer.follow(amperes > 0 ? ends[1] : ends[0], Way::down);
  return parts_where(build, [&](InsideRef ref, InsideType type) {
    const double own = amperes_of(state, ref);
    if (!is_consumer_type(type) || std::abs(own) < least_flow.number()) return false;
    const std::vector<PathPoint> points = paths.points(build, ref);
    // Only what is reached from its fed end: from its other end current goes on.
    return tracer.has_met(own > 0 ? points.front() : points.back(), Way::down);
  });
}

std::vector<PartId> find_parts_along(const Build& build, const Paths& paths, const SolvedState& state, WireId wire, Along along) {
  const double flow = state.solution.wire_amperes[wire.at()].number();
  const TerminalId source = flow > 0 ? build.wire(wire).from : build.wire(wire).to,
                   drain = flow > 0 ? build.wire(wire).to : build.wire(wire).from;
  const Way way = along == Along::down ? Way::down : Way::up;
  std::vector<bool> passed(build.wires.size(), false);
  Tracer tracer(build, paths, state, passed, Coils::leave);
  tracer.follow((along == Along::down ? drain : source).index, way);
  return parts_where(build, [&](InsideRef ref, InsideType type) {
    const bool gives = type == InsideType::source || (type == InsideType::charger && along == Along::up);
    const double own = amperes_of(state, ref);
    const std::vector<PathPoint> points = paths.points(build, ref);
    if (points.size() < 2 || std::abs(own) < least_flow.number() || !(is_consumer_type(type) || gives)) return false;
    // Down, what is reached at the end where its current enters; up, where it leaves.
    return tracer.has_met((own > 0) == (along == Along::down) ? points[0] : points[1], way);
  });
}

}  // namespace loomfolio
