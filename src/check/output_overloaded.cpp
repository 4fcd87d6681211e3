// SPDX-License-Identifier: MIT
// A control unit's output held at its limit: the load gets less than it needs, or the unit cuts it off.
#include "check/rules.h"

namespace loomfolio::rules {

void output_overloaded(const Facts& facts, Diagnostics& findings) {
  for (const SettledSituation& settled : settled_situations(facts))
    each_inside(facts.build, [&](InsideRef ref, const Part& part, const Inside& inside) {
      if (inside.type != InsideType::output || !inside.rating) return;
      const InsideState& state = settled.solution->insides[ref.part.at()][static_cast<std::size_t>(ref.inside)];
      if (!state.is_limiting) return;
      findings.push_back(make_diagnostic(DiagnosticId::output_overloaded, part.origin.table,
                                         "output " + say_inside(facts.build, ref) + " is held at its limit of " +
                                             say(*inside.rating) + " in " + say_situation(*settled.situation),
                                         "let the output work a relay, and the relay the load"));
    });
}

}  // namespace loomfolio::rules
