// SPDX-License-Identifier: MIT
// Two parts with one label: the pages cannot tell them apart.
#include "check/rules.h"

namespace loomfolio::rules {

void label_used_twice(const Facts& facts, Diagnostics& findings) {
  const auto& parts = facts.build.parts;
  for (std::size_t i = 0; i < parts.size(); ++i)
    for (std::size_t j = 0; j < i; ++j) {
      if (parts[i].label.empty() || parts[i].label != parts[j].label) continue;
      Diagnostic finding = make_diagnostic(
          DiagnosticId::label_used_twice, parts[i].origin.key("label"),
          "parts `" + parts[j].id + "` and `" + parts[i].id + "` are both labelled `" + parts[i].label + "`",
          "say in the label which is which: left or right, front or rear");
      add_note(finding, parts[j].origin.key("label"), "the first is here");
      findings.push_back(std::move(finding));
      break;
    }
}

}  // namespace loomfolio::rules
