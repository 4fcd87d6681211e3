// SPDX-License-Identifier: MIT
// The insulation wings of an unsealed crimp, or an unsealed cavity, hold only some outside diameters.
#include "check/rules.h"
#include "solve/conductor.h"

namespace loomfolio::rules {

void grip_does_not_fit(const Facts& facts, Diagnostics& findings) {
  each_part_end(facts, [&](const WireEnd& end) {
    const Wire& wire = facts.build.wire(end.wire);
    if (end.kind_terminal->form == TerminalForm::sealed || !end.kind_terminal->insulation || wire.is_auto_size) return;
    const Range<Millimetres>& grip = *end.kind_terminal->insulation;
    const OutsideDiameter outside = outside_diameter(wire);
    const bool fits = outside.most.number() * size_tolerance >= grip.least.number() &&
                      outside.most.number() <= grip.most.number() * size_tolerance;
    if (fits) return;
    const bool is_given = outside.status == FigureStatus::given;
    findings.push_back(make_diagnostic(
        DiagnosticId::grip_does_not_fit, wire.origin.key(is_given ? "outside" : "size"),
        say_wire(facts.build, end.wire) + " is " + say(outside.most) + " over its insulation" +
            (is_given ? "" : " by the tables") + "; terminal " + say_terminal(facts.build, end.terminal) + " grips " +
            say(grip.least) + " to " + say(grip.most),
        is_given ? "use a terminal for this wire" : "measure the wire and give `outside`, or use a terminal for it"));
  });
}

}  // namespace loomfolio::rules
