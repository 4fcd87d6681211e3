// SPDX-License-Identifier: MIT
// Cavities of sealed connectors that stay empty: each needs a plug, or water runs in.
#pragma once

#include <string>
#include <vector>

#include "sheets/folio.h"

namespace loomfolio {

/// A connector that the kit brings, or all where a machine is wired anew, and its cavities without a wire.
struct EmptyCavities {
  std::string part;                ///< its label
  std::vector<std::string> marks;  ///< of the terminals, at least one
};

/// What the context's pages tell: on the common ones what all hook-ups leave empty alike, on a hook-up's own the rest. A
/// connector of the machine is left out: what sits in it is known to its owner alone.
std::vector<EmptyCavities> find_empty_cavities(const SheetContext& context);

/// Any hook-up leaves a cavity empty.
bool leaves_cavities_empty(const SheetContext& context);

}  // namespace loomfolio
