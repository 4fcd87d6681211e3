// SPDX-License-Identifier: MIT
// Too many rings on one stud or earth bolt. Four is the limit of AC 43.13-1B (from memory).

#include "check/rules.h"

namespace loomfolio::rules {

constexpr std::size_t most_rings = 4;

void stud_crowded(const Facts& facts, Diagnostics& findings) {
  const auto look = [&](TerminalId terminal, Where where) {
    const std::size_t rings = facts.wires_at[terminal.at()].size();
    if (rings <= most_rings) return;
    findings.push_back(make_diagnostic(DiagnosticId::stud_crowded, where,
                                       std::to_string(rings) + " rings on " + say_terminal(facts.build, terminal) +
                                           "; one stud holds at most " + std::to_string(most_rings),
                                       "join some at a splice, or use a second stud"));
  };
  for (const Earth& earth : facts.build.earths) look(earth.terminal, earth.origin.table);
  for (const Part& part : facts.build.parts)
    for (std::size_t k = 0; k < part.terminals.size(); ++k)
      if (facts.build.kind_of(part).terminals[k].form == TerminalForm::stud) look(part.terminals[k], part.origin.table);
}

}  // namespace loomfolio::rules
