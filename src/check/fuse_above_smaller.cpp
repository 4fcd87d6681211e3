// SPDX-License-Identifier: MIT
// A fuse behind a smaller one never does its work: the smaller one opens first and takes more down.
#include "check/rules.h"

namespace loomfolio::rules {

namespace {

/// Current can pass without a fuse or a load: metal, contacts, switches, diodes, outputs.
bool passes_freely(const Build& build, const Bridge& bridge) {
  if (!bridge.inside.part.is_set()) return true;
  switch (inside_of(build, bridge.inside).type) {
    case InsideType::link:
    case InsideType::switch_:
    case InsideType::contact:
    case InsideType::diode:
    case InsideType::output:
      return true;
    default:
      return false;
  }
}

}  // namespace

void fuse_above_smaller(const Facts& facts, Diagnostics& findings) {
  const Build& build = facts.build;
  each_inside(build, [&](InsideRef above, const Part&, const Inside& fuse) {
    if (fuse.type != InsideType::fuse || !fuse.rating || fuse.nodes.size() < 2) return;
    const PathPoint load_side = facts.paths.points(build, above)[1];
    if (facts.paths.is_live(load_side)) return;
    const std::vector<bool> behind =
        reach(facts.paths, {load_side}, [&](const Bridge& b) { return passes_freely(build, b); });
    each_inside(build, [&](InsideRef below, const Part& part, const Inside& smaller) {
      if (below == above || smaller.type != InsideType::fuse || !smaller.rating || smaller.nodes.size() < 2) return;
      const auto points = facts.paths.points(build, below);
      const bool is_behind =
          behind[static_cast<std::size_t>(points[0])] && !behind[static_cast<std::size_t>(points[1])];
      if (!is_behind || *smaller.rating <= *fuse.rating) return;
      findings.push_back(make_diagnostic(DiagnosticId::fuse_above_smaller, rating_place(part, smaller),
                                         "fuse " + say_inside(build, below) + " of " + say(*smaller.rating) +
                                             " stands behind fuse " + say_inside(build, above) + " of " +
                                             say(*fuse.rating),
                                         "the fuse nearer the battery must be the larger"));
    });
  });
}

}  // namespace loomfolio::rules
