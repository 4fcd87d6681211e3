// SPDX-License-Identifier: MIT
// Where current leaves what a situation's sheet draws, or comes into it, by wires that the sheet leaves out.
#pragma once

#include <vector>

#include "sheets/situation_pairs.h"

namespace loomfolio {

/// All that goes one way at one drawn part or splice.
struct CurrentExit {
  TerminalId at;              ///< one of the terminals of what is drawn
  bool is_leaving = true;     ///< else it comes in
  std::vector<WireId> wires;  ///< that are not drawn, in order
  Amperes before, after;      ///< in each state; none: 0
  std::vector<PartId> parts;  ///< what takes it (or, coming in, sends it) in either state, in order
};

/// Of the earlier state in order of parts and splices, then what the later one adds. `drawn`: the wires of the sheet.
std::vector<CurrentExit> find_exits(const Build& build, const SituationPair& pair, const std::vector<WireId>& drawn);

}  // namespace loomfolio
