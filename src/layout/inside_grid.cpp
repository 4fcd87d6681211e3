// SPDX-License-Identifier: MIT
#include "layout/inside_grid.h"

#include <algorithm>

namespace loomfolio::inside {
namespace {

constexpr Grid half_ring_span = 125, lane_room = 100;

GridItem make_terminal_item(const Flow& flow, std::size_t index, Edge pin_edge) {
  const FlowTerminal& terminal = flow.terminals[index];
  const Grid span = (terminal.taps - 1) * module + half_ring_span;
  GridItem item{ItemType::terminal, static_cast<int>(index), false, 0, 0, {{terminal.node, 0, pin_edge}}, 0};
  item.low = std::max(module, span);
  item.high = std::max(module, span);
  Grid& name_side = flow.is_transposed ? item.low : item.high;
  name_side = std::max(name_side, text_gap + terminal.name_x);
  return item;
}

/// First and last channel in which a node has a pin.
struct Reach {
  int first = -1, last = -1;
  void add(int channel) {
    first = first < 0 ? channel : std::min(first, channel);
    last = std::max(last, channel);
  }
};

std::vector<Reach> find_reaches(const Flow& flow) {
  std::vector<Reach> reaches(static_cast<std::size_t>(flow.nodes));
  for (const FlowTerminal& terminal : flow.terminals) {
    Reach& reach = reaches[static_cast<std::size_t>(terminal.node)];
    if (terminal.side == FlowSide::start) reach.add(0);
    if (terminal.side == FlowSide::end) reach.add(flow.rows);
  }
  for (const Block& block : flow.blocks)
    for (const BlockPin& pin : block.pins)
      reaches[static_cast<std::size_t>(pin.node)].add(pin.edge == Edge::start ? block.row - 1 : block.row);
  return reaches;
}

/// Side terminals open into channels in their order along the side.
void choose_channels(const Flow& flow, FlowGrid& grid, std::vector<Reach>& reaches) {
  for (FlowSide side : {FlowSide::low, FlowSide::high}) {
    int least = 0;
    for (std::size_t t = 0; t < flow.terminals.size(); ++t) {
      if (flow.terminals[t].side != side) continue;
      Reach& reach = reaches[static_cast<std::size_t>(flow.terminals[t].node)];
      const int channel = reach.first < 0 ? least : std::max(least, std::min(reach.first, flow.rows));
      reach.add(channel);
      least = channel;
      grid.sides.push_back({static_cast<int>(t), channel});
    }
  }
}

/// Where a node lies across, 0 to 1 000 000, by the places of its terminals; the rest take the mean of their
/// neighbours.
std::vector<long> lie_across(const Flow& flow) {
  constexpr long width = 1'000'000;
  std::vector<long> place(static_cast<std::size_t>(flow.nodes), width / 2);
  std::vector<bool> is_held(place.size(), false);
  for (FlowSide side : {FlowSide::start, FlowSide::end}) {
    const long count =
        std::count_if(flow.terminals.begin(), flow.terminals.end(), [side](auto& t) { return t.side == side; });
    long nth = 0;
    for (const FlowTerminal& terminal : flow.terminals) {
      if (terminal.side != side) continue;
      const long at = width * (2 * nth++ + 1) / (2 * count);
      const auto n = static_cast<std::size_t>(terminal.node);
      place[n] = is_held[n] ? (place[n] + at) / 2 : at;
      is_held[n] = true;
    }
  }
  for (int round = 0; round < 30; ++round)
    for (std::size_t n = 0; n < place.size(); ++n) {
      if (is_held[n]) continue;
      long sum = 0, count = 0;
      for (const Block& block : flow.blocks) {
        if (std::none_of(block.pins.begin(), block.pins.end(), [n](auto& p) { return p.node == static_cast<int>(n); }))
          continue;
        for (const BlockPin& pin : block.pins)
          if (pin.node != static_cast<int>(n)) {
            sum += place[static_cast<std::size_t>(pin.node)];
            ++count;
          }
      }
      if (count > 0) place[n] = sum / count;
    }
  return place;
}

long key_of(const GridItem& item, const std::vector<long>& place) {
  long sum = 0;
  for (const BlockPin& pin : item.pins) sum += place[static_cast<std::size_t>(pin.node)];
  return item.pins.empty() ? 500'000 : sum / static_cast<long>(item.pins.size());
}

}  // namespace

FlowGrid make_grid(const Flow& flow) {
  FlowGrid grid;
  grid.rows.resize(static_cast<std::size_t>(flow.rows) + 2);
  for (std::size_t t = 0; t < flow.terminals.size(); ++t) {
    if (flow.terminals[t].side == FlowSide::start) grid.rows.front().push_back(make_terminal_item(flow, t, Edge::end));
    if (flow.terminals[t].side == FlowSide::end) grid.rows.back().push_back(make_terminal_item(flow, t, Edge::start));
  }
  for (std::size_t b = 0; b < flow.blocks.size(); ++b) {
    const Block& block = flow.blocks[b];
    grid.rows[static_cast<std::size_t>(block.row)].push_back(
        {ItemType::block, static_cast<int>(b), false, block.low, block.high, block.pins, 0});
  }
  std::vector<Reach> reaches = find_reaches(flow);
  choose_channels(flow, grid, reaches);
  for (int node = 0; node < flow.nodes; ++node) {
    const Reach reach = reaches[static_cast<std::size_t>(node)];
    for (int row = reach.first + 1; reach.first >= 0 && row <= reach.last; ++row)
      grid.rows[static_cast<std::size_t>(row)].push_back(
          {ItemType::lane, node, false, lane_room, lane_room, {{node, 0, Edge::start}, {node, 0, Edge::end}}, 0});
  }
  const std::vector<long> place = lie_across(flow);
  for (std::size_t row = 1; row + 1 < grid.rows.size(); ++row)
    std::stable_sort(grid.rows[row].begin(), grid.rows[row].end(),
                     [&](const GridItem& a, const GridItem& b) { return key_of(a, place) < key_of(b, place); });
  return grid;
}

}  // namespace loomfolio::inside
