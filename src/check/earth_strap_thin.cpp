// SPDX-License-Identifier: MIT
// The battery's earth strap carries what the starter cable carries, so it is as thick.

#include "check/rules.h"

namespace loomfolio::rules {

namespace {

const Wire* thickest(const Facts& facts, PathPoint pole) {
  if (pole >= static_cast<PathPoint>(facts.wires_at.size())) return nullptr;
  const Wire* found = nullptr;
  for (const WireId id : facts.wires_at[static_cast<std::size_t>(pole)])
    if (!found || facts.build.wire(id).area > found->area) found = &facts.build.wire(id);
  return found;
}

}  // namespace

void earth_strap_thin(const Facts& facts, Diagnostics& findings) {
  each_inside(facts.build, [&](InsideRef ref, const Part&, const Inside& inside) {
    if (inside.type != InsideType::source || inside.nodes.size() < 2) return;
    const std::vector<PathPoint> poles = facts.paths.points(facts.build, ref);
    const bool flipped = facts.build.electrics.is_positive_earth;
    const Wire* live = thickest(facts, poles[flipped ? 1 : 0]);
    const Wire* strap = thickest(facts, poles[flipped ? 0 : 1]);
    if (!live || !strap || live->is_auto_size || strap->is_auto_size) return;
    if (strap->area.number() * size_tolerance >= live->area.number()) return;
    Diagnostic finding = make_diagnostic(DiagnosticId::earth_strap_thin, strap->origin.key("size"),
                                         "earth strap `" + strap->id + "` is " + print_size(*strap) +
                                             "; the live cable `" + live->id + "` is " + print_size(*live),
                                         "use the same size for both");
    add_note(finding, live->origin.key("size"), "the live cable is here");
    findings.push_back(std::move(finding));
  });
}

}  // namespace loomfolio::rules
