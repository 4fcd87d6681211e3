// SPDX-License-Identifier: MIT
// Very thin beside very thick in one barrel: the thick ones fill the crimp and the thin one is not gripped.
// The ratio is common practice, no source.

#include "check/rules.h"

namespace loomfolio::rules {

constexpr double greatest_ratio = 6;  ///< largest to smallest conductor area in one barrel

void splice_unequal(const Facts& facts, Diagnostics& findings) {
  for (const Splice& splice : facts.build.splices) {
    const Wire* thin = nullptr;
    const Wire* thick = nullptr;
    for (const WireId id : facts.wires_at[splice.terminal.at()]) {
      const Wire& wire = facts.build.wire(id);
      if (wire.is_auto_size) continue;
      if (!thin || wire.area < thin->area) thin = &wire;
      if (!thick || wire.area > thick->area) thick = &wire;
    }
    if (!thin || thick->area / thin->area <= greatest_ratio) continue;
    findings.push_back(
        make_diagnostic(DiagnosticId::splice_unequal, splice.origin.table,
                        "splice `" + splice.id + "` joins " + print_size(*thick) + " (wire `" + thick->id + "`) with " +
                            print_size(*thin) + " (wire `" + thin->id + "`)",
                        "use a thicker wire, fold its end back to fill the barrel, or make two splices"));
  }
}

}  // namespace loomfolio::rules
