// SPDX-License-Identifier: MIT
#include "sheets/fitting_text.h"

#include "base/text.h"
#include "sheets/names.h"
#include "sheets/print_text.h"

namespace loomfolio {
namespace {

/// Key of a form in [fitting] and [fitting_name].
std::string_view form_key(TerminalForm form) {
  switch (form) {
    case TerminalForm::blade:
      return "blade";
    case TerminalForm::stud:
      return "stud";
    case TerminalForm::sealed:
      return "sealed";
    case TerminalForm::cavity:
      return "cavity";
    case TerminalForm::bullet:
      return "bullet";
    case TerminalForm::splice:
      return "splice";
    case TerminalForm::lead:
      return "lead";
    case TerminalForm::screw:
      return "screw";
    case TerminalForm::push_on:
      return "push_on";
    case TerminalForm::body:
      return "body";
  }
  return "lead";
}

const Earth& earth_of(const Build& build, TerminalId terminal) {
  return build.earths[static_cast<std::size_t>(build.terminal(terminal).owner_index)];
}

/// The text of the terminal's form in `table`; `{size}` is blade width or thread.
std::string form_text(const Build& build, TerminalId id, const Words& words, const std::string& table) {
  const OwnerType owner = build.terminal(id).owner;
  if (owner == OwnerType::splice) return {};
  if (owner == OwnerType::earth) return trimmed(words(table + ".stud", {{"size", earth_of(build, id).thread}}));
  const KindTerminal& terminal = *kind_terminal_of(build, id);
  const bool is_blade = terminal.form == TerminalForm::blade && terminal.blade_width;
  const std::string size = is_blade ? shortest(terminal.blade_width->number(), 1) : terminal.thread;
  const std::string key = table + "." + std::string(form_key(terminal.form));
  return words.has(key) ? trimmed(words(key, {{"size", size}})) : std::string();
}

}  // namespace

std::string fitting_text(const Build& build, TerminalId id, const Words& words) {
  return form_text(build, id, words, "fitting");
}

std::string fitting_name(const Build& build, TerminalId id, const Words& words) {
  return form_text(build, id, words, "fitting_name");
}

std::string strip_text(const Build& build, TerminalId id, const Words& words) {
  const KindTerminal* terminal = kind_terminal_of(build, id);
  if (terminal == nullptr || !terminal->strip) return {};
  return words("fitting.strip", {{"length", print_small_length(*terminal->strip, build.document.units, words)}});
}

}  // namespace loomfolio
