// SPDX-License-Identifier: MIT
// In which row each block stands: by longest path from the start side. Bridges hang from the side their leads go to,
// the wider ones deeper, so that they nest like brackets.
#include <algorithm>

#include "layout/inside_flow.h"

namespace loomfolio::inside {
namespace {

bool has_pin(const Block& block, int node, Edge edge) {
  return std::any_of(block.pins.begin(), block.pins.end(),
                     [&](const BlockPin& pin) { return pin.node == node && pin.edge == edge; });
}

/// True when what ends at `before` goes on in `after`.
bool follows(const Block& before, const Block& after) {
  return std::any_of(before.pins.begin(), before.pins.end(), [&](const BlockPin& pin) {
    return pin.edge == Edge::end && has_pin(after, pin.node, Edge::start);
  });
}

/// Place of a node among the terminals of a side, -1 when none stands there.
int place_on_side(const Flow& flow, int node, FlowSide side) {
  int place = 0;
  for (const FlowTerminal& terminal : flow.terminals) {
    if (terminal.side != side) continue;
    if (terminal.node == node) return place;
    ++place;
  }
  return -1;
}

struct Span {
  int from = 0, to = 0;
};

Span span_of(const Flow& flow, const Block& block) {
  const FlowSide side = block.pins[0].edge == Edge::start ? FlowSide::start : FlowSide::end;
  const int a = place_on_side(flow, block.pins[0].node, side), b = place_on_side(flow, block.pins[1].node, side);
  return {std::min(a, b), std::max(a, b)};
}

/// How deep each bridge of one edge nests, from 1; 0 for all other blocks.
std::vector<int> nest(const Flow& flow, Edge edge) {
  const std::size_t count = flow.blocks.size();
  std::vector<int> depth(count, 0);
  std::vector<std::size_t> bridges;
  for (std::size_t i = 0; i < count; ++i)
    if (flow.blocks[i].is_bridge && flow.blocks[i].pins[0].edge == edge) bridges.push_back(i);
  std::stable_sort(bridges.begin(), bridges.end(), [&](std::size_t a, std::size_t b) {
    const Span sa = span_of(flow, flow.blocks[a]), sb = span_of(flow, flow.blocks[b]);
    return sa.to - sa.from < sb.to - sb.from;
  });
  for (std::size_t i = 0; i < bridges.size(); ++i) {
    const Span outer = span_of(flow, flow.blocks[bridges[i]]);
    depth[bridges[i]] = 1;
    for (std::size_t j = 0; j < i; ++j) {
      const Span inner = span_of(flow, flow.blocks[bridges[j]]);
      if (inner.from < outer.to && inner.to > outer.from)
        depth[bridges[i]] = std::max(depth[bridges[i]], depth[bridges[j]] + 1);
    }
  }
  return depth;
}

/// Longest path over blocks that follow one another; stops after as many rounds as there are blocks, should they run in
/// a circle.
void rank_along(Flow& flow) {
  const auto count = static_cast<int>(flow.blocks.size());
  for (Block& block : flow.blocks) block.row = 1;
  for (int round = 0; round < count; ++round) {
    bool moved = false;
    for (const Block& before : flow.blocks)
      for (Block& after : flow.blocks) {
        if (&before == &after || before.is_bridge || after.is_bridge || !follows(before, after)) continue;
        if (after.row > before.row || before.row >= count) continue;
        after.row = before.row + 1;
        moved = true;
      }
    if (!moved) break;
  }
}

/// A coil with room to move stands in the row of what it moves.
void join_gangs(Flow& flow) {
  for (Block& coil : flow.blocks) {
    if (!coil.gang.drives || coil.is_bridge) continue;
    for (const Block& moved : flow.blocks) {
      if (moved.gang.gang != coil.gang.gang || moved.gang.drives || moved.row <= coil.row) continue;
      const bool is_free = std::none_of(flow.blocks.begin(), flow.blocks.end(), [&](const Block& other) {
        return &other != &coil && !other.is_bridge && follows(coil, other) && other.row <= moved.row;
      });
      if (is_free) coil.row = moved.row;
      break;
    }
  }
}

}  // namespace

void rank_blocks(Flow& flow) {
  rank_along(flow);
  const std::vector<int> from_start = nest(flow, Edge::start), from_end = nest(flow, Edge::end);
  int along = 1, deepest_start = 0, deepest_end = 0;
  for (std::size_t i = 0; i < flow.blocks.size(); ++i) {
    if (!flow.blocks[i].is_bridge) along = std::max(along, flow.blocks[i].row);
    deepest_start = std::max(deepest_start, from_start[i]);
    deepest_end = std::max(deepest_end, from_end[i]);
  }
  flow.rows = std::max(along, deepest_start + deepest_end);
  for (std::size_t i = 0; i < flow.blocks.size(); ++i) {
    if (from_start[i] > 0) flow.blocks[i].row = from_start[i];
    if (from_end[i] > 0) flow.blocks[i].row = flow.rows + 1 - from_end[i];
  }
  join_gangs(flow);
}

}  // namespace loomfolio::inside
