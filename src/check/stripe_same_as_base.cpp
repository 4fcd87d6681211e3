// SPDX-License-Identifier: MIT
// A stripe of the colour it lies on is no stripe.

#include "check/rules.h"

namespace loomfolio::rules {

void stripe_same_as_base(const Facts& facts, Diagnostics& findings) {
  for (const Wire& wire : facts.build.wires)
    if (!wire.colour.stripe.empty() && wire.colour.stripe == wire.colour.base)
      findings.push_back(make_diagnostic(DiagnosticId::stripe_same_as_base, wire.origin.key("stripe"),
                                         "wire `" + wire.id + "` is " + wire.colour.base + " with a stripe of " +
                                             wire.colour.stripe + ", which cannot be seen",
                                         "leave the stripe out, or choose another"));
}

}  // namespace loomfolio::rules
