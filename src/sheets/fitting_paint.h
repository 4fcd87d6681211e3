// SPDX-License-Identifier: MIT
// Colours and pens of metal things that are drawn as they look: fittings, fuses, joints.
#pragma once

#include "sheets/look.h"

namespace loomfolio::fitting_paint {

inline constexpr Colour metal{0xc9, 0xca, 0xcc}, dark_metal{0xa9, 0xab, 0xae}, rubber{0x8f, 0xa8, 0x8f},
    copper{0xc4, 0x7a, 0x3c}, housing{0xe9, 0xe9, 0xe6};
inline const Pen outline{look::ink, look::line};
inline const Pen detail{look::ink, look::thin_line};

}  // namespace loomfolio::fitting_paint
