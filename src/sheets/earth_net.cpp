// SPDX-License-Identifier: MIT
#include "sheets/earth_net.h"

namespace loomfolio {
namespace {

class EarthNet {
 public:
  explicit EarthNet(const Build& build)
      : build_(build), wires_(wires_at_terminals(build)), reached_(build.terminals.size()) {}

  std::vector<bool> find() {
    for (const Earth& earth : build_.earths) reach(earth.terminal);
    reach_battery_poles();
    while (!open_.empty()) {
      const TerminalId at = open_.back();
      open_.pop_back();
      for (const WireId wire : wires_[at.at()]) {
        reach(build_.wire(wire).from);
        reach(build_.wire(wire).to);
      }
      reach_links(at);
    }
    return reached_;
  }

 private:
  void reach(TerminalId id) {
    if (reached_[id.at()]) return;
    reached_[id.at()] = true;
    open_.push_back(id);
  }

  void reach_battery_poles() {
    const std::size_t pole = build_.electrics.is_positive_earth ? 0 : 1;  // a source's nodes are {plus, minus}
    for (const Part& part : build_.parts)
      for (const Inside& inside : part.insides)
        if (inside.type == InsideType::source && pole < inside.nodes.size() && inside.nodes[pole].terminal >= 0)
          reach(part.terminals[static_cast<std::size_t>(inside.nodes[pole].terminal)]);
  }

  /// A connector's way: two terminals of one part that a link joins.
  void reach_links(TerminalId id) {
    const Terminal& terminal = build_.terminal(id);
    if (terminal.owner != OwnerType::part) return;
    const Part& part = build_.parts[static_cast<std::size_t>(terminal.owner_index)];
    for (const Inside& inside : part.insides) {
      if (inside.type != InsideType::link || inside.nodes.size() < 2) continue;
      for (const std::size_t side : {0, 1}) {
        const int here = inside.nodes[side].terminal, there = inside.nodes[1 - side].terminal;
        if (here == terminal.kind_terminal && there >= 0) reach(part.terminals[static_cast<std::size_t>(there)]);
      }
    }
  }

  const Build& build_;
  std::vector<std::vector<WireId>> wires_;
  std::vector<bool> reached_;
  std::vector<TerminalId> open_;
};

}  // namespace

std::vector<bool> find_earth_net(const Build& build) { return EarthNet(build).find(); }

}  // namespace loomfolio
