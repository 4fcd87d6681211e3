// SPDX-License-Identifier: MIT
// From insides to blocks: which symbol, which pins on which edge, which texts beside it.
#include <algorithm>

#include "base/text.h"
#include "layout/inside_block_makers.h"

namespace loomfolio::inside {
namespace {

FlowSide flow_side(Side side, bool is_transposed) {
  switch (side) {
    case Side::top:
      return is_transposed ? FlowSide::low : FlowSide::start;
    case Side::bottom:
      return is_transposed ? FlowSide::high : FlowSide::end;
    case Side::left:
      return is_transposed ? FlowSide::start : FlowSide::low;
    case Side::right:
      return is_transposed ? FlowSide::end : FlowSide::high;
  }
  return FlowSide::start;
}

/// The part's own metal, bolted down: no wire, no ring on the edge.
bool is_bolted(const Plan& plan, std::size_t terminal) {
  return plan.kind->terminals[terminal].form == TerminalForm::body && plan.ends[terminal] == 0;
}

/// Down the page unless the terminals left and right are far more.
bool flows_across(const Plan& plan) {
  int across = 0, down = 0;
  for (std::size_t t = 0; t < plan.ends.size(); ++t) {
    if (plan.ends[t] < 0 || is_bolted(plan, t)) continue;
    const Side side = plan.kind->terminals[t].side;
    ++(side == Side::left || side == Side::right ? across : down);
  }
  return across > 0 && across >= 2 * down;
}

void add_terminals(const Plan& plan, Flow& flow) {
  for (std::size_t t = 0; t < plan.ends.size(); ++t) {
    if (plan.ends[t] < 0 || is_bolted(plan, t)) continue;
    const KindTerminal& terminal = plan.kind->terminals[t];
    const FlowSize name = size_in_flow(plan, terminal.id, plan.request->styles.terminal, flow.is_transposed);
    flow.terminals.push_back({static_cast<int>(t), plan.node_of[t], flow_side(terminal.side, flow.is_transposed),
                              std::max(plan.ends[t], 1), plan.ends[t] == 0, name.x, name.y});
  }
}

/// Two contacts of one coil that share a node and stand the other way at rest are one changeover.
std::vector<std::pair<std::size_t, std::size_t>> find_changeovers(const Plan& plan) {
  std::vector<std::pair<std::size_t, std::size_t>> found;
  std::vector<bool> is_taken(plan.shown.size(), false);
  const auto inside_of = [&](std::size_t i) -> const Inside& {
    return plan.part->insides[static_cast<std::size_t>(plan.shown[i].inside)];
  };
  for (std::size_t i = 0; i < plan.shown.size(); ++i)
    for (std::size_t j = i + 1; j < plan.shown.size(); ++j) {
      const Inside &a = inside_of(i), &b = inside_of(j);
      if (is_taken[i] || is_taken[j] || a.type != InsideType::contact || b.type != InsideType::contact) continue;
      if (a.coil != b.coil || a.closed_at_rest == b.closed_at_rest) continue;
      const auto &na = plan.shown[i].nodes, &nb = plan.shown[j].nodes;
      if (std::find_first_of(na.begin(), na.end(), nb.begin(), nb.end()) == na.end()) continue;
      is_taken[i] = is_taken[j] = true;
      found.emplace_back(i, j);
    }
  return found;
}

std::vector<int> bolted_nodes(const Plan& plan) {
  std::vector<int> nodes;
  for (std::size_t t = 0; t < plan.ends.size(); ++t)
    if (is_bolted(plan, t)) nodes.push_back(plan.node_of[t]);
  return nodes;
}

/// A coil moves its contacts; the timing circuit of a flasher moves those that flash.
bool moves_contacts(const Plan& plan, const Inside& inside) {
  return inside.type == InsideType::coil ||
         (inside.type == InsideType::load && symbol_of(*plan.kind, inside) == Symbol::electronics &&
          plan.kind->group != "control");
}

/// Gang numbers: a coil's by its place among the insides, a switch's likewise.
int gang_of(const Plan& plan, const Shown& shown) {
  const Inside& inside = plan.part->insides[static_cast<std::size_t>(shown.inside)];
  if (moves_contacts(plan, inside) || inside.type == InsideType::switch_) return shown.inside;
  if (inside.type != InsideType::contact) return -1;
  for (std::size_t i = 0; i < plan.part->insides.size(); ++i) {
    const Inside& other = plan.part->insides[i];
    if (other.id == inside.coil || (inside.flashes && inside.coil.empty() && moves_contacts(plan, other)))
      return static_cast<int>(i);
  }
  return -1;
}

}  // namespace

FlowSize size_in_flow(const Plan& plan, const std::string& text, const TextStyle& style, bool is_transposed) {
  const TextSize size = plan.request->measure.measure(text, style);
  const Grid width = to_grid_up(size.width), height = to_grid_up(size.ascent + size.descent);
  return is_transposed ? FlowSize{height, width} : FlowSize{width, height};
}

Flow make_flow(const Plan& plan) {
  Flow flow;
  flow.is_transposed = flows_across(plan);
  flow.nodes = plan.nodes;
  add_terminals(plan, flow);
  const std::vector<int> bolted = bolted_nodes(plan);
  const Levels levels = find_levels(plan, flow.terminals, bolted);
  const BlockMaker maker{plan, levels, flow.is_transposed};

  const auto changeovers = find_changeovers(plan);
  std::vector<bool> is_second(plan.shown.size(), false);
  for (std::size_t i = 0; i < plan.shown.size(); ++i) {
    if (is_second[i]) continue;
    const Shown& shown = plan.shown[i];
    const auto pair = std::find_if(changeovers.begin(), changeovers.end(), [&](auto p) { return p.first == i; });
    std::vector<Block> made;
    if (pair != changeovers.end()) {
      is_second[pair->second] = true;
      made.push_back(make_changeover(maker, shown, plan.shown[pair->second]));
    } else {
      made = make_blocks(maker, shown);
    }
    for (Block& block : made) {
      block.gang.gang = gang_of(plan, shown);
      block.gang.drives = moves_contacts(plan, maker.inside(shown));
      flow.blocks.push_back(std::move(block));
    }
  }
  for (int node : bolted) flow.blocks.push_back(make_frame_earth(node));
  rank_blocks(flow);
  return flow;
}

}  // namespace loomfolio::inside
