// SPDX-License-Identifier: MIT
// A wire that carries more than it may for ever, by heat balance at the build's ambient in its bundle. Cranking is
// short: what a wire carries only then does not count.
#include <cmath>

#include "base/text.h"
#include "check/guarded.h"
#include "check/rules.h"

namespace loomfolio::rules {

void wire_overloaded(const Facts& facts, Diagnostics& findings) {
  if (!facts.protection) return;
  for (std::size_t w = 0; w < facts.build.wires.size(); ++w) {
    const WireId id{static_cast<std::int32_t>(w)};
    Amperes worst{0};
    const Situation* worst_situation = nullptr;
    for (const SettledSituation& settled : settled_situations(facts)) {
      if (settled.situation->engine == EngineState::cranking) continue;
      const Amperes amperes = std::max(Amperes(std::fabs(settled.solution->wire_amperes[w].number())),
                                       settled.solution->wire_alternating[w]);
      if (amperes > worst) worst = amperes, worst_situation = settled.situation;
    }
    if (!worst_situation || worst <= facts.protection->wires[w].ampacity * rating_tolerance) continue;
    findings.push_back(make_diagnostic(DiagnosticId::wire_overloaded, facts.build.wires[w].origin.key("size"),
                                       say_wire(facts.build, id) + " has " + say(worst) + " in " +
                                           say_situation(*worst_situation) + " and " + say_carries(facts, id),
                                       "fit a thicker wire, or lead it apart from the others"));
  }
}

}  // namespace loomfolio::rules
