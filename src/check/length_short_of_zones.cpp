// SPDX-License-Identifier: MIT
// A wire shorter than the way between the zones of its two ends cannot reach.

#include "check/rules.h"

namespace loomfolio::rules {

constexpr double shortfall_allowed = 0.9;  ///< zones are places of some depth: a tenth is let pass

void length_short_of_zones(const Facts& facts, Diagnostics& findings) {
  for (const Wire& wire : facts.build.wires) {
    const ZoneId from = zone_of(facts.build, wire.from), to = zone_of(facts.build, wire.to);
    if (!wire.length || !from.is_set() || !to.is_set()) continue;
    const Metres a = facts.build.zone(from).place, b = facts.build.zone(to).place;
    const Metres apart = a < b ? b - a : a - b;
    if (wire.length->number() >= apart.number() * shortfall_allowed) continue;
    findings.push_back(make_diagnostic(DiagnosticId::length_short_of_zones, wire.origin.key("length"),
                                       "wire `" + wire.id + "` is " + say(*wire.length) +
                                           " long; its ends are in zones " + say(apart) + " apart, `" +
                                           facts.build.zone(from).id + "` and `" + facts.build.zone(to).id + "`",
                                       "correct the length, or the places of the zones"));
  }
}

}  // namespace loomfolio::rules
