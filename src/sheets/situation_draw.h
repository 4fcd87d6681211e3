// SPDX-License-Identifier: MIT
// One state of a pair as drawn: its caption over the diagram.
#pragma once

#include "sheets/draw.h"
#include "sheets/folio.h"
#include "sheets/situation_layout.h"

namespace loomfolio {

enum class Moment : std::uint8_t { before, after };

/// In the middle of the frame, grown a little where it leaves room; never below `foot`.
void draw_state(Items& items, const SheetContext& context, const LaidPair& laid, Moment moment, const Rect& frame,
                Millimetres foot);

}  // namespace loomfolio
