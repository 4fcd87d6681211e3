// SPDX-License-Identifier: MIT
// What is added to finished courses: dots where a net branches, hops where nets cross.
#pragma once

#include "layout/laid.h"
#include "layout/plan.h"

namespace loomfolio::laying {

void add_dots(const Plan& plan, Laid& laid);
void add_hops(Laid& laid);

}  // namespace loomfolio::laying
