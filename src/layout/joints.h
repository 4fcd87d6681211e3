// SPDX-License-Identifier: MIT
// Joints: boxes whose terminals stand where their wires come from, and the wires of terminals drawn wide: terminals of a box with one
// name on one side stand for one terminal, so that their wires may change places.
#pragma once

#include "layout/laid.h"
#include "layout/plan.h"

namespace loomfolio::laying {

/// Pass: gives each wire of a joint the side that looks at its other end, and orders the wires of a side as they come; so it
/// orders those of a wide terminal. Bodies must stand in rows. Sizes of the joints' bodies change with it.
void settle_joints(Plan& plan);

/// The joints and the boxes with wide terminals as they stand in the plan, on the sheet.
std::vector<SettledJoint> settled_joints(const Plan& plan);

/// The side of a joint's terminal on the sheet, and where along it, as against the others of that side.
struct JointWish {
  Side side = Side::top;
  Grid along = 0;
};

/// A joint with its terminals, one wish each, on the wished sides; ties keep the terminals' order.
SettledJoint arrange_joint(int number, const GraphBox& box, const std::vector<JointWish>& wishes);

}  // namespace loomfolio::laying
