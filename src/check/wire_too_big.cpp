// SPDX-License-Identifier: MIT
// A conductor thicker than the terminal's crimp or cavity takes. Wires that share one crimp count together; rings on a
// stud are crimped one by one.

#include "check/rules.h"

namespace loomfolio::rules {

namespace {

/// Everything that goes into the same crimp as this wire.
SquareMillimetres area_in_crimp(const Facts& facts, const WireEnd& end) {
  const bool crimped_singly = end.kind_terminal->form == TerminalForm::stud ||
                              end.kind_terminal->form == TerminalForm::body ||
                              end.kind_terminal->form == TerminalForm::screw;
  if (crimped_singly) return facts.build.wire(end.wire).area;
  SquareMillimetres sum;
  for (const WireId wire : facts.wires_at[end.terminal.at()]) sum += facts.build.wire(wire).area;
  return sum;
}

}  // namespace

void wire_too_big(const Facts& facts, Diagnostics& findings) {
  each_part_end(facts, [&](const WireEnd& end) {
    const Wire& wire = facts.build.wire(end.wire);
    if (!end.kind_terminal->takes || wire.is_auto_size) return;
    const SquareMillimetres most = end.kind_terminal->takes->most;
    const SquareMillimetres area = area_in_crimp(facts, end);
    if (area.number() <= most.number() * size_tolerance) return;
    const bool shares = area.number() > wire.area.number() * size_tolerance;
    findings.push_back(make_diagnostic(
        DiagnosticId::wire_too_big, wire.origin.key("size"),
        say_wire(facts.build, end.wire) + (shares ? ", with those that share its crimp," : "") + " is " + say(area) +
            "; terminal " + say_terminal(facts.build, end.terminal) + " takes at most " + say(most),
        "use a thinner wire, or join it to a short thinner tail at a splice"));
  });
}

}  // namespace loomfolio::rules
