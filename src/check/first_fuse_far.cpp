// SPDX-License-Identifier: MIT
// The wire from the battery to its first fuse is guarded by nothing. 33 CFR 183.455(b) allows 7 in (180 mm), or
// 40 in (1.0 m) when the wire is sheathed all the way; a boat's rule, borrowed. Starter cables count as no length: they
// are the listed exception.
#include <limits>

#include "check/rules.h"

namespace loomfolio::rules {

constexpr Metres nearest{0.18};
constexpr Metres farthest{1.0};

namespace {

constexpr double unreached = std::numeric_limits<double>::infinity();

/// Metres of unfused wire from the live pole to every point of its net; wires few enough for a plain relaxation.
std::vector<double> way_from(const Facts& facts, PathPoint pole) {
  std::vector<double> way(facts.paths.at.size(), unreached);
  way[static_cast<std::size_t>(pole)] = 0;
  for (bool changed = true; changed;) {
    changed = false;
    for (const Bridge& bridge : facts.paths.bridges) {
      if (!is_plain_metal(facts.build, bridge)) continue;
      double length = 0;
      if (bridge.wire.is_set()) {
        const Wire& wire = facts.build.wire(bridge.wire);
        length = is_starter_cable(wire) || !wire.length ? 0 : wire.length->number();
      }
      double& a = way[static_cast<std::size_t>(bridge.a)];
      double& b = way[static_cast<std::size_t>(bridge.b)];
      if (a + length < b) {
        b = a + length;
        changed = true;
      }
      if (b + length < a) {
        a = b + length;
        changed = true;
      }
    }
  }
  return way;
}

}  // namespace

void first_fuse_far(const Facts& facts, Diagnostics& findings) {
  std::vector<double> nearest_way(facts.paths.at.size(), unreached);
  each_inside(facts.build, [&](InsideRef ref, const Part&, const Inside& inside) {
    if (inside.type != InsideType::source || inside.nodes.size() < 2) return;
    const PathPoint pole = facts.paths.points(facts.build, ref)[facts.build.electrics.is_positive_earth ? 1 : 0];
    const std::vector<double> way = way_from(facts, pole);
    for (std::size_t i = 0; i < way.size(); ++i) nearest_way[i] = std::min(nearest_way[i], way[i]);
  });
  each_inside(facts.build, [&](InsideRef ref, const Part& part, const Inside& inside) {
    if (inside.type != InsideType::fuse || inside.nodes.size() < 2) return;
    const double way = nearest_way[static_cast<std::size_t>(facts.paths.points(facts.build, ref)[0])];
    if (way == unreached || way <= nearest.number() * 1.001) return;
    Diagnostic finding = make_diagnostic(DiagnosticId::first_fuse_far, part.origin.table,
                                         "fuse " + say_inside(facts.build, ref) + " is " + say(Metres(way)) +
                                             " of wire from the battery; within " + say(nearest) + " is right, " +
                                             say(farthest) + " if the wire is sheathed all the way",
                                         "move the fuse to the battery");
    if (way <= farthest.number()) {
      finding.severity = Severity::note;
      finding.hint = "sheathe the wire all the way, or move the fuse to the battery";
    }
    findings.push_back(std::move(finding));
  });
}

}  // namespace loomfolio::rules
