// SPDX-License-Identifier: MIT
// Joints: boxes whose terminals stand where their wires come from.
#pragma once

#include "layout/laid.h"
#include "layout/plan.h"

namespace loomfolio::laying {

/// Pass: gives each wire of a joint the side that looks at its other end, and orders the wires of a side as they come.
/// Bodies must stand in rows. Sizes of the joints' bodies change with it.
void settle_joints(Plan& plan);

/// The joints as they stand in the plan, on the sheet.
std::vector<SettledJoint> settled_joints(const Plan& plan);

}  // namespace loomfolio::laying
