// SPDX-License-Identifier: MIT
// Blocks of elements with two nodes, of boxes with many pins, and the texts beside them.
#include <algorithm>

#include "base/text.h"
#include "layout/inside_block_makers.h"

namespace loomfolio::inside {
namespace {

constexpr Grid bridge_gap = 150, operator_room = 550;

/// Carries the sign of what works it, on its low side.
bool is_worked(const PlacedSymbol& symbol) {
  return symbol.worked_by != Operator::none && symbol.worked_by != Operator::coil;
}

/// Puts symbol and pins of an element that lies along the flow.
void lay_along(Block& block, PlacedSymbol symbol, int at_start, int at_end) {
  const SymbolRoom room = room_of(symbol.symbol);
  const Grid half = room.length / 2;
  block.low = room.left;
  block.high = room.right;
  block.start = block.end = block.text_start = block.text_end = half;
  block.pins = {{at_start, 0, Edge::start}, {at_end, 0, Edge::end}};
  block.drive_x = symbol.symbol == Symbol::break_contact ? -65 : 145;
  symbol.pins = {{0, -half}, {0, half}};
  if (symbol.heading == Heading::up) std::swap(symbol.pins[0], symbol.pins[1]);
  block.symbols.push_back(std::move(symbol));
}

/// Puts an element across the flow, both its leads turned to one edge.
void lay_bridge(Block& block, PlacedSymbol symbol, int a, int b, Edge edge) {
  SymbolRoom room = room_of(symbol.symbol);
  if (is_worked(symbol)) room.left = std::max(room.left, operator_room);
  const Grid half = room.length / 2, reach = up_to_module(half + bridge_gap);
  const Grid depth = up_to_module((edge == Edge::start ? room.left : room.right) + bridge_gap);
  block.is_bridge = true;
  block.drive_x = symbol.symbol == Symbol::break_contact ? -65 : 145;
  block.low = block.high = reach;
  block.start = block.text_start = edge == Edge::start ? depth : room.left;
  block.end = block.text_end = edge == Edge::end ? depth : room.right;
  block.pins = {{a, -reach, edge}, {b, reach, edge}};
  const Grid foot = edge == Edge::start ? -depth : depth;
  symbol.heading = Heading::right;
  symbol.pins = {{-half, 0}, {half, 0}};
  block.lines.push_back({InnerStyle::wire, a, {{-half, 0}, {-reach, 0}, {-reach, foot}}, {}});
  block.lines.push_back({InnerStyle::wire, b, {{half, 0}, {reach, 0}, {reach, foot}}, {}});
  block.symbols.push_back(std::move(symbol));
}

/// 'phase U' beside a terminal named U says nothing new.
bool repeats_terminal(const BlockMaker& maker, const Inside& inside) {
  const std::string last = split(inside.name, ' ').back();
  const auto& terminals = maker.plan.kind->terminals;
  return inside.is_winding && std::any_of(terminals.begin(), terminals.end(), [&](auto& t) { return t.id == last; });
}

std::string print_choice(const Part& part) {
  const auto& choice = part.fuse_choice.front();
  return shortest(choice.least.number()) + "\u2013" + shortest(choice.most.number()) + " A";
}

}  // namespace

bool is_value_of_fuse(const Part& part) {
  if (!part.fuse_choice.empty()) return true;  // what it may be stands there
  if (part.insides.size() < 2) return false;
  return std::any_of(part.insides.begin(), part.insides.end(), [&](const Inside& inside) {
    return inside.type == InsideType::fuse && !inside.name.empty() && inside.rating &&
           part.value_text == shortest(inside.rating->number()) + " A";
  });
}

std::vector<TextLine> lines_beside(const BlockMaker& maker, const Inside& inside) {
  const Part& part = *maker.plan.part;
  const std::string& value = part.value_text;
  std::vector<TextLine> lines;
  if (!inside.name.empty() && !repeats_terminal(maker, inside)) lines.push_back({TextRole::element, inside.name});
  if (inside.type == InsideType::fuse) {
    if (!part.fuse_choice.empty())
      lines.push_back({TextRole::rating, print_choice(part)});
    else if (inside.rating) {
      const std::string rating = shortest(inside.rating->number()) + " A";
      if (value.find(rating) == std::string::npos || is_value_of_fuse(part)) lines.push_back({TextRole::rating, rating});
    }
  }
  return lines;
}

void add_lines_beside(const BlockMaker& maker, Block& block, const std::vector<TextLine>& lines) {
  std::vector<FlowSize> sizes;
  Grid stack = 0, widest = 0;  // stack: down the page; widest: across it
  for (const TextLine& line : lines) {
    sizes.push_back(size_in_flow(maker.plan, line.text, maker.styles().small, maker.is_transposed));
    stack += maker.is_transposed ? sizes.back().x : sizes.back().y;
    widest = std::max(widest, maker.is_transposed ? sizes.back().y : sizes.back().x);
  }
  if (lines.empty()) return;
  const bool is_before = block.is_bridge && block.pins.front().edge == Edge::end;
  Grid down = 0;
  for (std::size_t i = 0; i < lines.size(); ++i) {
    BlockText text{lines[i].role, lines[i].text, maker.styles().small, 0, 0, sizes[i].x, sizes[i].y, 0};
    const Grid step = maker.is_transposed ? sizes[i].x : sizes[i].y;
    if (!block.is_bridge) {
      text.x = block.high + text_gap + (maker.is_transposed ? down : 0);
      text.y = maker.is_transposed ? -sizes[i].y / 2 : -stack / 2 + down;
      // A link to the next pole passes through the middle: texts keep above it.
      if (block.is_linked && !maker.is_transposed) text.y = -stack - text_gap + down;
      if (block.is_linked && maker.is_transposed) text.y = -sizes[i].y - text_gap;
    } else {
      const Grid depth = maker.is_transposed ? widest : stack;
      text.x = maker.is_transposed ? -stack / 2 + down : -sizes[i].x / 2;
      text.y = (is_before ? -block.start - text_gap - depth : block.end + text_gap) + (maker.is_transposed ? 0 : down);
    }
    down += step;
    block.texts.push_back(std::move(text));
  }
  for (const BlockText& text : block.texts) {
    block.low = std::max(block.low, -text.x);
    block.high = std::max(block.high, text.x + text.width_x);
    block.text_start = std::max(block.text_start, -text.y);
    block.text_end = std::max(block.text_end, text.y + text.width_y);
  }
}

Block make_two_node_block(const BlockMaker& maker, const TwoNodes& what, const std::vector<TextLine>& lines) {
  PlacedSymbol symbol;
  symbol.symbol = what.symbol;
  symbol.inside = what.inside;
  symbol.nodes = {what.a, what.b};
  if (what.inside >= 0) {
    const Inside& inside = maker.plan.part->insides[static_cast<std::size_t>(what.inside)];
    symbol.worked_by = operator_of(inside);
    symbol.is_sprung = inside.is_sprung;
  }
  if (what.symbol == Symbol::motor) symbol.letters = "M";
  if (what.symbol == Symbol::generator) symbol.letters = "G";
  Block block;
  block.is_linked = what.is_linked;
  switch (lie_between(maker.levels, what.a, what.b)) {
    case Lie::along:
      lay_along(block, std::move(symbol), what.a, what.b);
      break;
    case Lie::against:
      symbol.heading = Heading::up;
      lay_along(block, std::move(symbol), what.b, what.a);
      break;
    case Lie::bridge_start:
      lay_bridge(block, std::move(symbol), what.a, what.b, Edge::start);
      break;
    case Lie::bridge_end:
      lay_bridge(block, std::move(symbol), what.a, what.b, Edge::end);
      break;
  }
  if (is_worked(block.symbols[0]) && !block.is_bridge) block.low = std::max(block.low, operator_room);
  add_lines_beside(maker, block, lines);
  return block;
}

Block make_frame_earth(int node) {
  Block block;
  const SymbolRoom room = room_of(Symbol::frame_earth);
  PlacedSymbol symbol;
  symbol.symbol = Symbol::frame_earth;
  symbol.nodes = {node};
  symbol.pins = {{0, -room.length / 2}};
  block.low = room.left;
  block.high = room.right;
  block.start = block.end = block.text_start = block.text_end = room.length / 2;
  block.pins = {{node, 0, Edge::start}};
  block.symbols.push_back(std::move(symbol));
  return block;
}

Block make_box_with_pins(const BlockMaker& maker, const Shown& shown, Symbol symbol) {
  const SymbolRoom room = room_of(symbol);
  const Grid half = room.length / 2;
  PlacedSymbol placed;
  placed.symbol = symbol;
  placed.inside = shown.inside;
  std::vector<int> edges[2];
  std::vector<int> seen;
  for (int node : shown.nodes) {
    if (node < 0 || std::find(seen.begin(), seen.end(), node) != seen.end()) continue;
    seen.push_back(node);
    edges[maker.levels.level[static_cast<std::size_t>(node)] < end_level / 2 ? 0 : 1].push_back(node);
  }
  Block block;
  block.start = block.end = block.text_start = block.text_end = half;
  block.low = block.high = room.left;
  for (int e = 0; e < 2; ++e) {
    std::sort(edges[e].begin(), edges[e].end());
    const auto count = static_cast<Grid>(edges[e].size());
    for (Grid i = 0; i < count; ++i) {
      const Grid x = (2 * i - (count - 1)) * module;
      const int node = edges[e][static_cast<std::size_t>(i)];
      block.pins.push_back({node, x, e == 0 ? Edge::start : Edge::end});
      placed.pins.push_back({x, e == 0 ? -half : half});
      placed.nodes.push_back(node);
      block.low = block.high = std::max(block.high, std::abs(x) + module);
    }
  }
  placed.letters = edges[0].size() >= 3 || edges[1].size() >= 3 ? "3~" : "1~";
  block.symbols.push_back(std::move(placed));
  add_lines_beside(maker, block, lines_beside(maker, maker.inside(shown)));
  return block;
}

std::vector<Block> make_blocks(const BlockMaker& maker, const Shown& shown) {
  const Inside& inside = maker.inside(shown);
  if (inside.type == InsideType::switch_) return make_switch(maker, shown);
  if (inside.type == InsideType::charger) return {make_box_with_pins(maker, shown, Symbol::charger)};
  if (shown.nodes.size() < 2 || shown.nodes[0] < 0 || shown.nodes[1] < 0 || shown.nodes[0] == shown.nodes[1]) return {};
  const TwoNodes what{symbol_of(*maker.plan.kind, inside), shown.inside, shown.nodes[0], shown.nodes[1]};
  return {make_two_node_block(maker, what, lines_beside(maker, inside))};
}

}  // namespace loomfolio::inside
