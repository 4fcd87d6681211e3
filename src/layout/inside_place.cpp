// SPDX-License-Identifier: MIT
// From ordered rows to geometry: rows and channels get their y, then terminals, symbols, texts and lines their places.
#include <algorithm>

#include "layout/inside_grid.h"
#include "layout/inside_link.h"
#include "layout/inside_turn.h"

namespace loomfolio::inside {
namespace {

constexpr Grid least_across = 5 * module, side_name_gap = 150;

/// y of everything along the flow.
struct Along {
  std::vector<Grid> row_start, row_centre, row_end;  ///< by row; terminals' rows have no depth
  std::vector<Grid> first_track;                     ///< by channel
  Grid depth = 0;
};

struct Across {
  Grid shift = 0, width = 0;
};

Grid headroom(const Flow& flow, FlowSide side) {
  Grid room = module;
  for (const FlowTerminal& terminal : flow.terminals)
    if (terminal.side == side) room = std::max(room, up_to_module(terminal.name_y + ring_room));
  return room;
}

bool has_sides(const FlowGrid& grid) { return !grid.sides.empty(); }

Along measure_along(const Flow& flow, const FlowGrid& grid, const std::vector<Channel>& channels) {
  const std::size_t rows = grid.rows.size();
  Along along{std::vector<Grid>(rows, 0), std::vector<Grid>(rows, 0), std::vector<Grid>(rows, 0),
              std::vector<Grid>(channels.size(), 0), 0};
  Grid y = headroom(flow, FlowSide::start);
  if (has_sides(grid)) y = std::max(y, 2 * module);
  for (std::size_t c = 0; c < channels.size(); ++c) {
    const bool is_last = c + 1 == channels.size();
    const int tracks = channels[c].tracks;
    along.first_track[c] = c == 0 ? y : y + module;
    if (c == 0)
      y += tracks * module;
    else if (is_last)
      y += tracks * module + headroom(flow, FlowSide::end);
    else
      y += (tracks + 1) * module;
    if (is_last) break;
    const std::size_t row = c + 1;
    Grid before = 0, after = 0;
    for (const GridItem& item : grid.rows[row]) {
      if (item.type != ItemType::block) continue;
      const Block& block = flow.blocks[static_cast<std::size_t>(item.index)];
      before = std::max({before, block.start, block.text_start});
      after = std::max({after, block.end, block.text_end});
    }
    along.row_start[row] = y;
    along.row_centre[row] = y + before;
    along.row_end[row] = y += up_to_module(before + after);
  }
  along.depth = y;
  along.row_start.back() = along.row_centre.back() = along.row_end.back() = y;
  return along;
}

Across measure_across(const Flow& flow, const FlowGrid& grid) {
  Grid least = 0, most = 0, low_margin = module, high_margin = module;
  bool is_first = true;
  for (const auto& row : grid.rows)
    for (const GridItem& item : row) {
      least = is_first ? item.x - item.low : std::min(least, item.x - item.low);
      most = is_first ? item.x + item.high : std::max(most, item.x + item.high);
      is_first = false;
    }
  for (const FlowTerminal& terminal : flow.terminals) {
    const Grid room = terminal.name_x + side_name_gap + module;
    if (terminal.side == FlowSide::low) low_margin = std::max(low_margin, room);
    if (terminal.side == FlowSide::high) high_margin = std::max(high_margin, room);
  }
  // Items count from a module line; so does the box.
  Grid left = least - low_margin;
  left = -((-left + module - 1) / module * module) * (left < 0 ? 1 : -1);
  if (left > least - low_margin) left -= module;
  Across across{-left, up_to_module(most + high_margin - left)};
  if (across.width < least_across) {
    const Grid wider = (least_across - across.width) / 2 / module * module;
    across.shift += wider;
    across.width = least_across;
  }
  return across;
}

struct Emitter {
  const Flow& flow;
  const FlowGrid& grid;
  const std::vector<Channel>& channels;
  Along along;
  Across across;
  PartDrawing drawing;
};

void add_wire(Emitter& out, int node, GridPoint from, GridPoint to) {
  if (from == to) return;
  out.drawing.lines.push_back({InnerStyle::wire, node, {from, to}, {}});
}

void emit_channel(Emitter& out, std::size_t c) {
  const Grid above = out.along.row_end[c], below = out.along.row_start[c + 1];
  for (const Rail& rail : out.channels[c].rails) {
    if (rail.is_straight) {
      const Grid x = rail.least + out.across.shift;
      add_wire(out, rail.node, {x, above}, {x, below});
      continue;
    }
    const Grid y = out.along.first_track[c] + rail.track * module;
    for (Grid x : rail.from_start) add_wire(out, rail.node, {x + out.across.shift, above}, {x + out.across.shift, y});
    for (Grid x : rail.from_end) add_wire(out, rail.node, {x + out.across.shift, y}, {x + out.across.shift, below});
    const Grid low = rail.reaches_low ? 0 : rail.least + out.across.shift;
    const Grid high = rail.reaches_high ? out.across.width : rail.most + out.across.shift;
    const bool is_stub = rail.side_terminal >= 0 && rail.from_start.empty() && rail.from_end.empty();
    if (!is_stub) add_wire(out, rail.node, {low, y}, {high, y});
  }
}

void emit_terminals(Emitter& out) {
  std::vector<PlacedTerminal> placed(out.flow.terminals.size());
  const auto put = [&](int index, GridPoint lead, GridPoint step, Side side) {
    const FlowTerminal& terminal = out.flow.terminals[static_cast<std::size_t>(index)];
    PlacedTerminal& p = placed[static_cast<std::size_t>(index)];
    p.terminal = terminal.terminal;
    p.side = side;
    p.is_open = terminal.is_open;
    p.lead = lead;
    for (int i = 0; i < terminal.taps; ++i) {
      const Grid by = (2 * i - (terminal.taps - 1));
      p.taps.push_back({lead.x + by * step.x, lead.y + by * step.y});
    }
  };
  const bool is_transposed = out.flow.is_transposed;
  for (std::size_t row : {std::size_t{0}, out.grid.rows.size() - 1})
    for (const GridItem& item : out.grid.rows[row]) {
      const Side side =
          row == 0 ? (is_transposed ? Side::left : Side::top) : (is_transposed ? Side::right : Side::bottom);
      put(item.index, {item.x + out.across.shift, row == 0 ? 0 : out.along.depth}, {module, 0}, side);
    }
  for (std::size_t c = 0; c < out.channels.size(); ++c)
    for (const Rail& rail : out.channels[c].rails) {
      if (rail.side_terminal < 0) continue;
      for (const SideTerminal& side : out.grid.sides) {
        const FlowTerminal& terminal = out.flow.terminals[static_cast<std::size_t>(side.index)];
        if (terminal.node != rail.node || side.channel != static_cast<int>(c)) continue;
        const bool is_low = terminal.side == FlowSide::low;
        const Grid y = out.along.first_track[c] + rail.track * module;
        const Side page =
            is_low ? (is_transposed ? Side::top : Side::left) : (is_transposed ? Side::bottom : Side::right);
        put(side.index, {is_low ? 0 : out.across.width, y}, {0, module}, page);
      }
    }
  out.drawing.terminals = std::move(placed);
}

void emit_block(Emitter& out, const Block& block, GridPoint at, std::size_t row) {
  for (const PlacedSymbol& symbol : block.symbols) out.drawing.symbols.push_back(moved(symbol, at));
  for (const InnerLine& line : block.lines) out.drawing.lines.push_back(moved(line, at));
  for (SwitchTable table : block.tables) {
    table.box = {table.box.x0 + at.x, table.box.y0 + at.y, table.box.x1 + at.x, table.box.y1 + at.y};
    for (Grid& x : table.columns) x += at.x;
    table.reach_start += at.y;
    table.reach_end += at.y;
    for (SwitchTable::Row& table_row : table.rows) table_row.y += at.y;
    out.drawing.tables.push_back(std::move(table));
  }
  for (const BlockText& text : block.texts) {
    const GridPoint corner{at.x + text.x, at.y + text.y};
    out.drawing.texts.push_back(
        {text.role, text.text, text.style, {corner.x, corner.y, corner.x + text.width_x, corner.y + text.width_y}, {}});
  }
  for (const BlockPin& pin : block.pins) {
    const Grid x = at.x + pin.x;
    if (pin.edge == Edge::start)
      add_wire(out, pin.node, {x, out.along.row_start[row]}, {x, at.y - block.start});
    else
      add_wire(out, pin.node, {x, at.y + block.end}, {x, out.along.row_end[row]});
  }
}

/// Only the first pole of a switch carries the sign of what works it.
void keep_first_operator(PartDrawing& drawing) {
  for (std::size_t i = 0; i < drawing.symbols.size(); ++i) {
    PlacedSymbol& symbol = drawing.symbols[i];
    if (symbol.worked_by == Operator::none || symbol.worked_by == Operator::coil) continue;
    for (PlacedSymbol& other : drawing.symbols) {
      if (&other == &symbol || other.inside != symbol.inside) continue;
      if (other.at < symbol.at && other.worked_by != Operator::none) symbol.worked_by = Operator::none;
    }
  }
}

}  // namespace

PartDrawing place_flow(const Flow& flow) {
  FlowGrid grid = make_grid(flow);
  search_orders(flow, grid);
  place_across(flow, grid);
  const std::vector<Channel> channels = route_channels(flow, grid);
  Emitter out{flow, grid, channels, measure_along(flow, grid, channels), measure_across(flow, grid), {}};
  out.drawing.width = out.across.width;
  out.drawing.height = out.along.depth;
  emit_terminals(out);
  for (std::size_t c = 0; c < channels.size(); ++c) emit_channel(out, c);
  std::vector<GangMember> members;
  for (std::size_t row = 1; row + 1 < grid.rows.size(); ++row)
    for (const GridItem& item : grid.rows[row]) {
      const Grid x = item.x + out.across.shift;
      if (item.type == ItemType::lane) {
        add_wire(out, item.index, {x, out.along.row_start[row]}, {x, out.along.row_end[row]});
        continue;
      }
      const Block& block = flow.blocks[static_cast<std::size_t>(item.index)];
      const GridPoint at{x, out.along.row_centre[row]};
      emit_block(out, item.is_mirrored ? mirrored_block(block) : block, at, row);
      if (block.gang.gang >= 0 && block.tables.empty())
        members.push_back({block.gang, at, static_cast<int>(row), block.is_bridge, block.drive_x, item.is_mirrored});
    }
  link_gangs(out.drawing, members);
  keep_first_operator(out.drawing);
  return std::move(out.drawing);
}

}  // namespace loomfolio::inside
