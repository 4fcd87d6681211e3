// SPDX-License-Identifier: MIT
// A splice or an earth drawn as what it is: the joint in the middle, its wires fanned out, each named where it ends.
#pragma once

#include <string>
#include <vector>

#include "sheets/folio.h"
#include "sheets/text_flow.h"

namespace loomfolio {

/// The joint's wires to the left and right, a barrel in a sleeve between them. At least one wire.
Block splice_star(const SheetContext& context, const Splice& splice, Millimetres width);

/// A bolt with its rings at the left, the wires to the right.
Block earth_star(const SheetContext& context, const Earth& earth, Millimetres width);

/// Wires at a terminal in two groups: those that arrive (left) and those that leave (right); neither is empty when
/// there are two.
struct WireSides {
  std::vector<WireId> left, right;
};
WireSides sides_at(const Build& build, TerminalId terminal);

/// Metal of all the wires together.
SquareMillimetres total_area(const Build& build, const std::vector<WireId>& wires);

}  // namespace loomfolio
