// SPDX-License-Identifier: MIT
// Placing wire labels beside finished courses.
#pragma once

#include "layout/laid.h"
#include "layout/plan.h"

namespace loomfolio::laying {

/// Puts a label near the `from` end of each wire, and near the `to` end as well when the wire is long. Gives the wires whose label
/// found no place.
std::vector<int> add_labels(const Plan& plan, Laid& laid);

/// Places for one more label a wire, of the sizes in `graph`, where nothing is: no part, wire, label, nor any of `taken`.
std::vector<PlacedLabel> find_places_beside(const Graph& graph, const Laid& laid, const std::vector<GridBox>& taken);

}  // namespace loomfolio::laying
