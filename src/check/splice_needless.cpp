// SPDX-License-Identifier: MIT
// A splice of two wires is a joint that one whole wire would save; of one wire, a loose end.

#include "check/rules.h"

namespace loomfolio::rules {

void splice_needless(const Facts& facts, Diagnostics& findings) {
  for (const Splice& splice : facts.build.splices) {
    const std::size_t wires = facts.wires_at[splice.terminal.at()].size();
    if (wires >= 3) continue;
    findings.push_back(
        make_diagnostic(DiagnosticId::splice_needless, splice.origin.table,
                        "splice `" + splice.id + "` joins " + std::to_string(wires) +
                            (wires == 1 ? " wire" : " wires") + "; a splice is a joint of three or more",
                        wires == 2 ? "run one whole wire instead" : "join it to something, or take it out"));
  }
}

}  // namespace loomfolio::rules
