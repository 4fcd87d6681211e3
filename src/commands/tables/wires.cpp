// SPDX-License-Identifier: MIT
#include <algorithm>

#include "base/text.h"
#include "check/paths.h"
#include "commands/tables/table_makers.h"
#include "commands/tables/table_values.h"
#include "sheets/fitting_text.h"
#include "sheets/print_text.h"

namespace loomfolio {
namespace {

/// As the fuse chart says it.
std::string protection_of(const SolvedBuild& solved, WireId id, WireVerdict verdict, const Words& words) {
  const std::string_view key = guard_key(verdict, !solved.study || solved.study->wires[id.at()].carries_135);
  return key.empty() ? std::string() : words(key);
}

/// How the generator charges while the wire carries most; nothing where it is as in the situation.
PlainValue plain_charging(ChargeState state) {
  switch (state) {
    case ChargeState::as_stated: return {};
    case ChargeState::dead: return std::string("none");
    case ChargeState::into_empty: return std::string("empty battery");
  }
  return {};
}

std::vector<PlainValue> wire_values(const SolvedBuild& solved, WireId id, const Words& words) {
  const Build& build = solved.build;
  const Wire& wire = build.wire(id);
  const WireLoad load = id.at() < solved.wire_loads.size() ? solved.wire_loads[id.at()] : WireLoad{};
  const bool carries = load.situation.is_set();
  const PlainValue rating = load.fuse.part.is_set() ? plain_rating(inside_of(build, load.fuse)) : PlainValue();
  return {wire.id,
          wire.colour.text(),
          plain_number(wire.area.number(), 3),
          plain_text(wire.size_text),
          print_insulation(wire.insulation, words),
          plain_length(wire.length),
          build.terminal(wire.from).name,
          plain_text(fitting_name(build, wire.from, words)),
          plain_strip(build, wire.from),
          build.terminal(wire.to).name,
          plain_text(fitting_name(build, wire.to, words)),
          plain_strip(build, wire.to),
          carries ? plain_number(load.worst.number(), 3) : PlainValue(),
          plain_situation(build, load.situation),
          plain_charging(load.charging),
          carries ? plain_number(load.drop.number(), 3) : PlainValue(),
          load.ampacity.number() > 0 ? plain_number(load.ampacity.number(), 1) : PlainValue(),
          plain_inside(build, load.fuse),
          rating,
          plain_text(protection_of(solved, id, load.verdict, words)),
          plain_provider(wire.provided),
          plain_text(wire.cable),
          plain_text(wire.purpose)};
}

}  // namespace

PlainTable make_wires_table(const SolvedBuild& solved, const Words& words) {
  PlainTable table{{"wire", "colour", "size_mm2", "size_as_given", "insulation", "length_mm", "from", "from_fitting",
                    "from_strip_mm", "to", "to_fitting", "to_strip_mm", "most_A", "situation", "charging", "lost_V", "may_carry_A",
                    "fuse", "fuse_A", "protection", "from_whom", "cable", "purpose"},
                   {}};
  const Build& build = solved.build;
  std::vector<WireId> wires;
  for (std::size_t w = 0; w < build.wires.size(); ++w) wires.push_back({static_cast<std::int32_t>(w)});
  std::stable_sort(wires.begin(), wires.end(),
                   [&](WireId a, WireId b) { return is_numbered_before(build.wire(a).id, build.wire(b).id); });
  for (const WireId id : wires) table.rows.push_back(wire_values(solved, id, words));
  return table;
}

}  // namespace loomfolio
