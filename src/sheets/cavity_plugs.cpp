// SPDX-License-Identifier: MIT
#include "sheets/cavity_plugs.h"

#include <algorithm>

#include "sheets/hook_ups.h"
#include "sheets/wire_star.h"

namespace loomfolio {
namespace {

/// What stands for what the spec leaves unsaid.
PlugSource plugs_of(const Part& part) {
  if (part.plugs != PlugSource::unsaid) return part.plugs;
  return part.provided == Provider::machine ? PlugSource::unsaid : PlugSource::bag;
}

/// The sealed terminals of that part at which no wire ends; none of a connector that nothing is known of.
std::vector<std::string> empty_marks(const Build& build, const Part& part) {
  std::vector<std::string> marks;
  if (plugs_of(part) == PlugSource::unsaid) return marks;
  const auto wires_at = wires_at_terminals(build);
  const std::vector<KindTerminal>& terminals = build.kind_of(part).terminals;
  for (std::size_t k = 0; k < part.terminals.size(); ++k)
    if (terminals[k].form == TerminalForm::sealed && wires_at[part.terminals[k].at()].empty())
      marks.push_back(terminals[k].id);
  return marks;
}

bool is_alike_in_all(const SheetContext& context, const Part& part, const std::vector<std::string>& marks) {
  const auto& builds = context.hook_ups->builds;
  return std::all_of(builds.begin(), builds.end(), [&](const SolvedBuild* other) {
    const std::vector<Part>& parts = other->build.parts;
    return std::any_of(parts.begin(), parts.end(), [&](const Part& found) {
      return found.id == part.id && plugs_of(found) == plugs_of(part) && empty_marks(other->build, found) == marks;
    });
  });
}

}  // namespace

std::vector<EmptyCavities> find_empty_cavities(const SheetContext& context) {
  std::vector<EmptyCavities> found;
  const Build& build = context.build();
  for (const Part& part : build.parts) {
    std::vector<std::string> marks = empty_marks(build, part);
    if (marks.empty() || plugs_of(part) == PlugSource::fitted) continue;
    const bool is_whole = context.extent == Extent::whole || context.hook_ups == nullptr;
    if (!is_whole && is_alike_in_all(context, part, marks) != (context.extent == Extent::common)) continue;
    found.push_back({part.label, part.provided, plugs_of(part), std::move(marks)});
  }
  return found;
}

bool leaves_cavities_empty(const SheetContext& context) {
  const auto is_any = [](const Build& build) {
    return std::any_of(build.parts.begin(), build.parts.end(),
                       [&](const Part& part) { return !empty_marks(build, part).empty(); });
  };
  if (context.hook_ups == nullptr) return is_any(context.build());
  const auto& builds = context.hook_ups->builds;
  return std::any_of(builds.begin(), builds.end(), [&](const SolvedBuild* other) { return is_any(other->build); });
}

}  // namespace loomfolio
