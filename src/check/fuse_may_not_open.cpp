// SPDX-License-Identifier: MIT
// A dead short at the end of a long thin wire may pass so little that the fuse is not sure to open: below 135 % of a
// blade's rating nothing is promised (ISO 8820-3, gate from memory).
#include "check/guarded.h"
#include "check/rules.h"

namespace loomfolio::rules {

void fuse_may_not_open(const Facts& facts, Diagnostics& findings) {
  for (const GuardedWires& guarded : wires_with_verdict(facts, WireVerdict::fuse_may_not_open)) {
    const WireProtection& wire = facts.protection->wires[guarded.wires[0].at()];
    findings.push_back(make_guard_finding(facts, guarded, DiagnosticId::fuse_may_not_open,
                                          "may not open in a dead short at " + say_terminal(facts.build, wire.far_end) +
                                              ": only " + say(wire.fault) + " pass through " +
                                              say_wire(facts.build, guarded.wires[0]),
                                          "fit a smaller fuse, or a thicker wire"));
  }
}

}  // namespace loomfolio::rules
