// SPDX-License-Identifier: MIT
// At some current - an overload or a short - the wire's insulation passes its short-circuit limit (adiabatic, IEC
// 60949, with the heat it gives away counted) before the fuse, at its slowest, opens.
#include "base/text.h"
#include "check/guarded.h"
#include "check/rules.h"
#include "solve/fuse_refs.h"

namespace loomfolio::rules {

void wire_hurt_first(const Facts& facts, Diagnostics& findings) {
  for (const GuardedWires& guarded : wires_with_verdict(facts, WireVerdict::wire_hurt_first)) {
    const Wire& wire = facts.build.wire(guarded.wires[0]);
    const WireProtection& found = facts.protection->wires[guarded.wires[0].at()];
    const Inside& fuse = inside_of(facts.build, guarded.fuse);
    const Amperes rating = rating_of_fuse(facts.build.part(guarded.fuse.part), fuse);
    const auto family = family_in(facts.build, fuse.family, rating);
    const Celsius ambient = facts.build.electrics.ambient;
    const auto current = hurts_from({wire, ambient, found.ampacity, *family, rating, std::max(found.fuse_fault, found.fault), found.prospective});
    if (!current) continue;
    findings.push_back(make_guard_finding(
        facts, guarded, DiagnosticId::wire_hurt_first,
        "may open too late to save " + say_wire(facts.build, guarded.wires[0]) + ": at " + say(*current) +
            " it may take " + shortest(slowest_opening(*family, rating, *current).number(), 1) +
            " s, and the wire is hurt after " +
            shortest(withstands(wire, ambient, found.ampacity, *current).number(), 1) + " s; it " +
            say_carries(facts, guarded.wires[0]),
        "fit a smaller fuse if its load allows, or a thicker wire"));
  }
}

}  // namespace loomfolio::rules
