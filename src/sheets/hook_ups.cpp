// SPDX-License-Identifier: MIT
// Two things are the same when the texts that describe them are: built of ids, colours and sizes as the spec has them.
// An item is shared when each build has one of that text.
#include "sheets/hook_ups.h"

#include <algorithm>
#include <map>
#include <set>

#include "base/text.h"

namespace loomfolio {
namespace {

constexpr char field_end = '\x1f';

std::string described(const std::vector<std::string>& fields) { return join(fields, std::string(1, field_end)); }

std::string describe_part(const Build& build, const Part& part) {
  std::vector<std::string> fields{part.id,   build.kind_of(part).id, part.label,
                                  part.note, part.value_text,        build.zone(part.zone).id};
  for (const auto& [name, value] : part.values) fields.push_back(name + "=" + value);
  for (const Range<Amperes>& choice : part.fuse_choice)
    fields.push_back(shortest(choice.least.number(), 3) + "-" + shortest(choice.most.number(), 3));
  return described(fields);
}

}  // namespace

std::string describe_wire(const Build& build, const Wire& wire) {
  return described({wire.id, build.terminal(wire.from).name, build.terminal(wire.to).name, wire.colour.text(),
                    wire.size_text, wire.length ? shortest(wire.length->number(), 4) : "",
                    std::to_string(static_cast<int>(wire.insulation)), wire.purpose});
}

namespace {

/// The descriptions of one build's items.
struct Described {
  std::vector<std::string> parts, joints, wires, splices, earths, fuse_parts;
};

class Describer {
 public:
  explicit Describer(const SolvedBuild& solved)
      : solved_(solved), build_(solved.build), wires_at_(wires_at_terminals(solved.build)) {}

  Described describe() const {
    Described all;
    for (const Wire& wire : build_.wires) all.wires.push_back(describe_wire(build_, wire));
    for (std::size_t p = 0; p < build_.parts.size(); ++p) {
      const Part& part = build_.parts[p];
      all.parts.push_back(describe_part(build_, part));
      std::string joints = all.parts.back();
      for (const TerminalId terminal : part.terminals) joints += wires_text(terminal);
      all.joints.push_back(joints);
      all.fuse_parts.push_back(joints + fed_text(PartId{static_cast<std::int32_t>(p)}));
    }
    for (const Splice& splice : build_.splices)
      all.splices.push_back(described({splice.id, splice.label, splice.note}) + wires_text(splice.terminal));
    for (const Earth& earth : build_.earths)
      all.earths.push_back(described({earth.id, earth.label, earth.place}) + wires_text(earth.terminal));
    return all;
  }

 private:
  std::string wires_text(TerminalId terminal) const {
    std::string text(1, field_end);
    for (const WireId wire : wires_at_[terminal.at()]) text += describe_wire(build_, build_.wire(wire));
    return text;
  }

  /// Wires and consumers behind the part's fuses.
  std::string fed_text(PartId part) const {
    std::string text;
    if (!solved_.study) return text;
    for (const FuseStudy& study : solved_.study->fuses) {
      if (study.fuse.part != part) continue;
      for (const WireId wire : study.wires) text += field_end + describe_wire(build_, build_.wire(wire));
      text += study.stops_all_parked ? "parked" : "";
      for (const Stopped& stopped : study.stops_running) text += field_end + build_.part(stopped.what.part).id;
      text += field_end;
      for (const Stopped& stopped : study.stops) text += field_end + build_.part(stopped.what.part).id;
    }
    return text;
  }

  const SolvedBuild& solved_;
  const Build& build_;
  std::vector<std::vector<WireId>> wires_at_;
};

using Lists = std::vector<std::string> Described::*;

std::vector<bool> find_shared(const std::vector<Described>& all, std::size_t build, Lists list) {
  std::vector<bool> is_shared;
  for (const std::string& text : all[build].*list) {
    const bool everywhere = std::all_of(all.begin(), all.end(), [&](const Described& other) {
      return std::find((other.*list).begin(), (other.*list).end(), text) != (other.*list).end();
    });
    is_shared.push_back(everywhere);
  }
  return is_shared;
}

using SharedList = std::vector<bool> SharedItems::*;

bool shows(const SheetContext& context, SharedList list, std::size_t index) {
  if (context.extent == Extent::whole || context.hook_ups == nullptr) return true;
  return (context.hook_ups->shared[context.build_index].*list)[index] == (context.extent == Extent::common);
}

bool is_unshared(const SheetContext& context, SharedList list, std::size_t index) {
  return context.hook_ups != nullptr && !(context.hook_ups->shared[context.build_index].*list)[index];
}

}  // namespace

bool is_told_beside(const SheetContext& context, PartId part) {
  return is_unshared(context, &SharedItems::joints, part.at()) && !is_unshared(context, &SharedItems::parts, part.at());
}

bool is_told_beside(const SheetContext& context, WireId id) {
  if (!is_unshared(context, &SharedItems::wires, id.at())) return false;
  const Wire& wire = context.build().wire(id);
  const std::string text = describe_wire(context.build(), wire);
  return std::all_of(context.hook_ups->builds.begin(), context.hook_ups->builds.end(), [&](const SolvedBuild* other) {
    return std::all_of(other->build.wires.begin(), other->build.wires.end(), [&](const Wire& its) {
      return its.id != wire.id || describe_wire(other->build, its) == text;
    });
  });
}

std::vector<SheetContext> own_contexts(const SheetContext& context) {
  std::vector<SheetContext> contexts;
  for (std::size_t b = 0; b < context.hook_ups->builds.size(); ++b) {
    const SolvedBuild& solved = *context.hook_ups->builds[b];
    SheetContext own{context.input, solved, solved.build.variant + "/", {}};
    own.hook_ups = context.hook_ups;
    own.build_index = b;
    contexts.push_back(std::move(own));
  }
  return contexts;
}

HookUps compare_hook_ups(const std::vector<SolvedBuild>& builds) {
  HookUps hook_ups;
  std::vector<Described> all;
  for (const SolvedBuild& solved : builds) {
    hook_ups.builds.push_back(&solved);
    all.push_back(Describer(solved).describe());
  }
  for (std::size_t b = 0; b < builds.size(); ++b)
    hook_ups.shared.push_back({find_shared(all, b, &Described::parts), find_shared(all, b, &Described::joints),
                               find_shared(all, b, &Described::wires), find_shared(all, b, &Described::splices),
                               find_shared(all, b, &Described::earths), find_shared(all, b, &Described::fuse_parts)});
  return hook_ups;
}

std::string hook_up_letter(std::size_t index) { return std::string(1, static_cast<char>('A' + index % 26)); }

std::string hook_up_title(const SheetContext& context) {
  const Build& build = context.build();
  return context.words()("hook_up.title",
                         {{"letter", hook_up_letter(context.build_index)},
                          {"label", build.variant_label.empty() ? build.variant : build.variant_label}});
}

bool shows_part(const SheetContext& context, PartId part) { return shows(context, &SharedItems::parts, part.at()); }
bool shows_joints(const SheetContext& context, PartId part) { return shows(context, &SharedItems::joints, part.at()); }
bool shows_wire(const SheetContext& context, WireId wire) { return shows(context, &SharedItems::wires, wire.at()); }
bool shows_splice(const SheetContext& context, SpliceId splice) {
  return shows(context, &SharedItems::splices, static_cast<std::size_t>(splice.index));
}
bool shows_earth(const SheetContext& context, EarthId earth) {
  return shows(context, &SharedItems::earths, static_cast<std::size_t>(earth.index));
}
bool shows_fuse(const SheetContext& context, PartId part) {
  return shows(context, &SharedItems::fuse_parts, part.at());
}

bool shows_step(const SheetContext& context, const AuthorStep& step) {
  if (context.extent == Extent::whole) return true;
  const auto& builds = context.hook_ups->builds;
  const bool is_shared = std::all_of(builds.begin(), builds.end(), [&](const SolvedBuild* solved) {
    const std::vector<AuthorStep>& steps = solved->build.steps;
    return std::any_of(steps.begin(), steps.end(), [&](const AuthorStep& other) {
      return other.text == step.text && other.before == step.before && other.after == step.after;
    });
  });
  return is_shared == (context.extent == Extent::common);
}

bool differs(const SheetContext& context, WireId wire) { return is_unshared(context, &SharedItems::wires, wire.at()); }
bool differs(const SheetContext& context, PartId part) { return is_unshared(context, &SharedItems::parts, part.at()); }

}  // namespace loomfolio
