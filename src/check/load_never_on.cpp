// SPDX-License-Identifier: MIT
// A load that no situation turns on: it is wired wrong, or a situation is missing.
#include "check/rules.h"

namespace loomfolio::rules {

void load_never_on(const Facts& facts, Diagnostics& findings) {
  for (const InsideRef ref : loads_never_on(facts))
    findings.push_back(make_diagnostic(DiagnosticId::load_never_on, facts.build.part(ref.part).origin.table,
                                       say_inside(facts.build, ref) + " is on in no situation",
                                       "add the situation that turns it on, or see what starves it"));
}

}  // namespace loomfolio::rules
