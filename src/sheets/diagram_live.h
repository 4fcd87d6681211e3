// SPDX-License-Identifier: MIT
// Wires in a situation: where current flows, in their colours with arrowheads the way it runs; where volts wait,
// hollow; where there is nothing, thin and grey. Weight and pattern tell it, colour only helps. Only diagram_*.cpp
// include this.
#pragma once

#include <vector>

#include "sheets/diagram_draw.h"

namespace loomfolio {

/// The outline of a wire with volts but no current: broken along the wire, whole where it hops, so that the hop is seen.
enum class HollowLines : std::uint8_t { broken, whole };

void add_wire_in_state(Items& items, const std::vector<PathPiece>& path, const Wire& wire, const WireState& state,
                       HollowLines lines = HollowLines::broken);

/// The straight end of a wire at a local earth; `toward_earth` is 1 when the wire's second end is the earth, else -1.
void draw_live_stub(Items& items, Point top, Point foot, const Wire& wire, const WireState& state, int toward_earth);

/// Arrowheads on the wires in which current flows one way, clear of labels and hops.
void draw_flow(Items& items, const DiagramInk& ink, Point origin);

/// An arrowhead on a wire of that width, its middle at `at`; the way is a unit step right, left, down or up.
void add_arrow(Items& items, Point at, int way_x, int way_y, Millimetres wire);

}  // namespace loomfolio
