// SPDX-License-Identifier: MIT
// A connector's cavity with a wire on one half and none on the other: the wire ends there.

#include "check/rules.h"

namespace loomfolio::rules {

void connector_one_sided(const Facts& facts, Diagnostics& findings) {
  each_cavity_pair(facts, [&](const CavityPair& pair) {
    if (pair.wires_a.empty() == pair.wires_b.empty()) return;
    const bool a_is_wired = !pair.wires_a.empty();
    const WireId wire = (a_is_wired ? pair.wires_a : pair.wires_b).front();
    findings.push_back(make_diagnostic(
        DiagnosticId::connector_one_sided, facts.build.wire(wire).origin.table,
        say_wire(facts.build, wire) + " ends at " + say_terminal(facts.build, a_is_wired ? pair.a : pair.b) +
            "; no wire goes on from " + say_terminal(facts.build, a_is_wired ? pair.b : pair.a),
        "carry it on from the other half, or take the wire out and plug the cavity"));
  });
}

}  // namespace loomfolio::rules
