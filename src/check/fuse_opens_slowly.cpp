// SPDX-License-Identifier: MIT
// A dead short that passes less than 3.5 times the rating leaves a blade fuse more than half a second, at its slowest
// (ISO 8820-3 gates, from memory). The wire stands it; sparks at the short do not wait.
#include "base/text.h"
#include "check/guarded.h"
#include "check/rules.h"

namespace loomfolio::rules {

void fuse_opens_slowly(const Facts& facts, Diagnostics& findings) {
  for (const GuardedWires& guarded : wires_with_verdict(facts, WireVerdict::opens_slowly)) {
    const WireProtection& wire = facts.protection->wires[guarded.wires[0].at()];
    findings.push_back(
        make_guard_finding(facts, guarded, DiagnosticId::fuse_opens_slowly,
                           "may take " + shortest(wire.opens.number(), 1) + " s to open in a dead short at " +
                               say_terminal(facts.build, wire.far_end) + ", where " + say(wire.fault) + " pass",
                           "fit a smaller fuse if its load allows, or a thicker wire"));
  }
}

}  // namespace loomfolio::rules
