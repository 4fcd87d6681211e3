// SPDX-License-Identifier: MIT
// Runs of a finished drawing move nearer to what they join.
#pragma once

#include "layout/laid.h"
#include "layout/plan.h"

namespace loomfolio::laying {

/// Pass over a drawing without dots, hops and labels, and the plan that it was drawn from: a run that hangs in a U is drawn up until
/// something is in its way, and a jog goes where its run can stand in line. Room for labels stays. Parts stay where they are; no wire
/// gets longer or more bends or crossings. `held`, by wire: those that stay as they are; empty: none.
void tighten_runs(const Plan& plan, Laid& laid, const std::vector<char>& held = {});

}  // namespace loomfolio::laying
