// SPDX-License-Identifier: MIT
#pragma once

#include "render/render.h"

namespace loomfolio {

/// The grey that is as light as `colour`: luminance by ITU-R BT.709 weights in linear light, coded again as sRGB
/// (IEC 61966-2-1).
Colour to_grey(Colour colour);

/// '#rrggbb', in small letters.
std::string to_hex(Colour colour);

/// `colour` as it is to be put on paper.
inline Colour shown(Colour colour, Colouring colouring) {
  return colouring == Colouring::grey ? to_grey(colour) : colour;
}

}  // namespace loomfolio
