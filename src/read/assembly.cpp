// SPDX-License-Identifier: MIT
// A variant's build: what stays of the base, then what the variant adds. Parts, splices and earths come first, since
// wires name them; then wires; then situations, which name parts.
#include "read/assembly.h"

#include <algorithm>

namespace loomfolio {
namespace {

std::string_view call_owner(OwnerType type) {
  return type == OwnerType::part ? "part" : type == OwnerType::splice ? "splice" : "earth";
}

/// False, with a finding, when the id stands already.
bool claim(Assembly& assembly, std::map<std::string, Where, std::less<>>& names, std::string_view what,
           const std::string& id, Where where) {
  if (id.empty()) return true;
  const auto [found, is_new] = names.emplace(id, where);
  if (is_new) return true;
  assembly.report(DiagnosticId::duplicate_id, where, "there are two " + std::string(what) + "s `" + id + "`", {},
                  {{found->second, "the first stands here"}});
  return false;
}

bool claim_owner(Assembly& assembly, const std::string& id, Owner owner) {
  if (id.empty()) return false;
  const auto [found, is_new] = assembly.owners.emplace(id, owner);
  if (is_new) return true;
  assembly.report(DiagnosticId::duplicate_id, owner.where,
                  "`" + id + "` names a " + std::string(call_owner(owner.type)) + ", and a " +
                      std::string(call_owner(found->second.type)) + " already; an id names one thing",
                  {}, {{found->second.where, "the first stands here"}});
  return false;
}

TerminalId add_terminal(Build& build, OwnerType owner, std::size_t index, int kind_terminal, std::string name) {
  build.terminals.push_back({owner, static_cast<std::int32_t>(index), kind_terminal, std::move(name)});
  return {static_cast<std::int32_t>(build.terminals.size()) - 1};
}

/// On a whole machine everything is fitted, so nobody need say who brings it.
void check_provider(Assembly& assembly, const Origin& origin) {
  if (assembly.draft.document.scope == Scope::kit || !origin.has("provided")) return;
  assembly.report(DiagnosticId::provider_without_kit, origin.key("provided"),
                  "`provided` tells a kit's parts from the machine's; this document is of a whole machine",
                  "write `scope = \"kit\"` in [document], or leave `provided` out");
}

/// A wire that the machine brings: so written, or from one of its parts to another, or to an earth.
Provider provider_of(const Build& build, const WireDraft& drafted, const Wire& wire) {
  if (drafted.provided) return *drafted.provided;
  bool is_at_part = false;
  for (const TerminalId end : {wire.from, wire.to}) {
    const Terminal& terminal = build.terminal(end);
    if (terminal.owner == OwnerType::splice) return Provider::kit;
    if (terminal.owner == OwnerType::earth) continue;
    is_at_part = true;
    if (build.parts[static_cast<std::size_t>(terminal.owner_index)].provided == Provider::kit) return Provider::kit;
  }
  return is_at_part ? Provider::machine : Provider::kit;
}

void add_part(Assembly& assembly, const Part& drafted) {
  Build& build = assembly.build;
  const bool is_whole = drafted.kind.is_set() && drafted.zone.is_set();
  const auto index = static_cast<std::int32_t>(build.parts.size());
  if (!claim_owner(assembly, drafted.id, {OwnerType::part, is_whole ? index : -1, drafted.origin.key("id")}) ||
      !is_whole)
    return;
  Part part = drafted;
  check_provider(assembly, drafted.origin);
  const Kind& kind = assembly.draft.kinds[part.kind.at()];
  for (std::size_t i = 0; i < kind.terminals.size(); ++i)
    part.terminals.push_back(add_terminal(build, OwnerType::part, build.parts.size(), static_cast<int>(i),
                                          part.id + "." + kind.terminals[i].id));
  build.parts.push_back(std::move(part));
}

/// A splice or an earth: one terminal of the same name.
template <class Joint>
void add_joint(Assembly& assembly, std::vector<Joint>& joints, OwnerType type, const Joint& drafted) {
  const auto index = static_cast<std::int32_t>(joints.size());
  const bool is_whole = drafted.zone.is_set();
  if (!claim_owner(assembly, drafted.id, {type, is_whole ? index : -1, drafted.origin.key("id")}) || !is_whole) return;
  joints.push_back(drafted);
  joints.back().terminal = add_terminal(assembly.build, type, joints.size() - 1, -1, drafted.id);
}

void add_wire(Assembly& assembly, const WireDraft& drafted) {
  claim(assembly, assembly.wire_ids, "wire", drafted.wire.id, drafted.wire.origin.key("id"));
  Wire wire = drafted.wire;
  if (drafted.from.where.is_set()) wire.from = resolve_end(assembly, drafted.from);
  if (drafted.to.where.is_set()) wire.to = resolve_end(assembly, drafted.to);
  if (!wire.from.is_set() || !wire.to.is_set()) {
    assembly.half_reached.insert(wire.from.is_set() ? wire.from : wire.to);
    return;
  }
  if (wire.from == wire.to) {
    assembly.report(DiagnosticId::wire_to_itself, drafted.to.where,
                    "wire `" + wire.id + "` ends where it begins, at `" + drafted.to.text + "`", {},
                    {{drafted.from.where, "it begins here"}});
  }
  check_provider(assembly, drafted.wire.origin);
  wire.provided = provider_of(assembly.build, drafted, wire);
  assembly.build.wires.push_back(std::move(wire));
  assembly.wire_ends.emplace_back(drafted.from, drafted.to);
}

/// True when the variant takes it out; the name is then known to be there.
bool is_removed(Assembly& assembly, const std::string& name) {
  const auto found = assembly.removals.find(name);
  if (found == assembly.removals.end()) return false;
  found->second.is_found = true;
  return true;
}

void add_owners(Assembly& assembly, const ItemsDraft& items, bool is_base) {
  const auto stays = [&](const std::string& id) { return !is_base || !is_removed(assembly, id); };
  for (const Part& part : items.parts)
    if (stays(part.id)) add_part(assembly, part);
  for (const Splice& splice : items.splices)
    if (stays(splice.id)) add_joint(assembly, assembly.build.splices, OwnerType::splice, splice);
  for (const Earth& earth : items.earths)
    if (stays(earth.id)) add_joint(assembly, assembly.build.earths, OwnerType::earth, earth);
}

void add_wires(Assembly& assembly, const ItemsDraft& items, bool is_base) {
  for (const WireDraft& wire : items.wires)
    if (!is_base || !is_removed(assembly, wire.wire.id)) add_wire(assembly, wire);
}

void add_situations(Assembly& assembly, const ItemsDraft& items, bool is_base) {
  for (const SituationDraft& situation : items.situations) {
    if (is_base && is_removed(assembly, situation.situation.name)) continue;
    claim(assembly, assembly.situation_names, "situation", situation.situation.name,
          situation.situation.origin.key("name"));
    add_situation(assembly, situation);
  }
}

void report_removals(Assembly& assembly, const ItemsDraft& base) {
  std::vector<std::string> names;
  for (const Part& part : base.parts) names.push_back(part.id);
  for (const Splice& splice : base.splices) names.push_back(splice.id);
  for (const Earth& earth : base.earths) names.push_back(earth.id);
  for (const WireDraft& wire : base.wires) names.push_back(wire.wire.id);
  for (const SituationDraft& situation : base.situations) names.push_back(situation.situation.name);
  for (auto& [name, removal] : assembly.removals) {
    if (!removal.is_found)
      assembly.report(DiagnosticId::removes_nothing, removal.where,
                      "`without` names `" + name + "`; nothing is called so outside the variants",
                      suggest(name, names, "there are"));
    if (removal.uses.empty()) continue;
    assembly.report(DiagnosticId::removes_used, removal.where,
                    "`" + name + "` is taken out, and what stays still needs it",
                    "take those out too, or give the variant a `" + name + "` of its own", removal.uses);
  }
}

}  // namespace

void Assembly::report(DiagnosticId id, Where where, std::string message, std::string hint,
                      std::vector<DiagnosticNote> notes) {
  Diagnostic finding = make_diagnostic(id, where, std::move(message), std::move(hint));
  finding.notes = std::move(notes);
  add_finding(findings, std::move(finding));
}

std::vector<std::string> owner_names(const Assembly& assembly) {
  std::vector<std::string> names;
  for (const auto& [name, owner] : assembly.owners) names.push_back(name);
  return names;
}

void keep_used_kinds(Build& build, const std::vector<Kind>& all) {
  std::map<std::int32_t, std::int32_t> places;
  for (Part& part : build.parts) {
    const auto [found, is_new] = places.emplace(part.kind.index, static_cast<std::int32_t>(build.kinds.size()));
    if (is_new) build.kinds.push_back(all[part.kind.at()]);
    part.kind.index = found->second;
  }
}

Build assemble_build(const SpecDraft& draft, const VariantDraft* variant, Diagnostics& findings) {
  Assembly assembly{draft, {}, findings, {}, {}, {}, {}, {}, {}, {}};
  Build& build = assembly.build;
  build.document = draft.document;
  build.electrics = draft.electrics;
  build.zones = draft.zones;
  build.changes = draft.changes;
  build.fuse_curves = draft.fuse_curves;
  build.steps = draft.base.steps;
  if (variant) {
    build.variant = variant->name;
    build.variant_label = variant->label;
    build.variant_when = variant->when;
    build.steps.insert(build.steps.end(), variant->items.steps.begin(), variant->items.steps.end());
    for (const PlacedText& name : variant->without)
      assembly.removals.emplace(name.text, Removal{name.where, false, {}});
  }
  add_owners(assembly, draft.base, true);
  if (variant) add_owners(assembly, variant->items, false);
  add_wires(assembly, draft.base, true);
  if (variant) add_wires(assembly, variant->items, false);
  add_situations(assembly, draft.base, true);
  if (variant) add_situations(assembly, variant->items, false);
  check_order_of_situations(assembly);
  report_removals(assembly, draft.base);
  check_reach(assembly);
  add_layout_wishes(assembly);
  keep_used_kinds(build, draft.kinds);
  return std::move(assembly.build);
}

}  // namespace loomfolio
