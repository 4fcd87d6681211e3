// SPDX-License-Identifier: MIT
// A situation that expects nothing proves nothing: a wrong wire passes.
#include "check/rules.h"

namespace loomfolio::rules {

void situation_without_expect(const Facts& facts, Diagnostics& findings) {
  for (const Situation& situation : facts.build.situations)
    if (situation.expectations.empty())
      findings.push_back(make_diagnostic(DiagnosticId::situation_without_expect, situation.origin.table,
                                         say_situation(situation) + " expects nothing, so nothing is proved in it",
                                         "add `expect` with what should be on and what should be off"));
}

}  // namespace loomfolio::rules
