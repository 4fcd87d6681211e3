// SPDX-License-Identifier: MIT
// Wire too thin to live on a machine that shakes. 0.35 mm2 is common practice, no source.

#include "check/rules.h"

namespace loomfolio::rules {

constexpr SquareMillimetres thinnest{0.35};

void wire_very_thin(const Facts& facts, Diagnostics& findings) {
  for (const Wire& wire : facts.build.wires) {
    if (wire.is_auto_size || wire.area.number() * size_tolerance >= thinnest.number()) continue;
    findings.push_back(make_diagnostic(
        DiagnosticId::wire_very_thin, wire.origin.key("size"),
        "wire `" + wire.id + "` is " + print_size(wire) + "; below " + say(thinnest) + " a wire breaks by shaking",
        "use at least 0.5 mm2, whatever the current"));
  }
}

}  // namespace loomfolio::rules
