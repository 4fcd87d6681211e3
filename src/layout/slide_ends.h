// SPDX-License-Identifier: MIT
// Splices and earth symbols of a finished drawing move nearer to their wires.
#pragma once

#include "layout/laid.h"
#include "layout/plan.h"

namespace loomfolio::laying {

/// Pass over a drawing without dots, hops and labels, and the plan that it was drawn from: a joint whose wires all leave at one side
/// slides that way until something is in its way, and an earth symbol goes in line with its wire, which saves two bends. `held`, by wire:
/// those that stay as they are; empty: none.
void slide_ends(const Plan& plan, Laid& laid, const std::vector<char>& held = {});

}  // namespace loomfolio::laying
