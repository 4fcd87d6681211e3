// SPDX-License-Identifier: MIT
// A variant that does not say when to choose it: the reader cannot tell which pages are his.
#include "check/rules.h"

namespace loomfolio::rules {

void variant_without_when(const Facts& facts, Diagnostics& findings) {
  const Build& build = facts.build;
  if (build.variant.empty() || !build.variant_when.empty()) return;
  findings.push_back(make_diagnostic(DiagnosticId::variant_without_when, build.document.origin.table,
                                     "variant `" + build.variant + "` does not say when to choose it",
                                     "add `when` to it, in words a person can check on the machine"));
}

}  // namespace loomfolio::rules
