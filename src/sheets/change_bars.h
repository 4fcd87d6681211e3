// SPDX-License-Identifier: MIT
// What a folio says that an earlier one did not, marked beside it.
#pragma once

#include <set>
#include <string>
#include <vector>

#include "model/words.h"
#include "sheets/sheet.h"

namespace loomfolio {

/// What sheets say: every text with the one to its left on the same line, so that a figure known from another row is not taken for
/// this row's; on drawings with the one that it touches: a wire's colour with its number. References are still marks: a sheet that only moved says nothing new.
using SaidTexts = std::set<std::string>;
SaidTexts gather_said(const std::vector<Sheet>& sheets, const TextMeasure& measure);

/// An earlier state of the same job.
struct EarlierFolio {
  SaidTexts said;
  std::string revision, date;  ///< as the pages name them; may be empty
};

/// Puts a bar into the binding margin beside every text that the earlier folio did not have, on drawings a box around the text as
/// well, and says at the foot of the margin what they mean. Sheets without a new text stay as they are.
void put_change_bars(std::vector<Sheet>& sheets, const EarlierFolio& earlier, const Words& words, const TextMeasure& measure);

}  // namespace loomfolio
