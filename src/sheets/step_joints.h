// SPDX-License-Identifier: MIT
// The wire ends that are joined at one part or earth: a numbered row with a box each, beside the part's faces with the
// terminals named.
#pragma once

#include <functional>
#include <string>
#include <vector>

#include "sheets/assembly_plan.h"
#include "sheets/draw.h"
#include "sheets/fitting_picture.h"
#include "sheets/folio.h"
#include "sheets/text_flow.h"

namespace loomfolio {

/// Places of a step's number, box and text from the near edge, and the room above and below a row: the same in rows of every kind.
inline constexpr Millimetres step_box_x{12}, step_box_size{3.6}, step_text_x{19}, step_row_pad{1.1};

/// Number and box on the baseline of the first line, a hairline under the row; `row` already has its height.
void add_step_marks(Block& row, const std::string& number, const TypeSetting& setting);

/// The joins of one part, set to `width`; `next_number` is asked once a row.
Block joint_block(const SheetContext& context, const std::vector<Action>& actions, Millimetres width,
                  const std::function<std::string()>& next_number);

/// Which tool makes that end; a key of the words.
std::string_view tool_key(FittingShape shape, const Wire& wire);

}  // namespace loomfolio
