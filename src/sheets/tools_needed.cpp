// SPDX-License-Identifier: MIT
#include "sheets/tools_needed.h"

#include <algorithm>
#include <set>

#include "base/text.h"
#include "sheets/assembly_plan.h"
#include "sheets/names.h"

namespace loomfolio {
namespace {

/// What the wires' ends are, gathered from both ends of every wire.
struct Fittings {
  std::set<TerminalForm> forms;
  std::set<std::string> threads;  ///< M4, M6
  bool has_splices = false, has_earths = false, has_cables = false;
  bool has_old_contacts = false;  ///< one of the machine comes out of its cavity
};

void gather_end(const Build& build, TerminalId id, Fittings& fittings) {
  const Terminal& terminal = build.terminal(id);
  if (terminal.owner == OwnerType::splice) fittings.has_splices = true;
  if (terminal.owner == OwnerType::earth) {
    fittings.forms.insert(TerminalForm::stud);
    fittings.has_earths = true;
    const std::string& thread = build.earths[static_cast<std::size_t>(terminal.owner_index)].thread;
    if (!thread.empty()) fittings.threads.insert(thread);
  }
  const KindTerminal* kind = kind_terminal_of(build, id);
  if (kind == nullptr) return;
  fittings.forms.insert(kind->form);
  if (is_in_housing(kind->form) && !wires_to_free(build, id).empty()) fittings.has_old_contacts = true;
  if (!kind->thread.empty()) fittings.threads.insert(kind->thread);
}

Fittings gather(const std::vector<const Build*>& builds) {
  Fittings fittings;
  for (const Build* build : builds)
    for (const Wire& wire : build->wires) {
      gather_end(*build, wire.from, fittings);
      gather_end(*build, wire.to, fittings);
      if (wire.insulation == Insulation::battery_cable) fittings.has_cables = true;
    }
  return fittings;
}

}  // namespace

std::vector<std::string> tools_needed(const std::vector<const Build*>& builds, const Words& words) {
  const Fittings fittings = gather(builds);
  const auto has = [&](TerminalForm form) { return fittings.forms.count(form) > 0; };
  std::vector<std::string> tools{words("tools.meter"), words("tools.cutter")};
  if (has(TerminalForm::blade) || has(TerminalForm::bullet) || has(TerminalForm::lead) || has(TerminalForm::cavity))
    tools.push_back(words("tools.crimper_open"));
  if (has(TerminalForm::sealed)) tools.push_back(words("tools.crimper_sealed"));
  if (has(TerminalForm::stud)) tools.push_back(words("tools.crimper_ring"));
  if (fittings.has_cables) tools.push_back(words("tools.crimper_cable"));
  if (!fittings.threads.empty())
    tools.push_back(
        words("tools.spanner", {{"threads", join({fittings.threads.begin(), fittings.threads.end()}, ", ")}}));
  if (fittings.has_splices || has(TerminalForm::lead)) tools.push_back(words("tools.crimper_splice"));
  if (fittings.has_splices) tools.push_back(words("tools.splice"));
  for (const char* key : {"tools.heat_gun", "tools.ties", "tools.test_fuse"}) tools.push_back(words(key));
  if (fittings.has_earths) tools.push_back(words("tools.earth"));
  tools.push_back(words("tools.care"));
  if (fittings.has_old_contacts) tools.push_back(words("tools.pin"));
  for (const Build* build : builds)
    for (const AuthorStep& step : build->steps)
      for (const std::string& tool : step.tools)
        if (std::find(tools.begin(), tools.end(), tool) == tools.end()) tools.push_back(tool);
  return tools;
}

}  // namespace loomfolio
