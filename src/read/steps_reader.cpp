// SPDX-License-Identifier: MIT
// What the author adds to the generated pages: steps of the assembly, and the history of changes.
#include <algorithm>

#include "read/draft.h"

namespace loomfolio {
namespace {

const std::vector<std::string> stages = {"start",  "bracket", "splices", "loom",    "earths", "signals",
                                         "supply", "plugs",   "fuses",   "battery", "tests"};

/// A stage, or the id of a part.
std::string read_stage(TableReader& table, std::string_view key, const std::vector<Part>& parts) {
  const PlacedText stage = table.placed_line(key, Need::may);
  if (!stage.where.is_set()) return {};
  const bool is_part =
      std::any_of(parts.begin(), parts.end(), [&](const Part& part) { return part.id == stage.text; });
  if (!is_part && std::find(stages.begin(), stages.end(), stage.text) == stages.end())
    table.refuse_word(key, stage, stages);
  return stage.text;
}

}  // namespace

std::vector<AuthorStep> read_steps(const std::vector<Part>& parts, TableReader& owner, const std::string& prefix) {
  std::vector<AuthorStep> steps;
  for (const TomlValue* tree : owner.tables("step", 500)) {
    TableReader table(*tree, "[[" + prefix + "step]]", owner.findings());
    AuthorStep step;
    step.origin = table.origin();
    step.before = read_stage(table, "before", parts);
    step.after = read_stage(table, "after", parts);
    if (tree->find("before") && tree->find("after"))
      table.report(DiagnosticId::step_without_stage, step.origin.key("after"),
                   "a step stands before a stage or after one, not both");
    if (!tree->find("before") && !tree->find("after"))
      table.report(DiagnosticId::step_without_stage, table.where(),
                   "the step says neither `before` nor `after` which stage it stands",
                   "the stages are " + list_words(stages));
    step.text = table.prose("text", Need::must);
    step.caution = table.prose("caution", Need::may);
    for (const PlacedText& thing : table.lines("bag")) step.bag.push_back(thing.text);
    for (const PlacedText& tool : table.lines("tools")) step.tools.push_back(tool.text);
    table.refuse_unknown_keys();
    steps.push_back(std::move(step));
  }
  return steps;
}

std::vector<Change> read_changes(TableReader& spec) {
  std::vector<Change> changes;
  for (const TomlValue* tree : spec.tables("change", 1000)) {
    TableReader table(*tree, "[[change]]", spec.findings());
    Change change;
    change.origin = table.origin();
    change.revision = table.line("revision", Need::must);
    change.date = read_date(table, Need::must);
    change.what = table.prose("what", Need::must);
    change.why = table.prose("why", Need::may);
    table.refuse_unknown_keys();
    changes.push_back(std::move(change));
  }
  return changes;
}

}  // namespace loomfolio
