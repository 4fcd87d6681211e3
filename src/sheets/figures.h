// SPDX-License-Identifier: MIT
// Computed figures as the sheets print them. The sheets measure nothing: whoever composes a folio fills these from
// solve/.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "model/build.h"

namespace loomfolio {

/// What one wire carries at worst.
struct WireFigures {
  std::optional<Amperes> most;    ///< over all situations
  SituationId in_situation;       ///< where that is
  std::optional<Volts> drop;      ///< along the wire, there
  std::optional<InsideRef> fuse;  ///< the fuse that protects it; unset: none does
};

/// How well a fuse and the wires behind it go together.
enum class Protection : std::uint8_t { unknown, good, tight, poor };

struct FuseFigures {
  InsideRef fuse;
  std::optional<Amperes> load;  ///< most, over all situations
  SituationId in_situation;
  std::vector<PartId> feeds;     ///< parts that it protects
  std::vector<InsideRef> stops;  ///< what stops when it blows
  WireId smallest_wire;          ///< behind it
  Protection protection = Protection::unknown;
};

struct BuildFigures {
  std::vector<WireFigures> wires;  ///< by WireId; empty: not computed
  std::vector<FuseFigures> fuses;
};

}  // namespace loomfolio
