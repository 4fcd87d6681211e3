// SPDX-License-Identifier: MIT
// Wires of one verdict of the protection study, gathered under the fuse that should guard them: one finding a fuse.
#pragma once

#include <string>
#include <vector>

#include "check/facts.h"

namespace loomfolio {

/// Never empty. The first wire is the one that carries least.
struct GuardedWires {
  InsideRef fuse;
  std::vector<WireId> wires;
};

/// In order of fuses; empty without a study. Wires without a fuse above them are left out.
std::vector<GuardedWires> wires_with_verdict(const Facts& facts, WireVerdict verdict);

/// Wires whose verdict is good but which do not carry 135 % of their fuse for ever.
std::vector<GuardedWires> wires_below_135(const Facts& facts);

/// The fuse with its rating: 'fuse `fuses.f2` of 15 A'.
std::string say_fuse(const Build& build, InsideRef fuse);

/// What the wire carries, with what that was worked out for: 'carries 13.4 A for ever (1 mm2, 40 degC, 7 wires
/// together)'.
std::string say_carries(const Facts& facts, WireId wire);

/// A finding at the fuse's rating: `message` behind the fuse's name, and a note at each further wire.
Diagnostic make_guard_finding(const Facts& facts, const GuardedWires& guarded, DiagnosticId id,
                              const std::string& message, const std::string& hint);

}  // namespace loomfolio
