// SPDX-License-Identifier: MIT
// What each wire carries at worst and what stands above it: the figures of the wire table.
#pragma once

#include <vector>

#include "solve/charging_extremes.h"

namespace loomfolio {

/// What a dead short to earth at the wire's far end would do. Order: from best to worst.
enum class WireVerdict : std::uint8_t {
  never_live,         ///< no situation feeds it: a short passes nothing through it
  earth_side,         ///< on the return side: a short passes nothing more through it
  limited,            ///< what feeds it - a control unit's limit, a coil, a resistor - passes no more than the wire carries
  is_protected,       ///< the fuse opens, at its slowest, before the wire is hurt
  starter_cable,      ///< unfused, the usual exception (33 CFR 183.455, ABYC E-11)
  opens_slowly,       ///< protected, but the short passes less than 3.5 x the fuse's rating
  not_studied,        ///< no protection study was made
  fuse_too_large,     ///< the rating is more than the wire carries for ever
  fuse_may_not_open,  ///< the short passes less than 1.35 x the rating: opening is not promised
  wire_hurt_first,    ///< the insulation passes its short-circuit limit before the slowest fuse opens
  unfused,            ///< nothing opens
};

struct WireLoad {
  Amperes worst{0};        ///< greatest current over all situations, without sign; effective where it alternates
  SituationId situation;   ///< in which; unset while it carries nothing in any
  ChargeState charging = ChargeState::as_stated;  ///< how the battery is charged then
  Volts drop{0};           ///< over its copper, crimps and contacts there, without sign
  Amperes ampacity{0};     ///< what it carries for ever at the build's ambient in its bundle; 0: not studied
  InsideRef fuse;          ///< nearest fuse above it; part unset: none
  WireVerdict verdict = WireVerdict::not_studied;
};

/// One a wire, by WireId. `solutions` are solve_all() of the build. Currents, drops, and the protection study of protection.h.
std::vector<WireLoad> find_wire_loads(const Build& build, const std::vector<Solution>& solutions);

/// From a study already made (protection.h), to make it once.
struct ProtectionStudy;
std::vector<WireLoad> find_wire_loads(const Build& build, const std::vector<Solution>& solutions, const ProtectionStudy& study);

/// Greatest current of each wire over all situations, without sign: the first column alone.
std::vector<Amperes> find_worst_currents(const Build& build, const std::vector<Solution>& solutions);

}  // namespace loomfolio
