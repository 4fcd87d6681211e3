// SPDX-License-Identifier: MIT
// A starter that turns with a gear in and the clutch out: the machine leaps. Kick machines of old have none, so a note.
#include "check/rules.h"

namespace loomfolio::rules {

namespace {

/// Current can pass without anything that asks for neutral, clutch or stand. Outputs ask for their inputs.
bool passes_unasked(const Build& build, const Bridge& bridge) {
  if (!bridge.inside.part.is_set()) return true;
  const Inside& inside = inside_of(build, bridge.inside);
  switch (inside.type) {
    case InsideType::link:
    case InsideType::fuse:
      return true;
    case InsideType::switch_:
      return inside.worked_by != "gear" && inside.worked_by != "clutch";
    default:
      return false;
  }
}

/// The coil whose contact feeds a motor that turns only to start.
bool works_a_starter(const Facts& facts, InsideRef coil) {
  const Part& part = facts.build.part(coil.part);
  const std::string& id = inside_of(facts.build, coil).id;
  for (std::size_t i = 0; i < part.insides.size(); ++i) {
    if (part.insides[i].type != InsideType::contact || part.insides[i].coil != id) continue;
    for (const PathPoint point : facts.paths.points(facts.build, {coil.part, static_cast<int>(i)}))
      if (feeds_starter(facts, point)) return true;
  }
  return false;
}

}  // namespace

void starter_without_interlock(const Facts& facts, Diagnostics& findings) {
  const std::vector<PathPoint> live = live_points(facts), earthed = {facts.paths.frame};
  const auto passes = [&](const Bridge& bridge) { return passes_unasked(facts.build, bridge); };
  const std::vector<bool> from_live = reach(facts.paths, live, passes),
                          from_earth = reach(facts.paths, earthed, passes);
  each_inside(facts.build, [&](InsideRef ref, const Part& part, const Inside& inside) {
    if (inside.type != InsideType::coil || inside.nodes.size() < 2 || !works_a_starter(facts, ref)) return;
    const auto points = facts.paths.points(facts.build, ref);
    const auto a = static_cast<std::size_t>(points[0]), b = static_cast<std::size_t>(points[1]);
    const bool unasked = (from_live[a] && from_earth[b]) || (from_live[b] && from_earth[a]);
    if (!unasked) return;
    findings.push_back(make_diagnostic(
        DiagnosticId::starter_without_interlock, part.origin.table,
        "starter coil " + say_inside(facts.build, ref) + " can be fed with a gear in and the clutch out",
        "lead its feed or its earth through the neutral and clutch switches"));
  });
}

}  // namespace loomfolio::rules
