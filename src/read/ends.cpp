// SPDX-License-Identifier: MIT
// A wire's end: "part.terminal", a splice or an earth.
#include "read/assembly.h"

namespace loomfolio {
namespace {

/// The nearest name of any owner, else the splices and earths there are.
std::string suggest_end(const Assembly& assembly, const std::string& name) {
  const std::string nearest = suggest(name, owner_names(assembly), "");
  if (!nearest.empty()) return nearest;
  std::vector<std::string> joints;
  for (const auto& [id, owner] : assembly.owners)
    if (owner.type != OwnerType::part) joints.push_back(id);
  return joints.empty() ? "the spec has no [[splice]] and no [[earth]]" : "there are " + list_words(joints);
}

TerminalId refuse_unknown(Assembly& assembly, const PlacedText& end, const std::string& name, bool has_terminal) {
  const auto removal = assembly.removals.find(name);
  if (removal != assembly.removals.end() && removal->second.is_found) {
    removal->second.uses.push_back({end.where, "`" + end.text + "` is still named here"});
    return {};
  }
  if (has_terminal) {
    std::vector<std::string> parts;
    for (const auto& [id, owner] : assembly.owners)
      if (owner.type == OwnerType::part) parts.push_back(id);
    assembly.in_doubt.insert(guess_word(name, parts));
    assembly.report(DiagnosticId::unknown_part, end.where, "there is no part `" + name + "`",
                    suggest(name, parts, "the parts are"));
    return {};
  }
  assembly.in_doubt.insert(guess_word(name, owner_names(assembly)));
  assembly.report(DiagnosticId::unknown_end, end.where,
                  "there is no splice or earth `" + name + "`; a part's terminal is written `part.terminal`",
                  suggest_end(assembly, name));
  return {};
}

TerminalId find_terminal(Assembly& assembly, const PlacedText& end, const Owner& owner, const std::string& terminal) {
  const Part& part = assembly.build.parts[static_cast<std::size_t>(owner.index)];
  const std::vector<std::string> ids = terminal_ids(assembly, part);
  for (std::size_t i = 0; i < ids.size(); ++i)
    if (ids[i] == terminal) return part.terminals[i];
  assembly.in_doubt.insert(part.id);
  std::vector<std::string> whole;
  for (const std::string& id : ids) whole.push_back(part.id + "." + id);
  assembly.report(DiagnosticId::unknown_terminal, end.where, "unknown terminal `" + end.text + "`",
                  suggest(end.text, whole, "its terminals are"),
                  {{owner.where, "part `" + part.id + "` declared here; its terminals are " + list_words(ids)}});
  return {};
}

}  // namespace

std::vector<std::string> terminal_ids(const Assembly& assembly, const Part& part) {
  std::vector<std::string> ids;
  for (const KindTerminal& terminal : assembly.draft.kinds[part.kind.at()].terminals) ids.push_back(terminal.id);
  return ids;
}

TerminalId resolve_end(Assembly& assembly, const PlacedText& end) {
  const std::size_t dot = end.text.find('.');
  const std::string name = end.text.substr(0, dot);
  const bool has_terminal = dot != std::string::npos;
  const auto found = assembly.owners.find(name);
  if (found == assembly.owners.end()) return refuse_unknown(assembly, end, name, has_terminal);
  const Owner& owner = found->second;
  if (owner.index < 0) return {};
  const auto index = static_cast<std::size_t>(owner.index);
  if (owner.type == OwnerType::part && !has_terminal) {
    const std::vector<std::string> ids = terminal_ids(assembly, assembly.build.parts[index]);
    assembly.in_doubt.insert(name);
    assembly.report(
        DiagnosticId::end_without_terminal, end.where, "`" + name + "` is a part; a wire ends at one of its terminals",
        ids.size() == 1 ? "write `" + name + "." + ids.front() + "`" : "its terminals are " + list_words(ids),
        {{owner.where, "part `" + name + "` declared here"}});
    return {};
  }
  if (owner.type == OwnerType::part) return find_terminal(assembly, end, owner, end.text.substr(dot + 1));
  const bool is_splice = owner.type == OwnerType::splice;
  if (has_terminal) assembly.in_doubt.insert(name);
  if (!has_terminal) return is_splice ? assembly.build.splices[index].terminal : assembly.build.earths[index].terminal;
  assembly.report(DiagnosticId::unknown_terminal, end.where,
                  "`" + name + "` is " + (is_splice ? "a splice" : "an earth") + "; it has no terminals of its own",
                  "write `" + name + "`", {{owner.where, "`" + name + "` declared here"}});
  return {};
}

}  // namespace loomfolio
