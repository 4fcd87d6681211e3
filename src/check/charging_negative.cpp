// SPDX-License-Identifier: MIT
// The battery gives current while the engine runs: it will be flat at the end of the ride.
#include <cmath>

#include "check/rules.h"

namespace loomfolio::rules {

constexpr Amperes as_good_as_even{0.05};

namespace {

bool has_charger(const Build& build) {
  bool has = false;
  each_inside(build,
              [&](InsideRef, const Part&, const Inside& inside) { has = has || inside.type == InsideType::charger; });
  return has;
}

}  // namespace

void charging_negative(const Facts& facts, Diagnostics& findings) {
  if (!has_charger(facts.build)) return;
  for (const SettledSituation& settled : settled_situations(facts)) {
    if (settled.situation->engine != EngineState::running) continue;
    each_inside(facts.build, [&](InsideRef ref, const Part&, const Inside& inside) {
      if (inside.type != InsideType::source) return;
      const Amperes given = given_by_source(facts, *settled.solution, ref);
      if (given <= as_good_as_even) return;
      findings.push_back(make_diagnostic(DiagnosticId::charging_negative, settled.situation->origin.table,
                                         say_inside(facts.build, ref) + " gives " + say(given) + " in " +
                                             say_situation(*settled.situation) + " though the engine runs",
                                         "turn something off, or fit a larger generator"));
    });
  }
}

}  // namespace loomfolio::rules
