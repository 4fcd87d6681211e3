// SPDX-License-Identifier: MIT
// Wires that cross on their way to one joint, or to one wide terminal, change places there.
#pragma once

#include "layout/laid.h"
#include "layout/plan.h"

namespace loomfolio::laying {

/// Pass over a drawing without dots, hops and labels, and the plan that it was drawn from: two wires that cross and end side by side
/// on one side of a joint change terminals where that makes the drawing cheaper and breaks no promise.
void untangle_joints(Plan& plan, Laid& laid);

}  // namespace loomfolio::laying
