// SPDX-License-Identifier: MIT
// Below the gate at which a fuse is sure to open (135 % of a blade's rating) it may carry an overload for ever. A wire
// that carries that much for ever is guarded whole; one between the rating and the gate is guarded against shorts only.
#include "check/guarded.h"
#include "check/rules.h"
#include "solve/fuse_refs.h"

namespace loomfolio::rules {

void fuse_rather_large(const Facts& facts, Diagnostics& findings) {
  for (const GuardedWires& guarded : wires_below_135(facts)) {
    const Part& part = facts.build.part(guarded.fuse.part);
    const Inside& fuse = inside_of(facts.build, guarded.fuse);
    const Amperes rating = rating_of_fuse(part, fuse);
    const Amperes sure = surely_opens_from(*family_in(facts.build, fuse.family, rating), rating);
    findings.push_back(make_guard_finding(facts, guarded, DiagnosticId::fuse_rather_large,
                                          "is sure to open from " + say(sure) + " only, and " +
                                              say_wire(facts.build, guarded.wires[0]) + " " +
                                              say_carries(facts, guarded.wires[0]),
                                          "fit a smaller fuse if its load allows, or a thicker wire"));
  }
}

}  // namespace loomfolio::rules
