// SPDX-License-Identifier: MIT
// One sheet a situation: what is live before an action and what is live after it, side by side in one layout.
#pragma once

#include <string>
#include <vector>

#include "sheets/folio.h"
#include "sheets/situation_layout.h"

namespace loomfolio {

struct SituationSheets {
  std::vector<Sheet> sheets;         ///< without ids
  std::vector<std::string> anchors;  ///< by SituationId: where it is drawn; empty where it is not
  std::vector<std::string> drawn_on;  ///< by SituationId: the first sheet of the run that holds the anchor
  std::vector<int> same_as;          ///< by SituationId: the one whose picture it would repeat; -1: none
};

/// Of several hook-ups, what all tell alike is drawn on the common sheets, and what some tell alike on those of the first.
/// A situation that another sheet shows whole as its 'before', and that does less, gets no sheet of its own; nor does
/// one in which all is as in the one before it.
SituationSheets make_situation_sheets(const SheetContext& context);

}  // namespace loomfolio
