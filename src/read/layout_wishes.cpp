// SPDX-License-Identifier: MIT
// The names of [layout] in one build. A name that only other hook-ups have is no fault: its wish is left out.
#include <algorithm>

#include "read/assembly.h"

namespace loomfolio {
namespace {

struct Found {
  DrawnThing thing;
  WireId wire;
  bool is_thing() const { return thing.index >= 0; }
};

void add_names(const ItemsDraft& items, bool with_wires, std::vector<std::string>& names) {
  for (const Part& part : items.parts) names.push_back(part.id);
  for (const Splice& splice : items.splices) names.push_back(splice.id);
  if (with_wires)
    for (const WireDraft& wire : items.wires) names.push_back(wire.wire.id);
}

/// Of all hook-ups.
std::vector<std::string> all_names(const SpecDraft& draft, bool with_wires) {
  std::vector<std::string> names;
  add_names(draft.base, with_wires, names);
  for (const VariantDraft& variant : draft.variants) add_names(variant.items, with_wires, names);
  return names;
}

/// Neither thing nor wire where this build has none of that name; a finding when no build has.
Found find_named(Assembly& assembly, const PlacedText& name, bool may_be_wire) {
  Found found;
  if (const auto owner = assembly.owners.find(name.text); owner != assembly.owners.end() && owner->second.type != OwnerType::earth) {
    found.thing = {owner->second.type, owner->second.index};
    return found;
  }
  if (may_be_wire)
    for (std::size_t w = 0; w < assembly.build.wires.size(); ++w)
      if (assembly.build.wires[w].id == name.text) {
        found.wire = {static_cast<std::int32_t>(w)};
        return found;
      }
  const std::vector<std::string> names = all_names(assembly.draft, may_be_wire);
  if (std::find(names.begin(), names.end(), name.text) != names.end()) return found;
  assembly.report(DiagnosticId::layout_names_nothing, name.where,
                  "there is no part" + std::string(may_be_wire ? ", splice or wire " : " or splice ") + quoted(name.text),
                  suggest(name.text, names, ""));
  return found;
}

ZoneId zone_of_thing(const Build& build, const DrawnThing& thing) {
  const auto index = static_cast<std::size_t>(thing.index);
  return thing.owner == OwnerType::part ? build.parts[index].zone : build.splices[index].zone;
}

void add_pins(Assembly& assembly) {
  std::vector<PinWish>& pins = assembly.build.layout.pins;
  for (const auto& [name, at_edges] : assembly.draft.layout.pins) {
    const Found found = find_named(assembly, name, false);
    if (!found.is_thing()) continue;
    PinWish pin{found.thing, at_edges, name.where};
    std::sort(pin.edges.begin(), pin.edges.end());
    const auto same = std::find_if(pins.begin(), pins.end(), [&](const PinWish& other) {
      return pin.edges.size() == 2 && other.edges == pin.edges &&
             zone_of_thing(assembly.build, other.thing) == zone_of_thing(assembly.build, pin.thing);
    });
    if (same != pins.end())
      assembly.report(DiagnosticId::layout_contradicts, name.where, quoted(name.text) + " is pinned to a corner where another stands already",
                      "one stands in a corner of a zone; pin the other to an edge", {{same->where, "the other is pinned here"}});
    else
      pins.push_back(std::move(pin));
  }
}

struct Sheeted {
  std::string_view function;
  Where where;
};

void add_sheets(Assembly& assembly) {
  Build& build = assembly.build;
  std::vector<std::string_view>& sheets = build.layout.sheet_of_wire;
  sheets.assign(build.wires.size(), {});
  std::map<std::pair<OwnerType, int>, Sheeted> things;
  for (const SheetDraft& wish : assembly.draft.layout.sheets) {
    const Found found = find_named(assembly, wish.thing, true);
    if (found.wire.is_set()) sheets[found.wire.at()] = wish.function;
    if (found.is_thing()) things.insert_or_assign({found.thing.owner, found.thing.index}, Sheeted{wish.function, wish.thing.where});
  }
  for (std::size_t w = 0; w < build.wires.size(); ++w) {
    if (!sheets[w].empty()) continue;
    const Sheeted* first = nullptr;
    for (const TerminalId end : {build.wires[w].from, build.wires[w].to}) {
      const Terminal& terminal = build.terminal(end);
      const auto wish = things.find({terminal.owner, terminal.owner_index});
      if (wish == things.end()) continue;
      if (first != nullptr && first->function != wish->second.function)
        assembly.report(DiagnosticId::layout_contradicts, wish->second.where,
                        "wire `" + build.wires[w].id + "` joins two things that are put on two diagrams, and a wire is drawn once",
                        "say in `sheet` where wire `" + build.wires[w].id + "` is drawn",
                        {{first->where, "its other end is put on `" + std::string(first->function) + "` here"}});
      if (first == nullptr) first = &wish->second;
    }
    if (first != nullptr) sheets[w] = first->function;
  }
}

void add_apart(Assembly& assembly) {
  for (const auto& [name, other_name] : assembly.draft.layout.apart) {
    const Found one = find_named(assembly, name, true), other = find_named(assembly, other_name, true);
    if (one.is_thing() && other.is_thing())
      assembly.build.layout.apart.push_back({one.thing, other.thing});
    else if (one.wire.is_set() && other.wire.is_set())
      assembly.build.layout.wires_apart.push_back({one.wire, other.wire});
    else if ((one.is_thing() && other.wire.is_set()) || (one.wire.is_set() && other.is_thing()))
      assembly.report(DiagnosticId::layout_unlike_pair, other_name.where,
                      "a wire and a part cannot be kept apart; wires keep clear of all parts",
                      "name two parts or splices, or two wires");
  }
}

/// Unset where this build has no such wire; a finding when no build has, or when it is none.
WireId find_wire(Assembly& assembly, const PlacedText& name) {
  const Found found = find_named(assembly, name, true);
  if (found.is_thing())
    assembly.report(DiagnosticId::layout_unlike_pair, name.where, quoted(name.text) + " is no wire", "thick courses are of wires alone");
  return found.wire;
}

/// A wire is in one thick course, or loose.
void add_gathered(Assembly& assembly) {
  LayoutWishes& layout = assembly.build.layout;
  std::map<WireId, const PlacedText*> taken;
  const auto take = [&](const PlacedText& name) {
    const WireId wire = find_wire(assembly, name);
    if (!wire.is_set()) return WireId{};
    const auto [before, is_first] = taken.try_emplace(wire, &name);
    if (is_first) return wire;
    assembly.report(DiagnosticId::layout_contradicts, name.where, "wire " + quoted(name.text) + " is asked for twice",
                    "let it be in one thick course, or loose", {{before->second->where, "it is asked for here"}});
    return WireId{};
  };
  for (const std::vector<PlacedText>& names : assembly.draft.layout.gathered) {
    std::vector<WireId> group;
    for (const PlacedText& name : names)
      if (const WireId wire = take(name); wire.is_set()) group.push_back(wire);
    if (group.size() > 1) layout.gathered.push_back(std::move(group));
  }
  for (const PlacedText& name : assembly.draft.layout.loose)
    if (const WireId wire = take(name); wire.is_set()) layout.loose.push_back(wire);
}

}  // namespace

void add_layout_wishes(Assembly& assembly) {
  add_pins(assembly);
  add_sheets(assembly);
  add_apart(assembly);
  add_gathered(assembly);
}

}  // namespace loomfolio
