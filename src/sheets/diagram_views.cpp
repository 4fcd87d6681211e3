// SPDX-License-Identifier: MIT
// A part on a diagram shows the terminals whose wires are drawn there, and those without which its inside would make no
// sense: the feed of a fuse, the coil of a contact. Terminals are reached through the inside up to the next terminal,
// and over one fuse at most: else a fuse box would always be shown whole.
#include "sheets/diagram_views.h"
#include "sheets/raw_node.h"

#include <algorithm>

namespace loomfolio {
namespace {

void add_once(std::vector<std::size_t>& list, std::size_t value) {
  if (std::find(list.begin(), list.end(), value) == list.end()) list.push_back(value);
}

struct Reach {
  int node = -1;
  int fuses = 0;
};

/// Points that the element joins to the one at `place`.
std::vector<int> joined_to(const Inside& inside, std::size_t place) {
  std::vector<int> others;
  if (inside.type == InsideType::switch_) {
    for (const SwitchPosition& position : inside.positions)
      for (const auto& joined : position.joined)
        if (std::find(joined.begin(), joined.end(), static_cast<int>(place)) != joined.end())
          others.insert(others.end(), joined.begin(), joined.end());
    return others;
  }
  if (inside.type == InsideType::output) return others;
  for (std::size_t n = 0; n < inside.nodes.size(); ++n)
    if (n != place) others.push_back(static_cast<int>(n));
  return others;
}

/// Terminals of the part met from `terminal` through its inside, before any other terminal.
std::vector<int> terminals_behind(const Kind& kind, const Part& part, int terminal) {
  std::vector<Reach> reached{{terminal, 0}};
  std::vector<int> found;
  const auto is_new = [&](int node) {
    return std::none_of(reached.begin(), reached.end(), [node](const Reach& r) { return r.node == node; });
  };
  const auto terminals = static_cast<int>(kind.terminals.size());
  for (std::size_t r = 0; r < reached.size(); ++r) {
    const Reach at = reached[r];
    if (at.node < terminals && at.node != terminal) continue;
    for (const Inside& inside : part.insides)
      for (std::size_t n = 0; n < inside.nodes.size(); ++n) {
        if (raw_node(kind, inside.nodes[n]) != at.node) continue;
        for (int other : joined_to(inside, n)) {
          const int node = raw_node(kind, inside.nodes[static_cast<std::size_t>(other)]);
          const int fuses = at.fuses + (inside.type == InsideType::fuse ? 1 : 0);
          if (fuses > 1 || !is_new(node)) continue;
          reached.push_back({node, fuses});
          if (node < terminals) found.push_back(node);
        }
      }
  }
  return found;
}

/// A coil and its contacts show each other.
void add_relay(const Part& part, std::vector<bool>& is_shown) {
  const auto shows = [&](const Inside& inside) {
    return std::all_of(inside.nodes.begin(), inside.nodes.end(), [&](const Inside::Node& node) {
      return node.terminal < 0 || is_shown[static_cast<std::size_t>(node.terminal)];
    });
  };
  const auto show = [&](const Inside& inside) {
    for (const Inside::Node& node : inside.nodes)
      if (node.terminal >= 0) is_shown[static_cast<std::size_t>(node.terminal)] = true;
  };
  for (const Inside& contact : part.insides) {
    if (contact.type != InsideType::contact) continue;
    for (const Inside& coil : part.insides) {
      if (coil.type != InsideType::coil || coil.id != contact.coil) continue;
      if (shows(contact))
        show(coil);
      else if (shows(coil))
        show(contact);
    }
  }
}

void show_with_inside(const Build& build, const Part& part, std::vector<TerminalUse>& uses) {
  const Kind& kind = build.kind_of(part);
  std::vector<bool> is_shown(part.terminals.size(), false);
  for (std::size_t t = 0; t < part.terminals.size(); ++t) is_shown[t] = uses[part.terminals[t].at()].is_shown;
  const std::vector<bool> used = is_shown;
  for (std::size_t t = 0; t < used.size(); ++t)
    if (used[t])
      for (int behind : terminals_behind(kind, part, static_cast<int>(t)))
        is_shown[static_cast<std::size_t>(behind)] = true;
  add_relay(part, is_shown);
  for (std::size_t t = 0; t < part.terminals.size(); ++t) {
    TerminalUse& use = uses[part.terminals[t].at()];
    const bool is_wired = !use.wires.empty() || !use.elsewhere.empty();
    const bool is_body = kind.terminals[t].form == TerminalForm::body;
    use.is_shown = is_shown[t] && (is_wired || is_body || !kind.terminals[t].may_stay_open);
  }
}

}  // namespace

std::vector<TerminalUse> find_uses(const GraphRequest& request) {
  const Build& build = request.build;
  std::vector<TerminalUse> uses(build.terminals.size());
  for (std::size_t d = 0; d < request.plans.size(); ++d)
    for (std::size_t w = 0; w < request.plans[d].wires.size(); ++w) {
      const Wire& wire = build.wire(request.plans[d].wires[w]);
      for (TerminalId end : {wire.from, wire.to}) {
        TerminalUse& use = uses[end.at()];
        if (d != request.diagram) {
          add_once(use.elsewhere, d);
          continue;
        }
        use.wires.push_back(w);
        use.is_shown = true;
      }
    }
  for (const Part& part : build.parts) {
    const bool is_here =
        std::any_of(part.terminals.begin(), part.terminals.end(), [&](TerminalId t) { return uses[t.at()].is_shown; });
    if (is_here) show_with_inside(build, part, uses);
  }
  return uses;
}

}  // namespace loomfolio
