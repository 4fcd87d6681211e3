// SPDX-License-Identifier: MIT
// Three drawings of one part side by side: at rest, pulled in, let go.
#pragma once

#include "sheets/folio.h"
#include "sheets/text_flow.h"
#include "sheets/works_story.h"

namespace loomfolio {

/// The strip at most that wide; frames go to a second row where they must.
Block make_works_strip(const SheetContext& context, const CoilStory& story, Millimetres width);

}  // namespace loomfolio
