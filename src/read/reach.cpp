// SPDX-License-Identifier: MIT
// What wires reach: a part, splice or earth without wires is a wire forgotten; a terminal with too many cannot be made.
#include <algorithm>

#include "read/assembly.h"

namespace loomfolio {
namespace {

using WiresAt = std::vector<std::vector<WireId>>;

const KindTerminal& kind_terminal(const Assembly& assembly, const Part& part, std::size_t i) {
  return assembly.draft.kinds[part.kind.at()].terminals[i];
}

/// The part's own metal needs no wire: it earths where it is bolted.
bool needs_wire(const KindTerminal& terminal) { return !terminal.may_stay_open && terminal.form != TerminalForm::body; }

void check_part(Assembly& assembly, const Part& part, const WiresAt& wires) {
  if (assembly.in_doubt.count(part.id)) return;
  const auto reaches = [&](TerminalId id) { return !wires[id.at()].empty() || assembly.half_reached.count(id); };
  const Where where = part.origin.key("id");
  std::vector<std::string> open;
  for (std::size_t i = 0; i < part.terminals.size(); ++i)
    if (needs_wire(kind_terminal(assembly, part, i)) && !reaches(part.terminals[i]))
      open.push_back(kind_terminal(assembly, part, i).id);
  if (open.empty()) return;
  if (std::none_of(part.terminals.begin(), part.terminals.end(), reaches)) {
    assembly.report(DiagnosticId::part_unwired, where, "no wire reaches part `" + part.id + "`",
                    "its terminals are " + list_words(terminal_ids(assembly, part)));
    return;
  }
  for (const std::string& id : open)
    assembly.report(DiagnosticId::terminal_open, where,
                    "no wire reaches terminal `" + part.id + "." + id + "`, which may not stay open");
}

void check_room(Assembly& assembly, const Part& part, const WiresAt& wires) {
  for (std::size_t i = 0; i < part.terminals.size(); ++i) {
    const auto most = static_cast<std::size_t>(kind_terminal(assembly, part, i).most_wires);
    const TerminalId terminal = part.terminals[i];
    const std::vector<WireId>& at = wires[terminal.at()];
    if (at.size() <= most) continue;
    const auto place = [&](WireId id) {
      const auto& [from, to] = assembly.wire_ends[id.at()];
      return assembly.build.wire(id).from == terminal ? from.where : to.where;
    };
    std::vector<DiagnosticNote> notes;
    for (std::size_t k = 0; k < at.size(); ++k)
      if (k != most) notes.push_back({place(at[k]), "wire `" + assembly.build.wire(at[k]).id + "` ends here"});
    assembly.report(DiagnosticId::terminal_too_full, place(at[most]),
                    std::to_string(at.size()) + " wires end at `" + part.id + "." +
                        kind_terminal(assembly, part, i).id + "`; it takes " + std::to_string(most),
                    "join them at a splice", std::move(notes));
  }
}

}  // namespace

void check_reach(Assembly& assembly) {
  const Build& build = assembly.build;
  const WiresAt wires = wires_at_terminals(build);
  for (const Part& part : build.parts) {
    check_part(assembly, part, wires);
    check_room(assembly, part, wires);
  }
  const auto is_in_doubt = [&](const auto& joint) {
    return assembly.in_doubt.count(joint.id) || assembly.half_reached.count(joint.terminal);
  };
  for (const Splice& splice : build.splices)
    if (const std::size_t count = wires[splice.terminal.at()].size(); count < 2 && !is_in_doubt(splice))
      assembly.report(DiagnosticId::splice_joins_nothing, splice.origin.key("id"),
                      count == 0 ? "no wire reaches splice `" + splice.id + "`"
                                 : "one wire reaches splice `" + splice.id + "`; a splice joins three or more");
  for (const Earth& earth : build.earths)
    if (wires[earth.terminal.at()].empty() && !is_in_doubt(earth))
      assembly.report(DiagnosticId::earth_unwired, earth.origin.key("id"), "no wire reaches earth `" + earth.id + "`");
}

}  // namespace loomfolio
