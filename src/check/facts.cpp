// SPDX-License-Identifier: MIT
#include "check/facts.h"

#include <cmath>

#include "base/text.h"
#include "check/check.h"
#include "solve/at_once.h"
#include "solve/meter.h"
#include "solve/supply.h"

namespace loomfolio {

namespace {

/// The build solved with every switch at rest and the engine stopped.
std::optional<Solution> solve_at_rest(const Build& build) {
  Build resting = build;
  Situation rest;
  rest.name = "at-rest";
  resting.situations.assign(1, rest);
  Solution solution = solve_situation(resting, SituationId{0});
  if (solution.settling != Settling::settled) return {};
  return solution;
}

/// What shorts and overloads would do, from the situations that have one state.
std::optional<ProtectionStudy> study_settled(const Build& build, const std::vector<Solution>& solutions) {
  std::vector<Solution> settled;
  for (const Solution& solution : solutions)
    if (solution.settling == Settling::settled) settled.push_back(solution);
  if (settled.empty()) return {};
  return study_with_all_on(build, settled);
}

}  // namespace

Facts gather_facts(const CheckInput& input) {
  const Build& build = input.build;
  const std::vector<Solution>& solutions = input.solutions;
  Facts facts{build, solutions, wires_at_terminals(build), trace_paths(build), {}, {}};
  facts.protection = input.protection != nullptr ? std::optional(*input.protection) : study_settled(build, solutions);
  if (!solutions.empty()) facts.at_rest = solve_at_rest(build);
  return facts;
}

void each_part_end(const Facts& facts, const std::function<void(const WireEnd&)>& visit) {
  const Build& build = facts.build;
  for (std::size_t w = 0; w < build.wires.size(); ++w)
    for (const TerminalId id : {build.wires[w].from, build.wires[w].to}) {
      const Terminal& terminal = build.terminal(id);
      if (terminal.owner != OwnerType::part) continue;
      const Part& part = build.parts[static_cast<std::size_t>(terminal.owner_index)];
      const KindTerminal& kind_terminal =
          build.kind_of(part).terminals[static_cast<std::size_t>(terminal.kind_terminal)];
      visit({{static_cast<std::int32_t>(w)}, id, &part, &kind_terminal});
    }
}

void each_inside(const Build& build, const std::function<void(InsideRef, const Part&, const Inside&)>& visit) {
  for (std::size_t p = 0; p < build.parts.size(); ++p)
    for (std::size_t i = 0; i < build.parts[p].insides.size(); ++i)
      visit({{static_cast<std::int32_t>(p)}, static_cast<int>(i)}, build.parts[p], build.parts[p].insides[i]);
}

void each_cavity_pair(const Facts& facts, const std::function<void(const CavityPair&)>& visit) {
  for (const Part& part : facts.build.parts) {
    if (!facts.build.kind_of(part).is_connector) continue;
    for (const Inside& inside : part.insides) {
      const bool is_way = inside.type == InsideType::link && inside.nodes.size() >= 2 &&
                          inside.nodes[0].terminal >= 0 && inside.nodes[1].terminal >= 0;
      if (!is_way) continue;
      const TerminalId a = part.terminals[static_cast<std::size_t>(inside.nodes[0].terminal)];
      const TerminalId b = part.terminals[static_cast<std::size_t>(inside.nodes[1].terminal)];
      visit({a, b, facts.wires_at[a.at()], facts.wires_at[b.at()]});
    }
  }
}

std::vector<SettledSituation> settled_situations(const Facts& facts) {
  std::vector<SettledSituation> settled;
  for (const Solution& solution : facts.solutions)
    if (solution.settling == Settling::settled)
      settled.push_back({&facts.build.situations[solution.situation.at()], &solution});
  return settled;
}

namespace {

Peak greatest(const Facts& facts, InsideRef ref, bool by_volts) {
  Peak peak;
  for (const SettledSituation& settled : settled_situations(facts)) {
    const InsideState& state = settled.solution->insides[ref.part.at()][static_cast<std::size_t>(ref.inside)];
    const Amperes amperes(std::fabs(state.amperes.number()));
    const Volts volts(std::fabs(state.volts.number()));
    if (peak.situation && (by_volts ? volts <= peak.volts : amperes <= peak.amperes)) continue;
    peak = {settled.situation, amperes, volts};
  }
  return peak;
}

}  // namespace

Peak greatest_amperes(const Facts& facts, InsideRef ref) { return greatest(facts, ref, false); }
Peak greatest_volts(const Facts& facts, InsideRef ref) { return greatest(facts, ref, true); }

Amperes given_by_source(const Facts& facts, const Solution& solution, InsideRef ref) {
  // The state counts from the first node (plus) through the element to the second: giving is the other way.
  (void)facts;
  return -solution.insides[ref.part.at()][static_cast<std::size_t>(ref.inside)].amperes;
}

std::optional<Volts> battery_volts(const Facts& facts, const Solution& solution) {
  const SupplyPoles supply = find_supply_poles(facts.build);
  int sources = 0;
  each_inside(facts.build, [&](InsideRef, const Part&, const Inside& inside) { sources += inside.type == InsideType::source; });
  const bool is_row = supply.earthed != supply.live;
  if (!supply.live.part.is_set() || (sources > 1 && !is_row)) return std::nullopt;
  if (!is_row)
    return Volts(std::fabs(
        solution.insides[supply.live.part.at()][static_cast<std::size_t>(supply.live.inside)].volts.number()));
  const TerminalId live = live_pole(facts.build);
  return live.is_set() ? std::optional(Volts(std::fabs(solution.terminal_volts[live.at()].number()))) : std::nullopt;
}

Where rating_place(const Part& part, const Inside& fuse) {
  for (const std::string& key : {fuse.id, std::string("rating"), fuse.id + "_fuse"})
    if (part.origin.has(key)) return part.origin.key(key);
  return part.origin.table;
}

std::string say_wire(const Build& build, WireId wire) { return "wire `" + build.wire(wire).id + "`"; }

std::string say_terminal(const Build& build, TerminalId terminal) { return "`" + build.terminal(terminal).name + "`"; }

std::string say_inside(const Build& build, InsideRef ref) {
  const Part& part = build.part(ref.part);
  if (ref.inside < 0 || part.insides.size() == 1) return "`" + part.id + "`";
  return "`" + part.id + "." + part.insides[static_cast<std::size_t>(ref.inside)].id + "`";
}

std::string say_part(const Part& part) { return "part `" + part.id + "`"; }

std::string say_situation(const Situation& situation) { return "situation `" + situation.name + "`"; }

std::string say(Amperes a) {
  const double size = a.number() < 0 ? -a.number() : a.number();
  if (size < 0.1) return shortest(a.number() * 1000, 1) + " mA";
  return shortest(a.number(), size < 10 ? 2 : 1) + " A";
}
std::string say(Volts v) { return shortest(v.number(), 2) + " V"; }
std::string say(SquareMillimetres a) { return shortest(a.number(), 2) + " mm2"; }
std::string say(Millimetres l) { return shortest(l.number(), 2) + " mm"; }
std::string say(Metres l) { return shortest(l.number() * 1000, 0) + " mm"; }

void add_note(Diagnostic& diagnostic, Where where, std::string message) {
  diagnostic.notes.push_back({where, std::move(message)});
}

}  // namespace loomfolio
