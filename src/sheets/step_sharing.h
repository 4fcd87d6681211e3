// SPDX-License-Identifier: MIT
// Which actions all hook-ups do alike, and which only one.
#pragma once

#include "sheets/assembly_plan.h"
#include "sheets/folio.h"

namespace loomfolio {

/// Whether the page shows it: all where it shows a whole build, else by what the hook-ups share.
bool shows_action(const SheetContext& context, const Action& action);

}  // namespace loomfolio
