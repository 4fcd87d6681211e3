// SPDX-License-Identifier: MIT
// A drawing that stays as it was after a small edit: what is known keeps its place and its course to the hundredth of a
// millimetre; what is new goes where there is room.
#pragma once

#include <optional>

#include "layout/laid.h"

namespace loomfolio::laying {

/// The earlier drawing with the edit worked in. Boxes are matched by name, or, where a name is new, by shape and wires;
/// wires by name. Nothing when too much has changed, when there is no room, or when a promise of `verify` would not
/// hold: then a fresh drawing is due.
std::optional<Laid> keep_placement(const Graph& graph, const Laid& earlier, const Graph& earlier_graph);

}  // namespace loomfolio::laying
