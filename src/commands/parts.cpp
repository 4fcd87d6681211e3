// SPDX-License-Identifier: MIT
#include <ostream>

#include "base/text.h"
#include "commands/command.h"

namespace loomfolio {
namespace {

const char* call_form(TerminalForm form) {
  switch (form) {
    case TerminalForm::blade: return "blade";
    case TerminalForm::stud: return "stud";
    case TerminalForm::sealed: return "sealed cavity";
    case TerminalForm::cavity: return "cavity";
    case TerminalForm::bullet: return "bullet";
    case TerminalForm::splice: return "splice";
    case TerminalForm::lead: return "lead";
    case TerminalForm::screw: return "screw";
    case TerminalForm::push_on: return "push-on cap";
    case TerminalForm::body: return "body";
  }
  return "";
}

void list_kinds(const Library& library, std::ostream& out) {
  std::size_t widest = 0;
  for (const Kind& kind : library.kinds) widest = std::max(widest, kind.id.size());
  for (const Kind& kind : library.kinds)
    out << kind.id << std::string(widest + 2 - kind.id.size(), ' ') << kind.name << "\n";
}

void show_kind(const Kind& kind, std::ostream& out) {
  out << kind.name << " (" << kind.id << ")\n" << kind.about << "\n";
  if (!kind.mounting.empty()) out << kind.mounting << "\n";
  out << "\nTerminals\n";
  for (const KindTerminal& t : kind.terminals) {
    out << "  " << t.id << std::string(t.id.size() < 6 ? 6 - t.id.size() : 1, ' ') << t.name << "; " << call_form(t.form);
    if (!t.thread.empty()) out << " " << t.thread;
    if (t.blade_width) out << " " << shortest(t.blade_width->number()) << " mm";
    if (t.takes) out << "; wire " << shortest(t.takes->least.number()) << " to " << shortest(t.takes->most.number()) << " mm2";
    if (t.insulation)
      out << ", over insulation " << shortest(t.insulation->least.number()) << " to " << shortest(t.insulation->most.number()) << " mm";
    if (t.strip) out << ", strip " << shortest(t.strip->number()) << " mm";
    out << "\n";
  }
  if (kind.values.empty()) return;
  out << "\nValues that a part may set\n";
  for (const KindValue& v : kind.values)
    out << "  " << v.name << " = " << (v.standard.empty() ? "(must be given)" : "\"" + v.standard + "\"") << "\n";
}

}  // namespace

int run_parts(const Request& request, Surroundings& surroundings) {
  Sources sources;
  Diagnostics diagnostics;
  const Library library = read_library(surroundings.share_folder + "/layouts", surroundings.files, sources, diagnostics);
  if (!diagnostics.empty()) surroundings.err << print_diagnostics(diagnostics, sources, Paint::plain);
  if (library.kinds.empty()) {
    surroundings.err << "loomfolio: no part kinds in `" << library.folder << "`\n";
    return 2;
  }
  if (request.kind.empty()) {
    list_kinds(library, surroundings.out);
    return 0;
  }
  std::vector<std::string> ids;
  for (const Kind& kind : library.kinds) {
    if (kind.id == request.kind) {
      show_kind(kind, surroundings.out);
      return 0;
    }
    ids.push_back(kind.id);
  }
  surroundings.err << "loomfolio: there is no part kind `" << request.kind << "`\n";
  const std::string near = find_nearest(request.kind, ids);
  surroundings.err << (near.empty() ? "hint: `loomfolio parts` lists them all\n" : "hint: did you mean `" + near + "`?\n");
  return 1;
}

}  // namespace loomfolio
