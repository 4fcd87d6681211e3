// SPDX-License-Identifier: MIT
// A sealed cavity without a wire leaks like a missing seal: it needs a cavity plug.

#include "base/text.h"
#include "check/rules.h"

namespace loomfolio::rules {

void cavity_left_open(const Facts& facts, Diagnostics& findings) {
  for (const Part& part : facts.build.parts) {
    // The unit that a kit is hooked up to has other wires, which the kit does not know.
    if (facts.build.document.scope == Scope::kit && !facts.build.kind_of(part).is_connector) continue;
    std::vector<std::string> open;
    bool any_wired = false;
    for (std::size_t k = 0; k < part.terminals.size(); ++k) {
      const KindTerminal& terminal = facts.build.kind_of(part).terminals[k];
      if (terminal.form != TerminalForm::sealed) continue;
      if (facts.wires_at[part.terminals[k].at()].empty())
        open.push_back("`" + terminal.id + "`");
      else
        any_wired = true;
    }
    if (open.empty() || !any_wired) continue;
    findings.push_back(make_diagnostic(DiagnosticId::cavity_left_open, part.origin.table,
                                       say_part(part) + " has sealed cavities without a wire: " + join(open, ", "),
                                       "fit a cavity plug in each"));
  }
}

}  // namespace loomfolio::rules
