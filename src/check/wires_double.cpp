// SPDX-License-Identifier: MIT
// Two wires between the same two terminals: what one carries cannot be told, and one may fail unseen.

#include "check/rules.h"

namespace loomfolio::rules {

void wires_double(const Facts& facts, Diagnostics& findings) {
  for (std::size_t i = 0; i < facts.build.wires.size(); ++i)
    for (std::size_t j = 0; j < i; ++j) {
      const Wire& one = facts.build.wires[j];
      const Wire& other = facts.build.wires[i];
      const bool same_ends =
          (one.from == other.from && one.to == other.to) || (one.from == other.to && one.to == other.from);
      if (!same_ends) continue;
      Diagnostic finding = make_diagnostic(DiagnosticId::wires_double, other.origin.table,
                                           "wires `" + one.id + "` and `" + other.id + "` join the same two terminals",
                                           "use one wire of the size that is needed");
      add_note(finding, one.origin.table, "the first is here");
      findings.push_back(std::move(finding));
      break;
    }
}

}  // namespace loomfolio::rules
