// SPDX-License-Identifier: MIT
// Wires that come off the same reel.
#pragma once

#include <string>
#include <vector>

#include "sheets/folio.h"

namespace loomfolio {

/// Wires of one size, insulation and colour, in wire order.
struct WireGroup {
  std::vector<WireId> wires;
  Metres total;
  bool has_all_lengths = true;
};

/// Groups by area, then insulation, then colour; of the wires that the page shows and that the machine has not already.
std::vector<WireGroup> group_wires(const SheetContext& context);

/// Metres or feet, to a tenth, rounded up.
std::string print_reel_length(Metres length, UnitSystem units);
std::string reel_unit(UnitSystem units, const Words& words);

}  // namespace loomfolio
