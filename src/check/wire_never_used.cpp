// SPDX-License-Identifier: MIT
// A wire that carries nothing in any situation. Signal wires, which carry next to nothing, are left
// out, and so is the whole rule while a load is on in no situation or cannot be fed at all: its wires would follow from
// it.
#include <cmath>

#include "check/rules.h"

namespace loomfolio::rules {

constexpr Amperes next_to_nothing{0.0005};

namespace {

/// Nets of windings, high tension, unit inputs and generator leads: their current is no DC, or too small to solve.
std::vector<bool> signal_nets(const Facts& facts) {
  std::vector<bool> signal(static_cast<std::size_t>(facts.paths.net_count), false);
  const auto mark = [&](PathPoint p) {
    signal[static_cast<std::size_t>(facts.paths.net[static_cast<std::size_t>(p)])] = true;
  };
  each_inside(facts.build, [&](InsideRef ref, const Part&, const Inside& inside) {
    const std::vector<PathPoint> points = facts.paths.points(facts.build, ref);
    if (inside.type == InsideType::resistor && (inside.is_winding || inside.is_secondary))
      for (const PathPoint p : points) mark(p);
    for (const OutputCondition& condition : inside.conditions) mark(points[static_cast<std::size_t>(condition.input)]);
    for (const int node : inside.fed_by) mark(points[static_cast<std::size_t>(node)]);
  });
  return signal;
}

bool has_starved_load(const Facts& facts) {
  const Poles poles = reach_poles(facts);
  bool has = false;
  each_inside(facts.build, [&](InsideRef ref, const Part&, const Inside& inside) {
    const bool is_load = inside.type == InsideType::load || inside.type == InsideType::lamp ||
                         inside.type == InsideType::motor || inside.type == InsideType::coil;
    if (!is_load) return;
    const Feed feed = feed_of(facts, poles, ref);
    has = has || (feed != Feed::whole && feed != Feed::unused);
  });
  return has;
}

}  // namespace

void wire_never_used(const Facts& facts, Diagnostics& findings) {
  const std::vector<SettledSituation> all = settled_situations(facts);
  if (all.empty() || all.size() != facts.build.situations.size()) return;
  if (!loads_never_on(facts).empty() || has_starved_load(facts)) return;
  const std::vector<bool> signal = signal_nets(facts);
  for (std::size_t w = 0; w < facts.build.wires.size(); ++w) {
    const Wire& wire = facts.build.wires[w];
    if (signal[static_cast<std::size_t>(facts.paths.net[wire.from.at()])]) continue;
    bool used = false;
    for (const SettledSituation& settled : all)
      used = used || std::fabs(settled.solution->wire_amperes[w].number()) > next_to_nothing.number();
    if (used) continue;
    findings.push_back(make_diagnostic(DiagnosticId::wire_never_used, wire.origin.table,
                                       "wire `" + wire.id + "` carries nothing in any situation",
                                       "add the situation that uses it, or take it out"));
  }
}

}  // namespace loomfolio::rules
