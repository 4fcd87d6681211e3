// SPDX-License-Identifier: MIT
// A length that no wire of a motorcycle has: most often a slip of the unit. Bounds are common practice, no source.

#include "check/rules.h"

namespace loomfolio::rules {

constexpr Metres shortest_wire{0.02};  ///< two crimps and nothing between
constexpr Metres longest_wire{4};      ///< twice along a long machine

void length_absurd(const Facts& facts, Diagnostics& findings) {
  for (const Wire& wire : facts.build.wires) {
    if (!wire.length || (*wire.length >= shortest_wire && *wire.length <= longest_wire)) continue;
    findings.push_back(make_diagnostic(DiagnosticId::length_absurd, wire.origin.key("length"),
                                       "wire `" + wire.id + "` is " + say(*wire.length) + " long; on a motorcycle " +
                                           say(shortest_wire) + " to " + say(longest_wire) + " is to be expected",
                                       "look at the unit"));
  }
}

}  // namespace loomfolio::rules
