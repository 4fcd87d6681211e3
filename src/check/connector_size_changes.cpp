// SPDX-License-Identifier: MIT
// A wire that goes on thinner or thicker after a connector: allowed, but the thinner one is what the fuse must guard.

#include "check/rules.h"

namespace loomfolio::rules {

void connector_size_changes(const Facts& facts, Diagnostics& findings) {
  each_cavity_pair(facts, [&](const CavityPair& pair) {
    if (pair.wires_a.size() != 1 || pair.wires_b.size() != 1) return;
    const Wire& a = facts.build.wire(pair.wires_a.front());
    const Wire& b = facts.build.wire(pair.wires_b.front());
    if (a.is_auto_size || b.is_auto_size) return;
    const bool same =
        a.area.number() <= b.area.number() * size_tolerance && b.area.number() <= a.area.number() * size_tolerance;
    if (same) return;
    Diagnostic finding =
        make_diagnostic(DiagnosticId::connector_size_changes, b.origin.key("size"),
                        "wire `" + a.id + "` is " + print_size(a) + " and goes on through " +
                            say_terminal(facts.build, pair.b) + " as " + print_size(b) + " in wire `" + b.id + "`",
                        "use one size on both halves");
    add_note(finding, a.origin.key("size"), "the other half is here");
    findings.push_back(std::move(finding));
  });
}

}  // namespace loomfolio::rules
