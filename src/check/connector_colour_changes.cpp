// SPDX-License-Identifier: MIT
// A wire that changes colour at a connector: whoever follows it by colour loses it there.

#include "check/rules.h"

namespace loomfolio::rules {

void connector_colour_changes(const Facts& facts, Diagnostics& findings) {
  each_cavity_pair(facts, [&](const CavityPair& pair) {
    if (pair.wires_a.empty() || pair.wires_b.empty()) return;
    for (const WireId a : pair.wires_a)
      for (const WireId b : pair.wires_b)
        if (facts.build.wire(a).colour.text() == facts.build.wire(b).colour.text()) return;
    const Wire& a = facts.build.wire(pair.wires_a.front());
    const Wire& b = facts.build.wire(pair.wires_b.front());
    Diagnostic finding =
        make_diagnostic(DiagnosticId::connector_colour_changes, b.origin.key("colour"),
                        "wire `" + a.id + "` is " + a.colour.text() + " and goes on through " +
                            say_terminal(facts.build, pair.b) + " as " + b.colour.text() + " in wire `" + b.id + "`",
                        "keep one colour from end to end");
    add_note(finding, a.origin.key("colour"), "the other half is here");
    findings.push_back(std::move(finding));
  });
}

}  // namespace loomfolio::rules
