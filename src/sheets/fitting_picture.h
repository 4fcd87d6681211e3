// SPDX-License-Identifier: MIT
// A wire's end with its fitting, drawn small: what a person holds when a step is done.
#pragma once

#include <vector>

#include "model/build.h"
#include "sheets/draw.h"

namespace loomfolio {

/// The shapes that wire ends come in.
enum class FittingShape : std::uint8_t { blade, ring, sealed, contact, bullet, splice, lead, bare, cap };

/// What stands on the wire's end at that terminal. The part's own body, which takes no wire end of its own, is drawn as
/// a ring.
FittingShape fitting_shape(const Build& build, TerminalId terminal);

/// The fitting at the left, the wire leaving to the right; not to scale. 9 mm high.
Block fitting_picture(FittingShape shape, const Wire& wire, Millimetres width);

/// A splice with its wires leaving to both sides, at most six a side drawn.
Block splice_picture(const std::vector<const Wire*>& left, const std::vector<const Wire*>& right, Millimetres width);

}  // namespace loomfolio
