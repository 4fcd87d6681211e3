// SPDX-License-Identifier: MIT
// A fuse of more amperes than a wire behind it carries for ever: an overload that the fuse bears heats the wire past
// its insulation's rating. ABYC E-11: not above the conductor's ampacity.
#include "check/guarded.h"
#include "check/rules.h"

namespace loomfolio::rules {

void fuse_too_large(const Facts& facts, Diagnostics& findings) {
  for (const GuardedWires& guarded : wires_with_verdict(facts, WireVerdict::fuse_too_large))
    findings.push_back(make_guard_finding(facts, guarded, DiagnosticId::fuse_too_large,
                                          "is too large for " + say_wire(facts.build, guarded.wires[0]) + ", which " +
                                              say_carries(facts, guarded.wires[0]),
                                          "fit a smaller fuse if its load allows, or a thicker wire"));
}

}  // namespace loomfolio::rules
