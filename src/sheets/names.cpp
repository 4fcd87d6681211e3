// SPDX-License-Identifier: MIT
#include "sheets/names.h"

#include <algorithm>
#include <map>

#include "base/text.h"
#include "check/paths.h"
#include "solve/meter.h"

namespace loomfolio {

const KindTerminal* kind_terminal_of(const Build& build, TerminalId id) {
  const Terminal& terminal = build.terminal(id);
  if (terminal.owner != OwnerType::part) return nullptr;
  const Part& part = build.parts[static_cast<std::size_t>(terminal.owner_index)];
  return &build.kind_of(part).terminals[static_cast<std::size_t>(terminal.kind_terminal)];
}

std::string owner_name(const Build& build, TerminalId id, const Words& words) {
  const Terminal& terminal = build.terminal(id);
  const auto index = static_cast<std::size_t>(terminal.owner_index);
  switch (terminal.owner) {
    case OwnerType::part:
      return build.parts[index].label;
    case OwnerType::splice:
      return words("called.splice", {{"id", build.splices[index].id}});
    case OwnerType::earth:
      return words("called.earth", {{"id", build.earths[index].id}});
  }
  return {};
}

std::string terminal_mark(const Build& build, TerminalId id) {
  const KindTerminal* terminal = kind_terminal_of(build, id);
  return terminal == nullptr ? std::string() : terminal->id;
}

std::string wire_ids(const Build& build, const std::vector<WireId>& wires) {
  std::vector<std::string> ids;
  for (const WireId wire : wires) ids.push_back(build.wire(wire).id);
  return join(ids, ", ");
}

std::string fuse_name(const Build& build, InsideRef fuse) { return inside_name(build, fuse); }

std::string inside_name(const Build& build, InsideRef ref) {
  const Part& part = build.part(ref.part);
  if (ref.inside < 0) return part.label;
  const Inside& inside = inside_of(build, ref);
  return inside.name.empty() ? part.label : part.label + ", " + inside.name;
}

/// Elements of one part under its label: 'Headlamp: dip'; 'Instrument + neutral', where the label itself names one too.
std::string list_elements(const Build& build, const std::vector<NamedElement>& elements) {
  std::vector<PartId> order;
  std::map<PartId, std::vector<std::string>> names;
  std::map<PartId, bool> has_nameless;
  for (const NamedElement& element : elements) {
    if (names.find(element.what.part) == names.end()) order.push_back(element.what.part);
    std::vector<std::string>& own = names[element.what.part];
    std::string name = element.what.inside < 0 ? std::string() : inside_of(build, element.what).name;
    if (!element.note.empty()) name += (name.empty() ? "" : " ") + element.note;
    if (name.empty()) has_nameless[element.what.part] = true;
    if (!name.empty() && std::find(own.begin(), own.end(), name) == own.end()) own.push_back(std::move(name));
  }
  std::vector<std::string> parts;
  for (const PartId part : order) {
    const std::vector<std::string>& own = names[part];
    const bool is_note = own.size() == 1 && own.front().front() == '(';
    const char* between = own.empty() ? "" : is_note ? " " : has_nameless[part] ? " + " : ": ";
    parts.push_back(build.part(part).label + between + join(own, ", "));
  }
  return join(parts, "; ");
}

std::string switch_name(const Build& build, InsideRef ref) {
  const Part& part = build.part(ref.part);
  const auto is_switch = [](const Inside& inside) { return inside.type == InsideType::switch_; };
  if (std::count_if(part.insides.begin(), part.insides.end(), is_switch) < 2) return part.label;
  const Inside& inside = part.insides[static_cast<std::size_t>(ref.inside)];
  return part.label + ", " + (inside.name.empty() ? inside.id : inside.name);
}

namespace {

/// One cable left on the pole is enough to feed a short: all of them, by their numbers.
std::string cables_to_take_off(const Build& build, const Words& words, const std::string& earthed) {
  const TerminalId pole = earthed_pole(build);
  std::vector<std::string> cables;
  bool has_others = false;  // the machine's own, which these pages do not show
  if (pole.is_set()) {
    const auto wires = wires_at_terminals(build);
    for (const WireId wire : wires[pole.at()]) cables.push_back(build.wire(wire).id);
    has_others = build.parts[static_cast<std::size_t>(build.terminal(pole).owner_index)].provided == Provider::machine;
  }
  const char* key = cables.empty()       ? "called.all_off"
                    : has_others         ? "called.all_off_too"
                    : cables.size() == 1 ? "called.one_off"
                                         : "called.all_off_list";
  return words(key, {{"earthed", earthed}, {"list", join(cables, ", ")}});
}

}  // namespace

std::vector<std::pair<std::string, std::string>> pole_names(const Build& build, const Words& words) {
  const std::string negative = words("safety.negative"), positive = words("safety.positive");
  const bool is_positive_earth = build.electrics.is_positive_earth;
  const std::string earthed = is_positive_earth ? positive : negative;
  return {{"earthed", earthed},
          {"live", is_positive_earth ? negative : positive},
          {"earthed_off", cables_to_take_off(build, words, earthed)}};
}

const std::string& situation_name(const Situation& situation) {
  return situation.label.empty() ? situation.name : situation.label;
}

}  // namespace loomfolio
