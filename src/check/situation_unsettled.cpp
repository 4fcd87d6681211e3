// SPDX-License-Identifier: MIT
// A situation with no single state: a relay that chatters, states that depend on what came before, sums that do not
// meet.
#include "base/text.h"
#include "check/rules.h"

namespace loomfolio::rules {

void situation_unsettled(const Facts& facts, Diagnostics& findings) {
  for (const Solution& solution : facts.solutions) {
    const Situation& situation = facts.build.situations[solution.situation.at()];
    const std::string by =
        solution.unsettled_by.empty() ? "" : " at `" + join(solution.unsettled_by, "`, `") + "`";
    const auto report = [&](std::string message, std::string hint) {
      findings.push_back(make_diagnostic(DiagnosticId::situation_unsettled, situation.origin.table,
                                         say_situation(situation) + message, std::move(hint)));
    };
    switch (solution.settling) {
      case Settling::settled:
        break;
      case Settling::chatters:
        report(" has no steady state: a relay chatters" + by, "see whether the relay's own contact cuts its coil off");
        break;
      case Settling::several_states:
        report(" has more than one steady state" + by, "say with `after` which situation it follows");
        break;
      case Settling::diverged:
        report(" could not be solved" + by, "look for a part whose values are far from what is made");
        break;
    }
  }
}

}  // namespace loomfolio::rules
