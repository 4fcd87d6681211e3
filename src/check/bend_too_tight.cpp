// SPDX-License-Identifier: MIT
// A wire leaves one terminal and enters another, most often with a quarter bend at each: it needs half a turn of its
// least bend radius, 6 times its outside diameter (NASA workmanship standard, section 403; two bends: common practice,
// no source). Speaks only of wires whose length the spec gives.
#include <numbers>

#include "check/rules.h"
#include "solve/conductor.h"

namespace loomfolio::rules {

constexpr double radius_in_diameters = 6;

void bend_too_tight(const Facts& facts, Diagnostics& findings) {
  for (const Wire& wire : facts.build.wires) {
    if (!wire.length || wire.length->number() <= 0 || wire.is_auto_size) continue;
    const Millimetres outside = outside_diameter(wire).most;
    const Metres bends(std::numbers::pi * radius_in_diameters * outside.number() / 1000);
    if (*wire.length >= bends) continue;
    findings.push_back(make_diagnostic(
        DiagnosticId::bend_too_tight, wire.origin.key("length"),
        "wire `" + wire.id + "` of " + say(*wire.length) + " and " + say(outside) +
            " across has no room for a quarter bend at each end; at 6 diameters that takes " + say(bends),
        "give it more length, or finer strands and a thinner wall"));
  }
}

}  // namespace loomfolio::rules
