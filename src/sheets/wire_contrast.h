// SPDX-License-Identifier: MIT
// Whether two colours can be told apart on a black-and-white copier.
#pragma once

#include "sheets/sheet.h"

namespace loomfolio {

/// How light the colour is to the eye, 0 black to 1 white: CIE lightness of its sRGB values, as IEC 61966-2-1 and
/// ISO/CIE 11664-4 define them (constants from memory).
double lightness_of(Colour colour);

}  // namespace loomfolio
