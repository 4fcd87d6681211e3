// SPDX-License-Identifier: MIT
// The earth end of a part well above the battery's earthed pole: its return is thin, long or shared with something
// heavy. A lamp's return may lose 0.2 V by workshop practice; the starter's own return is judged by its drop.
#include <cmath>

#include "check/rules.h"

namespace loomfolio::rules {

constexpr Volts most_lift{0.2};

void earth_lifted(const Facts& facts, Diagnostics& findings) {
  for (std::size_t p = 0; p < facts.build.parts.size(); ++p) {
    const Part& part = facts.build.parts[p];
    if (facts.build.kind_of(part).is_connector) continue;
    const SettledSituation* worst = nullptr;
    double lift = most_lift.number();
    const std::vector<SettledSituation> all = settled_situations(facts);
    for (const SettledSituation& settled : all) {
      if (settled.situation->engine == EngineState::cranking) continue;
      for (const TerminalId terminal : part.terminals) {
        if (!facts.paths.is_earthed(terminal.index) || facts.wires_at[terminal.at()].empty()) continue;
        const double volts = std::fabs(settled.solution->terminal_volts[terminal.at()].number());
        if (std::isnan(volts) || volts <= lift) continue;
        lift = volts;
        worst = &settled;
      }
    }
    if (!worst) continue;
    findings.push_back(make_diagnostic(DiagnosticId::earth_lifted, part.origin.table,
                                       "the earth of " + say_part(part) + " is " + say(Volts(lift)) +
                                           " off the battery's in " + say_situation(*worst->situation) + "; " +
                                           say(most_lift) + " is the most",
                                       "use a thicker earth wire, or one of its own"));
  }
}

}  // namespace loomfolio::rules
