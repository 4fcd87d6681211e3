// SPDX-License-Identifier: MIT
// Placing wire labels beside finished courses.
#pragma once

#include "layout/laid.h"
#include "layout/plan.h"

namespace loomfolio::laying {

/// Puts a label near the `from` end of each wire, and near the `to` end as well when the wire is long. Gives the wires whose label
/// found no place.
std::vector<int> add_labels(const Plan& plan, Laid& laid);

}  // namespace loomfolio::laying
