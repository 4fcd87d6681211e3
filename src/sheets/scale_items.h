// SPDX-License-Identifier: MIT
// Makes drawn items smaller or larger, lines and type included.
#pragma once

#include "sheets/draw.h"

namespace loomfolio {

/// Scales everything about `fixed`, which stays where it is.
void scale_items(Items& items, Point fixed, double factor);

}  // namespace loomfolio
