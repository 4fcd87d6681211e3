// SPDX-License-Identifier: MIT
// Pairs of states that are small enough share a sheet, each with its name over it.
#pragma once

#include <vector>

#include "sheets/folio.h"
#include "sheets/situation_layout.h"

namespace loomfolio {

struct GatheredSheet {
  Sheet sheet;  ///< without an id
  std::vector<const LaidPair*> pairs;
};

/// All of them, laid out as Arrangement::gathered, on as few sheets as they need; numbers rise on each sheet.
std::vector<GatheredSheet> gather_pairs(const SheetContext& context, const std::vector<const LaidPair*>& pairs);

}  // namespace loomfolio
