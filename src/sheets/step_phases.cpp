// SPDX-License-Identifier: MIT
#include "sheets/step_phases.h"

#include <algorithm>

#include "sheets/hook_ups.h"
#include "sheets/step_sharing.h"

namespace loomfolio {
namespace {

SheetContext context_of(const SheetContext& context, std::size_t build_index, Extent extent) {
  SheetContext other{context.input, *context.hook_ups->builds[build_index], {}, {}};
  other.hook_ups = context.hook_ups;
  other.build_index = build_index;
  other.extent = extent;
  return other;
}

/// Steps of the context for which `counts` says yes, by their stage.
template <class Counts>
int count_steps(const SheetContext& context, const Counts& counts) {
  int count = 0;
  for (const StagePlan& plan : plan_assembly(context.solved, context.words()))
    for (const ActionGroup& group : plan.groups)
      for (const Action& action : group.actions)
        if (counts(plan.stage) && is_step_shown(context, plan.stage, action)) ++count;
  return count;
}

}  // namespace

Phase phase_of(Stage stage) {
  if (stage <= Stage::splices) return Phase::bench;
  return stage <= Stage::signals ? Phase::machine : Phase::end;
}

Phase own_phase_of(Stage stage) { return stage == Stage::plugs ? Phase::machine : phase_of(stage); }

bool is_asked_before(const SheetContext& context, Stage stage, const Action& action) {
  if (context.hook_ups == nullptr || stage != Stage::prepare || action.type != ActionType::author) return false;
  const std::vector<AuthorStep>& steps = context.build().steps;
  return std::any_of(steps.begin(), steps.end(),
                     [&](const AuthorStep& step) { return step.before == "start" && step.text == action.text; });
}

bool is_step_shown(const SheetContext& context, Stage stage, const Action& action) {
  return shows_action(context, action) && !is_asked_before(context, stage, action);
}

bool is_end_shared(const SheetContext& context) {
  for (std::size_t b = 0; b < context.hook_ups->builds.size(); ++b) {
    const SheetContext own = context_of(context, b, Extent::own);
    for (const StagePlan& plan : plan_assembly(own.solved, own.words()))
      for (const ActionGroup& group : plan.groups)
        for (const Action& action : group.actions)
          if (own_phase_of(plan.stage) == Phase::end && shows_action(own, action)) return false;
  }
  return true;
}

int common_steps(const SheetContext& context, Phase last) {
  return count_steps(context_of(context, 0, Extent::common), [&](Stage stage) { return phase_of(stage) <= last; });
}

int own_steps_from(const SheetContext& context, std::size_t build_index) {
  const int hundreds = common_steps(context, Phase::end) / 100 + 1;
  return (hundreds + static_cast<int>(build_index)) * 100;
}

int own_bench_steps(const SheetContext& context, std::size_t build_index) {
  return count_steps(context_of(context, build_index, Extent::own),
                     [](Stage stage) { return own_phase_of(stage) == Phase::bench; });
}

}  // namespace loomfolio
