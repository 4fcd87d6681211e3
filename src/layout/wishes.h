// SPDX-License-Identifier: MIT
// What an author asks of a drawing: parts pinned to an edge of their zone, things kept apart. Pins hold always; what is kept apart is
// priced where parts are placed, and a distance where wires run.
#pragma once

#include "layout/laid.h"
#include "layout/plan.h"

namespace loomfolio::laying {

/// Gives bodies the ends of the rows that their boxes are pinned to. Bodies must be made.
void take_pins(Plan& plan);

/// Whether the body may stand in that row, before the `place`th of the row's other bodies in its column, for its own pins and theirs.
bool may_stand(const Plan& plan, int body, int row, int place);

/// Whether two bodies of one column may change places.
bool may_swap(const Plan& plan, int body, int other);

/// The places in rows of all bodies made to fit the pins; bodies must stand in rows.
void obey_pins(Plan& plan);

/// What it costs, in 0.01 mm of wire, that two boxes to be kept apart have only that much room between them.
long apart_charge(const Plan& plan, GridBox one, GridBox other);

/// The least distance from that row to the one below it that keeps apart what stands in them; bodies stand at `body_x`.
Grid row_gap_for_apart(const Plan& plan, const std::vector<Grid>& body_x, int row);

/// Whether every pinned part stands where it is pinned: nothing of its zone stands between it and that edge, but what is pinned there too.
bool pins_hold(const Graph& graph, const Laid& laid);

/// Whether what the author asks for is the same in both, by the names of boxes and wires.
bool asks_the_same(const Graph& graph, const Graph& earlier);

}  // namespace loomfolio::laying
