// SPDX-License-Identifier: MIT
// Which wires tell what a situation does: those in which something changes, with the way of the current from the supply
// to them and from them back.
#pragma once

#include <vector>

#include "check/paths.h"
#include "sheets/situation_pairs.h"

namespace loomfolio {

enum class StoryWidth : std::uint8_t {
  everything,  ///< every wire that carries current or holds volts in either state
  waiting,     ///< what changes; a wire that comes to hold volts without current counts
  flowing,     ///< where current changes, and no more
};

/// A story too long for a sheet is told in several: of the consumers that change, each tells an equal share.
struct StoryShare {
  int index = 0, count = 1;
};

/// Wires of the story, in order; none when nothing changes that the width counts.
std::vector<WireId> find_story(const Build& build, const SituationPair& pair, StoryWidth width, StoryShare share = {});

/// Parts that take the current which passes the element - a contact, an output, a switch - in that state, in order.
std::vector<PartId> find_fed(const Build& build, const SolvedState& state, InsideRef element);

enum class Along : std::uint8_t { up, down };

/// Parts that the current in the wire reaches, down its way or up against it, in order: down, what takes it; up, what took it before, and
/// batteries and chargers that give it.
std::vector<PartId> find_parts_along(const Build& build, const Paths& paths, const SolvedState& state, WireId wire, Along along);

}  // namespace loomfolio
