// SPDX-License-Identifier: MIT
#include "sheets/figures.h"

#include <algorithm>

#include "solve/at_once.h"

namespace loomfolio {
namespace {

bool takes_current(const Inside& inside) {
  switch (inside.type) {
    case InsideType::load:
    case InsideType::lamp:
    case InsideType::motor:
    case InsideType::coil:
    case InsideType::output:
      return true;
    default:
      return false;
  }
}

/// The part that owns the terminal, when it takes something from it.
PartId consumer_at(const Build& build, TerminalId id) {
  const Terminal& terminal = build.terminal(id);
  if (terminal.owner != OwnerType::part) return {};
  const Part& part = build.parts[static_cast<std::size_t>(terminal.owner_index)];
  const bool takes = std::any_of(part.insides.begin(), part.insides.end(), takes_current);
  return takes ? PartId{terminal.owner_index} : PartId{};
}

}  // namespace

void complete_figures(SolvedBuild& solved) {
  if (solved.solutions.empty()) return;
  if (!solved.study) solved.study = study_with_all_on(solved.build, solved.solutions);
  if (solved.wire_loads.empty()) solved.wire_loads = find_wire_loads(solved.build, solved.solutions, *solved.study);
  solved.own_supply = find_own_supply(solved.build, solved.solutions);
}

const FuseStudy* study_of(const SolvedBuild& solved, InsideRef fuse) {
  if (!solved.study) return nullptr;
  for (const FuseStudy& study : solved.study->fuses)
    if (study.fuse == fuse) return &study;
  return nullptr;
}

std::vector<PartId> consumers_on(const Build& build, const std::vector<WireId>& wires) {
  std::vector<PartId> parts;
  for (const WireId id : wires)
    for (const TerminalId end : {build.wire(id).from, build.wire(id).to}) {
      const PartId part = consumer_at(build, end);
      if (part.is_set()) parts.push_back(part);
    }
  std::sort(parts.begin(), parts.end());
  parts.erase(std::unique(parts.begin(), parts.end()), parts.end());
  return parts;
}

std::string_view verdict_key(WireVerdict verdict) {
  switch (verdict) {
    case WireVerdict::never_live:
    case WireVerdict::is_protected:
    case WireVerdict::not_studied:
      return {};
    case WireVerdict::earth_side:
      return "verdict.earth_side";
    case WireVerdict::limited:
      return "verdict.limited";
    case WireVerdict::starter_cable:
      return "verdict.starter_cable";
    case WireVerdict::opens_slowly:
      return "verdict.opens_slowly";
    case WireVerdict::fuse_too_large:
      return "verdict.fuse_too_large";
    case WireVerdict::fuse_may_not_open:
      return "verdict.fuse_may_not_open";
    case WireVerdict::wire_hurt_first:
      return "verdict.wire_hurt_first";
    case WireVerdict::unfused:
      return "verdict.unfused";
  }
  return {};
}

std::string_view guard_key(WireVerdict verdict, bool carries_overload) {
  if (verdict != WireVerdict::is_protected) return verdict_key(verdict);
  return carries_overload ? "fuses.protected" : "fuses.protected_shorts";
}

}  // namespace loomfolio
