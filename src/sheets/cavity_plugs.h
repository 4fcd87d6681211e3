// SPDX-License-Identifier: MIT
// Cavities of sealed connectors that stay empty: each needs a plug, or water runs in.
#pragma once

#include <string>
#include <vector>

#include "sheets/folio.h"

namespace loomfolio {

/// A connector and its cavities without a wire of these pages.
struct EmptyCavities {
  std::string part;                ///< its label
  Provider provided = Provider::kit;  ///< machine: its own wires may sit in cavities that these pages leave alone
  PlugSource plugs = PlugSource::bag;  ///< as the pages tell it: the bag, or nowhere
  std::vector<std::string> marks;  ///< of the terminals, at least one
};

/// What the context's pages tell: on the common ones what all hook-ups leave empty alike, on a hook-up's own the rest. A
/// connector that comes with its plugs is left out, and one of the machine of which the spec says nothing: what sits in
/// it is known to its owner alone.
std::vector<EmptyCavities> find_empty_cavities(const SheetContext& context);

/// Any hook-up leaves a cavity empty.
bool leaves_cavities_empty(const SheetContext& context);

}  // namespace loomfolio
