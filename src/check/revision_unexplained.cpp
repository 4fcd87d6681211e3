// SPDX-License-Identifier: MIT
// A revision that the list of changes does not name: nobody will know what it changed.
#include "check/rules.h"

namespace loomfolio::rules {

void revision_unexplained(const Facts& facts, Diagnostics& findings) {
  const Document& document = facts.build.document;
  if (document.revision.empty() || facts.build.changes.empty()) return;
  for (const Change& change : facts.build.changes)
    if (change.revision == document.revision) return;
  findings.push_back(make_diagnostic(DiagnosticId::revision_unexplained, document.origin.key("revision"),
                                     "revision `" + document.revision + "` is not among the changes",
                                     "add a [[change]] that says what it changed and why"));
}

}  // namespace loomfolio::rules
