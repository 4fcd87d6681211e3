// SPDX-License-Identifier: MIT
// Pages that read from right to left. What is laid out from the left is turned round as a whole, and the marks that
// keep mixed lines in order are put in when the folio is done.
#pragma once

#include <string>

#include "sheets/draw.h"

namespace loomfolio {

/// Turns items round so that what stood at x stands at `sum` - x; texts keep their reading and change sides. Figures
/// with arcs are moved, not turned.
void mirror_items(Items& items, Millimetres sum);
/// The block turned round in its width, when the language reads from right to left; else as it is.
Block mirrored_if(bool is_right_to_left, Block block);

/// `text` with the invisible marks of Unicode's bidirectional algorithm: a line with words of such a script reads from
/// right to left even if it begins with Latin letters, and so does a piece of a line that begins or ends with a space;
/// a number keeps its unit at its right, '3 A', and a terminal's mark its sign, 'B-'.
std::string with_reading_marks(const std::string& text);

/// Puts those marks into every text and alternative text of the folio.
void put_reading_marks(Folio& folio);

}  // namespace loomfolio
