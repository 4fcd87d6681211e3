// SPDX-License-Identifier: MIT
// The last passes over a drawing in page directions. Only inside_*.cpp include this.
#pragma once

#include "layout/inside_flow.h"

namespace loomfolio::inside {

void put_dots(PartDrawing& drawing);
void put_hops(PartDrawing& drawing);
void put_baselines(const Plan& plan, PartDrawing& drawing);

}  // namespace loomfolio::inside
