// SPDX-License-Identifier: MIT
// Situations that hook-ups tell alike: the same wires change in the same way, with figures that a meter would not tell
// apart. They are drawn once.
#pragma once

#include <optional>
#include <string>

#include "sheets/folio.h"
#include "sheets/situation_pairs.h"

namespace loomfolio {

/// The pair that tells the situation: the one action before it; where that changes nothing, the nearest situation in which
/// something differs. Nothing when there is nothing to tell.
std::optional<SituationPair> find_told_pair(const SolvedBuild& solved, SituationId situation);

/// Whether a person with a meter would find the same in both: the wires that change are alike, live in the same way,
/// with amperes within a twentieth and volts within 0.15 V.
bool tells_same(const Build& a, const SituationPair& pair_a, const Build& b, const SituationPair& pair_b);

/// Where a hook-up's situation is drawn: on its own sheets, on the common ones, or on another hook-up's.
struct DrawnWhere {
  bool is_own = true;
  bool is_common = false;  ///< all hook-ups tell it alike
  std::string variant;     ///< of the hook-up that draws it, where neither
};
DrawnWhere drawn_where(const SheetContext& context, SituationId situation, const SituationPair& pair);

/// 'A, B': the letters of all hook-ups that tell the situation as this one does.
std::string letters_of_alike(const SheetContext& context, SituationId situation, const SituationPair& pair);

}  // namespace loomfolio
