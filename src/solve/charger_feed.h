// SPDX-License-Identifier: MIT
// Whether a generator reaches a charger.
#pragma once

#include <vector>

#include "solve/circuit.h"
#include "solve/islands.h"

namespace loomfolio {

/// Where to look: a build in one situation, perhaps with a wire or a winding gone.
struct FeedQuestion {
  const Build& build;
  const Circuit& circuit;
  const Situation& situation;
  WireId open_wire;
  InsideRef dead;
};

/// Share of its power that a charger can give: 1 when every `fed_by` terminal reaches the same generator through metal
/// as it stands, standard::one_phase_share when two of three do, 0 when the generator does not reach it. 1 for a
/// charger without `fed_by`.
double charger_feed_share(const FeedQuestion& question, PartId part, const Inside& charger);

/// By node: which generator it hangs on through metal, switches and contacts closed, as a number; -1: on none. A
/// charger may feel the loss of a wire or winding of its own generator, and of no other.
std::vector<int> generators_at_nodes(const Build& build, const Circuit& circuit);

/// What hangs together through wires, links, fuses and switches as they stand, a generator's windings left out.
Islands metal_without_windings(const FeedQuestion& question);

}  // namespace loomfolio
