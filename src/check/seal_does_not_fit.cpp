// SPDX-License-Identifier: MIT
// A wire seal grips by the outside of the insulation: too thin leaks, too thick tears or does not go in. Where the spec
// gives no outside diameter, the tables' greatest is taken.
#include "check/rules.h"
#include "solve/conductor.h"

namespace loomfolio::rules {

void seal_does_not_fit(const Facts& facts, Diagnostics& findings) {
  each_part_end(facts, [&](const WireEnd& end) {
    const Wire& wire = facts.build.wire(end.wire);
    if (end.kind_terminal->form != TerminalForm::sealed || !end.kind_terminal->insulation || wire.is_auto_size) return;
    const Range<Millimetres>& seal = *end.kind_terminal->insulation;
    const OutsideDiameter outside = outside_diameter(wire);
    const bool fits = outside.most.number() * size_tolerance >= seal.least.number() &&
                      outside.most.number() <= seal.most.number() * size_tolerance;
    if (fits) return;
    const bool is_given = outside.status == FigureStatus::given;
    findings.push_back(make_diagnostic(
        DiagnosticId::seal_does_not_fit, wire.origin.key(is_given ? "outside" : "size"),
        say_wire(facts.build, end.wire) + " is " + say(outside.most) + " over its insulation" +
            (is_given ? "" : " by the tables") + "; the seal at " + say_terminal(facts.build, end.terminal) +
            " is for " + say(seal.least) + " to " + say(seal.most),
        is_given ? "use a seal for this wire" : "measure the wire and give `outside`, or use a seal for it"));
  });
}

}  // namespace loomfolio::rules
