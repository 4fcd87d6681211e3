// SPDX-License-Identifier: MIT
// A part is on the sheet with the terminals of its drawn wires and with what its closed contacts, fuses and links join to them. A wire there
// that is not drawn and carries current is a place where a reader would see current vanish or come from nowhere. Earths are left out: the
// frame takes everything.
#include "sheets/situation_exits.h"

#include <algorithm>
#include <cmath>

#include "sheets/raw_node.h"
#include "sheets/situation_paths.h"
#include "sheets/situation_state.h"

namespace loomfolio {
namespace {

struct Finder {
  const Build& build;
  const SituationPair& pair;
  const Paths paths;
  const std::vector<std::vector<WireId>> wires_at;  ///< by TerminalId
  std::vector<bool> is_drawn;  ///< by WireId
  std::vector<CurrentExit> exits = {};

  const SolvedState& state(bool is_before) const { return is_before ? pair.before : pair.after; }

  bool has_drawn_wire(TerminalId terminal) const {
    const std::vector<WireId>& wires = wires_at[terminal.at()];
    return std::any_of(wires.begin(), wires.end(), [&](WireId wire) { return is_drawn[wire.at()]; });
  }

  /// Terminals of the part that the sheet shows or that are joined to them as the part stands.
  std::vector<TerminalId> shown_terminals(std::size_t p, const SolvedState& solved) const {
    const Part& part = build.parts[p];
    const Kind& kind = build.kind_of(part);
    std::vector<bool> reached(kind.terminals.size() + static_cast<std::size_t>(kind.inner_points), false);
    for (std::size_t t = 0; t < part.terminals.size(); ++t) reached[t] = has_drawn_wire(part.terminals[t]);
    for (bool is_grown = true; is_grown;) {
      is_grown = false;
      for (std::size_t i = 0; i < part.insides.size(); ++i)
        for (const NodeJoint& joint : joints_of(build, solved.situation, solved.solution, {PartId{static_cast<std::int32_t>(p)}, static_cast<int>(i)})) {
          const auto a = static_cast<std::size_t>(joint.a), b = static_cast<std::size_t>(joint.b);
          if (reached[a] == reached[b]) continue;
          reached[a] = reached[b] = is_grown = true;
        }
    }
    std::vector<TerminalId> shown;
    for (std::size_t t = 0; t < part.terminals.size(); ++t)
      if (reached[t]) shown.push_back(part.terminals[t]);
    return shown;
  }

  CurrentExit& exit_at(TerminalId at, bool is_leaving) {
    const auto owns = [&](const CurrentExit& exit) {
      const Terminal &a = build.terminal(exit.at), &b = build.terminal(at);
      return a.owner == b.owner && a.owner_index == b.owner_index && exit.is_leaving == is_leaving;
    };
    const auto found = std::find_if(exits.begin(), exits.end(), owns);
    if (found != exits.end()) return *found;
    exits.push_back({at, is_leaving, {}, Amperes(0), Amperes(0), {}});
    return exits.back();
  }

  void note(TerminalId at, bool is_before) {
    const SolvedState& solved = state(is_before);
    for (const WireId id : wires_at[at.at()]) {
      const double amperes = solved.solution.wire_amperes[id.at()].number();
      if (is_drawn[id.at()] || std::abs(amperes) < least_flow.number() || is_stray_flow(build, solved.solution, id)) continue;
      const bool is_leaving = (amperes > 0) == (build.wire(id).from == at);
      CurrentExit& exit = exit_at(at, is_leaving);
      if (std::find(exit.wires.begin(), exit.wires.end(), id) == exit.wires.end()) exit.wires.push_back(id);
      (is_before ? exit.before : exit.after) += Amperes(std::abs(amperes));
      for (const PartId part : find_parts_along(build, paths, solved, id, is_leaving ? Along::down : Along::up))
        if (std::find(exit.parts.begin(), exit.parts.end(), part) == exit.parts.end()) exit.parts.push_back(part);
    }
  }
};

}  // namespace

std::vector<CurrentExit> find_exits(const Build& build, const SituationPair& pair, const std::vector<WireId>& drawn) {
  Finder finder{build, pair, trace_paths(build), wires_at_terminals(build), std::vector<bool>(build.wires.size(), false)};
  for (const WireId wire : drawn) finder.is_drawn[wire.at()] = true;
  for (const bool is_before : {true, false}) {
    for (std::size_t p = 0; p < build.parts.size(); ++p)
      for (const TerminalId at : finder.shown_terminals(p, finder.state(is_before))) finder.note(at, is_before);
    for (const Splice& splice : build.splices)
      if (finder.has_drawn_wire(splice.terminal)) finder.note(splice.terminal, is_before);
  }
  for (CurrentExit& exit : finder.exits) {
    std::sort(exit.wires.begin(), exit.wires.end());
    std::sort(exit.parts.begin(), exit.parts.end());
  }
  return finder.exits;
}

}  // namespace loomfolio
