// SPDX-License-Identifier: MIT
#include "check/guarded.h"

#include <algorithm>
#include <functional>

#include "base/text.h"
#include "solve/fuse_refs.h"

namespace loomfolio {
namespace {

std::vector<GuardedWires> gather(const Facts& facts, const std::function<bool(const WireProtection&)>& is_wanted) {
  std::vector<GuardedWires> all;
  if (!facts.protection) return all;
  for (const FuseStudy& fuse : facts.protection->fuses) {
    GuardedWires one{fuse.fuse, {}};
    for (const WireId wire : fuse.wires)
      if (is_wanted(facts.protection->wires[wire.at()])) one.wires.push_back(wire);
    std::stable_sort(one.wires.begin(), one.wires.end(), [&](WireId a, WireId b) {
      return facts.protection->wires[a.at()].ampacity < facts.protection->wires[b.at()].ampacity;
    });
    if (!one.wires.empty()) all.push_back(std::move(one));
  }
  return all;
}

}  // namespace

std::vector<GuardedWires> wires_with_verdict(const Facts& facts, WireVerdict verdict) {
  return gather(facts, [&](const WireProtection& wire) { return wire.verdict == verdict; });
}

std::vector<GuardedWires> wires_below_135(const Facts& facts) {
  return gather(facts, [](const WireProtection& wire) {
    const bool is_good = wire.verdict == WireVerdict::is_protected || wire.verdict == WireVerdict::opens_slowly;
    return is_good && !wire.carries_135;
  });
}

std::string say_fuse(const Build& build, InsideRef fuse) {
  const Part& part = build.part(fuse.part);
  return "fuse " + say_inside(build, fuse) + " of " + say(rating_of_fuse(part, inside_of(build, fuse)));
}

std::string say_carries(const Facts& facts, WireId id) {
  const Wire& wire = facts.build.wire(id);
  const WireProtection& found = facts.protection->wires[id.at()];
  std::string why = print_size(wire) + ", " + shortest(facts.build.electrics.ambient.number(), 0) + " degC";
  if (found.bundle.wires > 1) why += ", " + std::to_string(found.bundle.wires) + " wires together";
  return "carries " + say(found.ampacity) + " for ever (" + why + ")";
}

Diagnostic make_guard_finding(const Facts& facts, const GuardedWires& guarded, DiagnosticId id,
                              const std::string& message, const std::string& hint) {
  const Build& build = facts.build;
  const Part& part = build.part(guarded.fuse.part);
  const Where where =
      part.fuse_choice.empty() ? rating_place(part, inside_of(build, guarded.fuse)) : part.origin.key("fuse_choice");
  Diagnostic finding = make_diagnostic(id, where, say_fuse(build, guarded.fuse) + " " + message, hint);
  for (std::size_t w = 1; w < guarded.wires.size(); ++w)
    add_note(finding, build.wire(guarded.wires[w]).origin.table,
             "so it is for " + say_wire(build, guarded.wires[w]) + ", which " + say_carries(facts, guarded.wires[w]));
  return finding;
}

}  // namespace loomfolio
