// SPDX-License-Identifier: MIT
// How thick courses are drawn, and the wires that they take in. Only diagram_*.cpp include this.
#pragma once

#include <vector>

#include "sheets/diagram_trunks.h"
#include "sheets/diagram_wire.h"
#include "sheets/draw.h"

namespace loomfolio {

/// A wire that hops over the wires of an upright trunk hops once, over all of it.
void hop_over_trunks(WireCourse& course, const std::vector<Trunk>& trunks);

/// What is drawn of the wire: one path, or where trunks take it in the pieces that they leave, with their fans.
std::vector<std::vector<PathPiece>> paths_of(const WireCourse& course, std::size_t wire, const std::vector<Trunk>& trunks, Point origin);

/// The thick course with its numbers.
void draw_trunk(Items& items, const DiagramGraph& diagram, const Trunk& trunk, Point origin);

/// A short level piece, as the legend shows it, from the left end.
void draw_trunk_sign(Items& items, Point from, Millimetres length);

}  // namespace loomfolio
