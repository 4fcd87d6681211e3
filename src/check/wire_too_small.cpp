// SPDX-License-Identifier: MIT
// A conductor thinner than the terminal's crimp holds: it pulls out.

#include "check/rules.h"

namespace loomfolio::rules {

void wire_too_small(const Facts& facts, Diagnostics& findings) {
  each_part_end(facts, [&](const WireEnd& end) {
    const Wire& wire = facts.build.wire(end.wire);
    if (!end.kind_terminal->takes || wire.is_auto_size) return;
    const SquareMillimetres least = end.kind_terminal->takes->least;
    if (wire.area.number() * size_tolerance >= least.number()) return;
    findings.push_back(make_diagnostic(DiagnosticId::wire_too_small, wire.origin.key("size"),
                                       say_wire(facts.build, end.wire) + " is " + say(wire.area) + "; terminal " +
                                           say_terminal(facts.build, end.terminal) + " takes at least " + say(least),
                                       "use a thicker wire, or a terminal made for this size"));
  });
}

}  // namespace loomfolio::rules
