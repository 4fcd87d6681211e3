// SPDX-License-Identifier: MIT
// Selectors and tables: elements with more than two pins whose positions carry names.
#include <algorithm>

#include "layout/inside_block_makers.h"
#include "model/spec_words.h"

namespace loomfolio::inside {
namespace {

void widen_by_texts(Block& block) {
  for (const BlockText& text : block.texts) {
    block.low = std::max(block.low, -text.x);
    block.high = std::max(block.high, text.x + text.width_x);
  }
}

/// A text beside a pin's lead: to the right of a lead that runs down the page, above one that runs across it.
BlockText beside_lead(const BlockMaker& maker, const std::string& words, Grid pin_x, Grid y) {
  const FlowSize size = size_in_flow(maker.plan, words, maker.styles().small, maker.is_transposed);
  const Grid x = maker.is_transposed ? pin_x - 40 - size.x : pin_x + text_gap;
  return {TextRole::position, words, maker.styles().small, x, y, size.x, size.y, pin_x};
}

}  // namespace

Block make_selector(const BlockMaker& maker, const Ways& ways, const std::vector<TextLine>& lines) {
  const bool is_up = maker.levels.level[static_cast<std::size_t>(ways.nodes[0])] <
                     maker.levels.level[static_cast<std::size_t>(ways.common)];
  Grid pitch = 2 * module, name_room = 0;
  for (const std::string& name : ways.names) {
    if (name.empty()) continue;
    const FlowSize size = size_in_flow(maker.plan, name, maker.styles().small, maker.is_transposed);
    pitch = std::max(pitch, (size.x + 2 * text_gap + 2 * module - 1) / (2 * module) * 2 * module);
    name_room = std::max(name_room, size.y + text_gap);
  }
  const Grid to_common = 500, to_ways = up_to_module(module + std::max<Grid>(name_room, module));
  const auto count = static_cast<Grid>(ways.nodes.size());
  const auto flip = [is_up](Grid y) { return is_up ? -y : y; };
  Block block;
  PlacedSymbol symbol;
  symbol.symbol = Symbol::selector;
  symbol.inside = ways.inside;
  symbol.heading = is_up ? Heading::up : Heading::down;
  symbol.worked_by = operator_of(maker.plan.part->insides[static_cast<std::size_t>(ways.inside)]);
  symbol.is_sprung = maker.plan.part->insides[static_cast<std::size_t>(ways.inside)].is_sprung;
  symbol.way = ways.rest < 0 ? -1 : ways.rest + 1;
  symbol.pins.push_back({0, flip(-to_common)});
  symbol.nodes.push_back(ways.common);
  block.pins.push_back({ways.common, 0, is_up ? Edge::end : Edge::start});
  for (Grid i = 0; i < count; ++i) {
    const auto w = static_cast<std::size_t>(i);
    const Grid x = (2 * i - (count - 1)) * pitch / 2;
    symbol.pins.push_back({x, flip(to_ways)});
    symbol.hinges.push_back({x, flip(module)});
    symbol.nodes.push_back(ways.nodes[w]);
    block.pins.push_back({ways.nodes[w], x, is_up ? Edge::start : Edge::end});
    block.high = std::max(block.high, x + 100);
    if (ways.names[w].empty()) continue;
    BlockText text = beside_lead(maker, ways.names[w], x, 0);
    text.y = is_up ? -module - text_gap / 2 - text.width_y : module + text_gap / 2;
    block.texts.push_back(std::move(text));
  }
  block.low = std::max(block.high, symbol.worked_by == Operator::coil ? Grid{0} : Grid{550});
  block.start = block.text_start = is_up ? to_ways : to_common;
  block.end = block.text_end = is_up ? to_common : to_ways;
  block.drive_x = 100;
  block.symbols.push_back(std::move(symbol));
  widen_by_texts(block);
  // The name of the pole stands beside its common lead.
  for (const TextLine& line : lines) {
    BlockText text = beside_lead(maker, line.text, 0, 0);
    text.role = line.role;
    const FlowSize size = size_in_flow(maker.plan, line.text, text.style, maker.is_transposed);
    text.width_x = size.x;
    text.width_y = size.y;
    if (maker.is_transposed) text.x = -40 - size.x;
    const Grid room = size.y + text_gap;
    Grid& edge = is_up ? block.end : block.start;
    edge = up_to_module(std::max(edge, 300 + room));
    text.y = is_up ? 300 : -300 - size.y;
    (is_up ? block.text_end : block.text_start) = edge;
    block.symbols[0].pins[0].y = is_up ? edge : -edge;
    block.texts.push_back(std::move(text));
  }
  widen_by_texts(block);
  return block;
}

Block make_table(const BlockMaker& maker, const Shown& shown) {
  const Inside& inside = maker.inside(shown);
  Grid pitch = 350, names_width = 0, name_x = 0;
  for (const SwitchPosition& position : inside.positions) {
    const FlowSize size = size_in_flow(maker.plan, position_words(position.name), maker.styles().terminal, maker.is_transposed);
    pitch = std::max(pitch, size.y + 60);
    names_width = std::max(names_width, size.x);
  }
  pitch = (pitch + 49) / 50 * 50;
  std::vector<int> members;  // indices into Inside::nodes, by terminal order
  for (std::size_t n = 0; n < shown.nodes.size(); ++n)
    if (shown.nodes[n] >= 0) members.push_back(static_cast<int>(n));
  std::stable_sort(members.begin(), members.end(), [&](int a, int b) {
    return shown.nodes[static_cast<std::size_t>(a)] < shown.nodes[static_cast<std::size_t>(b)];
  });
  const auto columns = static_cast<Grid>(members.size()), rows = static_cast<Grid>(inside.positions.size());
  const Grid half = up_to_module(((rows - 1) * pitch) / 2 + 250);
  Block block;
  SwitchTable table;
  table.inside = shown.inside;
  for (Grid i = 0; i < columns; ++i) {
    const int node = shown.nodes[static_cast<std::size_t>(members[static_cast<std::size_t>(i)])];
    const Grid x = (2 * i - (columns - 1)) * module;
    const bool is_start = maker.levels.level[static_cast<std::size_t>(node)] < end_level / 2;
    table.nodes.push_back(node);
    table.columns.push_back(x);
    table.from_start.push_back(is_start);
    block.pins.push_back({node, x, is_start ? Edge::start : Edge::end});
  }
  const Grid reach = (columns - 1) * module + 150;
  name_x = -reach - 50 - names_width;
  for (Grid r = 0; r < rows; ++r) {
    const auto p = static_cast<std::size_t>(r);
    SwitchTable::Row row;
    row.y = (2 * r - (rows - 1)) * pitch / 2;
    row.position = static_cast<int>(r);
    row.is_rest = inside.rest_position == row.position;
    for (const auto& joined : inside.positions[p].joined) {
      std::vector<int> group;
      for (std::size_t m = 0; m < members.size(); ++m)
        if (std::find(joined.begin(), joined.end(), members[m]) != joined.end()) group.push_back(static_cast<int>(m));
      if (group.size() >= 2) row.joined.push_back(std::move(group));
    }
    const TextStyle& style = row.is_rest ? maker.styles().terminal : maker.styles().small;
    const std::string name = position_words(inside.positions[p].name);
    const FlowSize size = size_in_flow(maker.plan, name, style, maker.is_transposed);
    const Grid x = maker.is_transposed ? -reach - 50 - size.x : name_x;
    block.texts.push_back(
        {TextRole::position, name, style, x, row.y - size.y / 2, size.x, size.y, 0});
    table.rows.push_back(std::move(row));
  }
  table.box = {-reach, -half + 50, reach, half - 50};
  table.reach_start = -half;
  table.reach_end = half;
  block.low = reach;
  block.high = reach;
  block.start = block.end = block.text_start = block.text_end = half;
  block.tables.push_back(std::move(table));
  widen_by_texts(block);
  return block;
}

}  // namespace loomfolio::inside
