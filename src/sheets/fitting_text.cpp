// SPDX-License-Identifier: MIT
#include "sheets/fitting_text.h"

#include "base/text.h"
#include "sheets/names.h"
#include "sheets/print_text.h"

namespace loomfolio {
namespace {

/// A key of [fitting]; `{size}` is blade width or thread.
std::string_view fitting_key(TerminalForm form) {
  switch (form) {
    case TerminalForm::blade:
      return "fitting.blade";
    case TerminalForm::stud:
      return "fitting.stud";
    case TerminalForm::sealed:
      return "fitting.sealed";
    case TerminalForm::cavity:
      return "fitting.cavity";
    case TerminalForm::bullet:
      return "fitting.bullet";
    case TerminalForm::splice:
      return "fitting.splice";
    case TerminalForm::lead:
      return "fitting.lead";
    case TerminalForm::screw:
      return "fitting.screw";
    case TerminalForm::push_on:
      return "fitting.push_on";
    case TerminalForm::body:
      return "fitting.body";
  }
  return "fitting.lead";
}

const Earth& earth_of(const Build& build, TerminalId terminal) {
  return build.earths[static_cast<std::size_t>(build.terminal(terminal).owner_index)];
}

}  // namespace

std::string fitting_text(const Build& build, TerminalId id, const Words& words) {
  const OwnerType owner = build.terminal(id).owner;
  if (owner == OwnerType::splice) return {};
  if (owner == OwnerType::earth) return trimmed(words("fitting.stud", {{"size", earth_of(build, id).thread}}));
  const KindTerminal& terminal = *kind_terminal_of(build, id);
  const bool is_blade = terminal.form == TerminalForm::blade && terminal.blade_width;
  const std::string size = is_blade ? shortest(terminal.blade_width->number(), 1) : terminal.thread;
  return trimmed(words(fitting_key(terminal.form), {{"size", size}}));
}

std::string strip_text(const Build& build, TerminalId id, const Words& words) {
  const KindTerminal* terminal = kind_terminal_of(build, id);
  if (terminal == nullptr || !terminal->strip) return {};
  return words("fitting.strip", {{"length", print_small_length(*terminal->strip, build.document.units, words)}});
}

}  // namespace loomfolio
