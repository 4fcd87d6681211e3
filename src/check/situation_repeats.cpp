// SPDX-License-Identifier: MIT
// Two situations that set the same things: one of them shows nothing new.
#include <algorithm>

#include "check/rules.h"

namespace loomfolio::rules {

namespace {

std::vector<std::pair<InsideRef, int>> settings_of(const Situation& situation) {
  std::vector<std::pair<InsideRef, int>> settings;
  for (const Setting& s : situation.settings) settings.emplace_back(s.actuator, s.position);
  std::sort(settings.begin(), settings.end());
  return settings;
}

}  // namespace

void situation_repeats(const Facts& facts, Diagnostics& findings) {
  const auto& situations = facts.build.situations;
  for (std::size_t i = 0; i < situations.size(); ++i)
    for (std::size_t j = 0; j < i; ++j) {
      const Situation &one = situations[j], &other = situations[i];
      if (one.engine != other.engine || one.after != other.after || settings_of(one) != settings_of(other)) continue;
      Diagnostic finding = make_diagnostic(DiagnosticId::situation_repeats, other.origin.table,
                                           "situations `" + one.name + "` and `" + other.name + "` set the same things",
                                           "take one out, or let it set what makes it different");
      add_note(finding, one.origin.table, "the first is here");
      findings.push_back(std::move(finding));
      break;
    }
}

}  // namespace loomfolio::rules
