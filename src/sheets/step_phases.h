// SPDX-License-Identifier: MIT
// Which steps stand on the common sheets and which on a hook-up's own, and how many come before a place.
#pragma once

#include "sheets/assembly_plan.h"
#include "sheets/folio.h"

namespace loomfolio {

/// Between phases a reader goes to the steps of his own hook-up and back.
enum class Phase : std::uint8_t { bench, machine, end };

Phase phase_of(Stage stage);
/// A connector of one hook-up only is pushed together when its wires are in; others when all are.
Phase own_phase_of(Stage stage);

/// The page that chooses a hook-up asks for its conditions before any work.
bool is_asked_before(const SheetContext& context, Stage stage, const Action& action);
/// The context's pages hold the step.
bool is_step_shown(const SheetContext& context, Stage stage, const Action& action);

/// All hook-ups do the same once their signal wires are joined.
bool is_end_shared(const SheetContext& context);

/// How many steps the common run has up to the end of that phase.
int common_steps(const SheetContext& context, Phase last);

/// A hook-up's own steps are numbered on from here, each hook-up in a hundred of its own above the common steps: 100 for
/// A and 200 for B, or 200 and 300.
int own_steps_from(const SheetContext& context, std::size_t build_index);
/// How many steps a hook-up has of its own for the bench.
int own_bench_steps(const SheetContext& context, std::size_t build_index);

}  // namespace loomfolio
