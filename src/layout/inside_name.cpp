// SPDX-License-Identifier: MIT
// Where the part's name and value stand. They share the box with leads and symbols, so a free place is looked for;
// where there is none the box opens: a strip at the low or high edge, or a strip across its leads just inside the top
// or the bottom. Every way of breaking the name into lines is tried with every opening; the smallest box wins, with a
// small charge for odd shapes and for breaking the name.
#include <algorithm>
#include <array>

#include "base/text.h"
#include "layout/inside_turn.h"

namespace loomfolio::inside {
namespace {

constexpr Grid clear = 90, search_step = 125;
/// Words side by side read as one phrase: where the box has the room, the name stands so far from all else.
constexpr std::array<Grid, 3> clearances{250, 170, clear};

struct NameLine {
  TextRole role = TextRole::part_name;
  std::string text;
  TextStyle style;
  FlowSize size;
};

struct NameBlock {
  std::vector<NameLine> lines;
  Grid width = 0, height = 0;
  int breaks = 0;
};

/// How the box opens: by how much at its left, right, below its top leads, above its bottom leads.
struct Opening {
  Grid left = 0, right = 0, top = 0, bottom = 0;
};

/// `words` in `count` lines as even as can be, words kept in order.
std::vector<std::string> break_lines(const std::vector<std::string>& words, std::size_t count) {
  std::size_t total = words.size();
  for (const std::string& word : words) total += count_characters(word);
  std::vector<std::string> lines;
  std::string line;
  std::size_t used = 0;
  for (std::size_t i = 0; i < words.size(); ++i) {
    const bool must_break =
        !line.empty() && (used + count_characters(words[i]) / 2) * count > total * (lines.size() + 1);
    if (must_break && lines.size() + 1 < count) {
      lines.push_back(line);
      line.clear();
    }
    line += (line.empty() ? "" : " ") + words[i];
    used += count_characters(words[i]) + 1;
  }
  lines.push_back(line);
  return lines;
}

void add_line(const Plan& plan, NameBlock& block, TextRole role, const std::string& text) {
  const TextStyle& style = role == TextRole::part_name ? plan.request->styles.name : plan.request->styles.value;
  block.lines.push_back({role, text, style, size_in_flow(plan, text, style, false)});
  block.width = std::max(block.width, block.lines.back().size.x);
  block.height += block.lines.back().size.y;
}

std::vector<NameBlock> name_blocks(const Plan& plan) {
  std::vector<NameBlock> blocks;
  std::vector<std::string> words;
  for (const std::string& word : split(plan.part->label, ' '))
    if (!word.empty()) words.push_back(word);
  std::vector<std::string> value_words;
  const std::string& value = is_value_of_fuse(*plan.part) ? std::string() : plan.part->value_text;
  for (const std::string& word : split(value, ','))
    if (!trimmed(word).empty()) value_words.push_back(trimmed(word));
  for (std::size_t count = 1; count <= std::min<std::size_t>(std::max<std::size_t>(words.size(), 1), 4); ++count) {
    NameBlock block;
    block.breaks = static_cast<int>(count) - 1;
    for (const std::string& line : break_lines(words, count)) add_line(plan, block, TextRole::part_name, line);
    if (count == 1 || value_words.size() < 2) {
      if (!value.empty()) add_line(plan, block, TextRole::part_value, value);
    } else {
      for (const std::string& line : value_words) add_line(plan, block, TextRole::part_value, line);
    }
    blocks.push_back(std::move(block));
  }
  return blocks;
}

/// Boxes that the name must not touch.
std::vector<GridBox> obstacles_of(const PartDrawing& drawing) {
  std::vector<GridBox> found;
  for (const InnerLine& line : drawing.lines)
    for (std::size_t i = 1; i < line.points.size(); ++i) {
      const GridPoint a = line.points[i - 1], b = line.points[i];
      found.push_back({std::min(a.x, b.x), std::min(a.y, b.y), std::max(a.x, b.x), std::max(a.y, b.y)});
    }
  for (const PlacedSymbol& symbol : drawing.symbols) {
    const SymbolRoom room = room_of(symbol.symbol);
    const bool is_upright = symbol.heading == Heading::down || symbol.heading == Heading::up;
    Grid low = room.left, high = room.right;
    const bool is_worked = symbol.worked_by != Operator::none && symbol.worked_by != Operator::coil;
    if (is_worked) low = std::max<Grid>(low, 550);
    const Grid half = room.length / 2;
    GridBox box = is_upright ? GridBox{symbol.at.x - low, symbol.at.y - half, symbol.at.x + high, symbol.at.y + half}
                             : GridBox{symbol.at.x - half, symbol.at.y - low, symbol.at.x + half, symbol.at.y + high};
    for (GridPoint p : symbol.pins)
      box = {std::min(box.x0, p.x), std::min(box.y0, p.y), std::max(box.x1, p.x), std::max(box.y1, p.y)};
    found.push_back(box);
  }
  for (const SwitchTable& table : drawing.tables) found.push_back(table.box);
  for (const InnerText& text : drawing.texts) found.push_back(text.box);
  for (const PlacedTerminal& terminal : drawing.terminals)
    for (GridPoint tap : terminal.taps) found.push_back(GridBox{tap.x, tap.y, tap.x, tap.y}.grown(110));
  return found;
}

/// Cuts pass beside symbols: a lead moves with the pin that it ends at.
Grid cut_below_top(const PartDrawing& drawing) {
  const bool has_top =
      std::any_of(drawing.terminals.begin(), drawing.terminals.end(), [](auto& t) { return t.side == Side::top; });
  Grid cut = has_top ? 2 * module : 0;
  for (const PlacedSymbol& symbol : drawing.symbols)
    for (const GridPoint& pin : symbol.pins) cut = std::min(cut, pin.y);
  return cut;
}

Grid cut_above_bottom(const PartDrawing& drawing) {
  const bool has_bottom =
      std::any_of(drawing.terminals.begin(), drawing.terminals.end(), [](auto& t) { return t.side == Side::bottom; });
  Grid cut = drawing.height - (has_bottom ? 2 * module : 0);
  for (const PlacedSymbol& symbol : drawing.symbols)
    for (const GridPoint& pin : symbol.pins) cut = std::max(cut, pin.y);
  return cut;
}

struct Cuts {
  Grid top = 0, bottom = 0;
};

/// Where a point goes when the box opens. What lies on the top cut goes down with what is below, what lies on the
/// bottom cut stays.
GridPoint opened(GridPoint p, const Opening& by, const Cuts& cuts) {
  return {p.x + by.left, p.y + (p.y >= cuts.top ? by.top : 0) + (p.y > cuts.bottom ? by.bottom : 0)};
}

GridBox opened(GridBox box, const Opening& by, const Cuts& cuts) {
  const GridPoint a = opened(GridPoint{box.x0, box.y0}, by, cuts), b = opened(GridPoint{box.x1, box.y1}, by, cuts);
  return {a.x, a.y, b.x, b.y};
}

std::vector<GridBox> opened(const std::vector<GridBox>& boxes, const Opening& by, const Cuts& cuts) {
  std::vector<GridBox> moved;
  moved.reserve(boxes.size());
  for (const GridBox& box : boxes) moved.push_back(opened(box, by, cuts));
  return moved;
}

struct Found {
  bool is_found = false;
  GridPoint at;
};

/// The free place nearest to what looks settled: high up and to the left, or in the middle of a box with room.
Found find_free(const std::vector<GridBox>& obstacles, const NameBlock& name, Grid width, Grid height,
                Grid clearance) {
  Found best;
  long least = 0;
  const Grid margin = 150;
  for (Grid y = margin; y + name.height + margin <= height; y += search_step)
    for (Grid x = margin; x + name.width + margin <= width; x += search_step) {
      const GridBox box = GridBox{x, y, x + name.width, y + name.height}.grown(clearance);
      if (std::any_of(obstacles.begin(), obstacles.end(),
                      [&](GridBox o) { return box.x0 <= o.x1 && o.x0 <= box.x1 && box.y0 <= o.y1 && o.y0 <= box.y1; }))
        continue;
      const long off_centre = std::abs(2 * x + name.width - width), off_middle = std::abs(2 * y + name.height - height);
      const long charge = off_middle + std::min<long>(off_centre, 2 * (x - margin)) / 2;
      if (best.is_found && charge >= least) continue;
      least = charge;
      best = {true, {x, y}};
    }
  return best;
}

struct Choice {
  bool is_found = false;
  Opening opening;
  NameBlock name;
  GridPoint at;
  long cost = 0;
};

void consider(const PartDrawing& drawing, const std::vector<GridBox>& obstacles, const Cuts& cuts,
              const NameBlock& name, const Opening& opening, Choice& best) {
  const Grid width = drawing.width + opening.left + opening.right,
             height = drawing.height + opening.top + opening.bottom;
  const long area = static_cast<long>(width) * height / 10000;
  const long odd = width > height ? width - 2 * height : height - 2 * width;
  const long cost =
      area + std::max(odd, 0L) / 5 + name.breaks * 40 + (opening.left > 0 ? 3 : 0) + (opening.bottom > 0 ? 2 : 0);
  if (best.is_found && cost >= best.cost) return;
  const Found found = find_free(opened(obstacles, opening, cuts), name, width, height, clear);
  if (found.is_found) best = {true, opening, name, found.at, cost};
}

/// In the box as it was chosen, where the name has most air.
GridPoint airiest(const PartDrawing& drawing, const std::vector<GridBox>& obstacles, const Cuts& cuts, const Choice& choice) {
  const Opening& by = choice.opening;
  const std::vector<GridBox> moved = opened(obstacles, by, cuts);
  for (const Grid clearance : clearances) {
    const Found found = find_free(moved, choice.name, drawing.width + by.left + by.right,
                                  drawing.height + by.top + by.bottom, clearance);
    if (found.is_found) return found.at;
  }
  return choice.at;
}

void shift_box(GridBox& box, GridPoint by) { box = {box.x0 + by.x, box.y0 + by.y, box.x1 + by.x, box.y1 + by.y}; }

void apply(PartDrawing& drawing, const Opening& by, const Cuts& cuts) {
  const auto shift_of = [&](GridPoint p) {
    const GridPoint to = opened(p, by, cuts);
    return GridPoint{to.x - p.x, to.y - p.y};
  };
  for (PlacedTerminal& terminal : drawing.terminals) {
    terminal.lead = opened(terminal.lead, by, cuts);
    for (GridPoint& tap : terminal.taps) tap = opened(tap, by, cuts);
    if (terminal.side != Side::right) continue;
    terminal.lead.x += by.right;
    for (GridPoint& tap : terminal.taps) tap.x += by.right;
  }
  for (PlacedSymbol& symbol : drawing.symbols) symbol = moved(symbol, shift_of(symbol.at));
  for (SwitchTable& table : drawing.tables) {
    const GridPoint shift = shift_of({(table.box.x0 + table.box.x1) / 2, (table.box.y0 + table.box.y1) / 2});
    shift_box(table.box, shift);
    for (Grid& c : table.columns) c += table.is_across ? shift.y : shift.x;
    table.reach_start += table.is_across ? shift.x : shift.y;
    table.reach_end += table.is_across ? shift.x : shift.y;
    for (SwitchTable::Row& row : table.rows) row.y += table.is_across ? shift.x : shift.y;
  }
  const Grid width = drawing.width;
  for (InnerLine& line : drawing.lines)
    for (GridPoint& p : line.points) {
      const bool is_at_edge = p.x == width && line.style == InnerStyle::wire;
      p = opened(p, by, cuts);
      if (is_at_edge) p.x += by.right;
    }
  for (GridPoint& dot : drawing.dots) dot = opened(dot, by, cuts);
  for (InnerText& text : drawing.texts) {
    const bool is_right = text.role == TextRole::terminal && text.box.x1 == width - 130;
    shift_box(text.box, shift_of({(text.box.x0 + text.box.x1) / 2, (text.box.y0 + text.box.y1) / 2}));
    if (is_right) shift_box(text.box, {by.right, 0});
  }
  drawing.width += by.left + by.right;
  drawing.height += by.top + by.bottom;
}

}  // namespace

void put_part_name(const Plan& plan, PartDrawing& drawing) {
  const std::vector<GridBox> obstacles = obstacles_of(drawing);
  const Cuts cuts{cut_below_top(drawing), cut_above_bottom(drawing)};
  Choice best;
  for (const NameBlock& name : name_blocks(plan)) {
    const Grid tall = up_to_module(name.height + 2 * clear), wide = up_to_module(name.width + 2 * clear + module);
    for (Grid across = 0; across <= wide; across += module)
      for (Grid along = 0; along <= tall + module; along += module) {
        consider(drawing, obstacles, cuts, name, {0, across, along, 0}, best);
        if (along > 0) consider(drawing, obstacles, cuts, name, {0, across, 0, along}, best);
        if (across > 0) consider(drawing, obstacles, cuts, name, {across, 0, along, 0}, best);
        if (across > 0 && across % (2 * module) == 0)
          consider(drawing, obstacles, cuts, name, {across / 2, across / 2, along, 0}, best);
      }
  }
  if (!best.is_found) return;
  best.at = airiest(drawing, obstacles, cuts, best);
  apply(drawing, best.opening, cuts);
  Grid y = best.at.y;
  // Lines are set left where the name stands at the left of its box, else centred.
  const bool is_centred = std::abs(2 * best.at.x + best.name.width - drawing.width) < module;
  for (const NameLine& line : best.name.lines) {
    const Grid x = best.at.x + (is_centred ? (best.name.width - line.size.x) / 2 : 0);
    drawing.texts.push_back({line.role, line.text, line.style, {x, y, x + line.size.x, y + line.size.y}, {}});
    y += line.size.y;
  }
}

}  // namespace loomfolio::inside
