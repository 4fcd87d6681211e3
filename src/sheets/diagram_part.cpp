// SPDX-License-Identifier: MIT
#include "sheets/diagram_part.h"

#include <algorithm>
#include <utility>

#include "sheets/inner_links.h"
#include "sheets/inner_ways.h"

namespace loomfolio {
namespace {

constexpr Millimetres ring_radius{1.0}, dot_radius{0.55}, hop_radius{1.0};
constexpr Millimetres hop_gap{0.25};  ///< of paper, beside what a hop goes over

struct PartInk {
  Items& items;
  const PartDrawing& drawing;
  Point at;
  const TextMeasure& measure;
  const PartState& state;
  std::vector<SymbolState> standing = {};  ///< by PartDrawing::symbols

  Point place(GridPoint p) const { return at + to_mm(p); }

  /// What joins live lines is as bold as they are, so that a way looks whole.
  SymbolInk ink_of(const PlacedSymbol& symbol, const SymbolState& stands) const {
    SymbolInk made{look::ink, look::part_line, look::paper};
    const bool is_way = symbol.symbol == Symbol::contact_pair || has_blade(symbol.symbol);
    if (!state.is_known || !is_way || symbol.nodes.empty()) return made;
    const bool joins_all = symbol.symbol == Symbol::contact_pair || stands.is_on || stands.way >= 0;
    const auto live = std::count_if(symbol.nodes.begin(), symbol.nodes.end(), [&](int node) { return state.is_live(node); });
    if (joins_all && live >= 2) made.width = look::live_line;
    const bool is_dead = std::none_of(symbol.nodes.begin(), symbol.nodes.end(),
                                      [&](int node) { return state.is_live(node) || state.is_held(node); });
    if (is_dead && symbol.symbol == Symbol::contact_pair) made.line = look::dead_wire;
    return made;
  }
};

/// How the symbol stands: a contact or selector by what it joins, any other by its element.
SymbolState state_of(const PartState& state, const PlacedSymbol& symbol) {
  if (!state.is_known || symbol.inside < 0) return {};
  SymbolState found = state.insides[static_cast<std::size_t>(symbol.inside)];
  const bool is_contact = symbol.symbol == Symbol::make_contact || symbol.symbol == Symbol::break_contact;
  if (is_contact && symbol.nodes.size() >= 2) found.is_on = joins(state, symbol, symbol.nodes[0], symbol.nodes[1]);
  if (symbol.symbol == Symbol::selector)
    for (std::size_t pin = 1; pin < symbol.nodes.size() && found.way < 0; ++pin)
      if (joins(state, symbol, symbol.nodes[0], symbol.nodes[pin])) found.way = static_cast<int>(pin);
  return found;
}

/// The paper around a hop: what it goes over does not touch it.
void clear_under_hops(const PartInk& ink, const InnerLine& line, const Pen& pen) {
  for (const GridPoint& hop : line.hops) {
    PathItem item;
    item.pieces.push_back(PathArc{ink.place(hop), hop_radius, 200, 340});
    item.stroke = {true, {look::paper, pen.width + hop_gap * 2, {}, Cap::butt}};
    ink.items.push_back(std::move(item));
  }
}

/// A polyline that hops, from left to right or right to left, over what it crosses.
std::vector<PathPiece> path_with_hops(const PartInk& ink, const InnerLine& line) {
  std::vector<PathPiece> path{PathMove{ink.place(line.points.front())}};
  for (std::size_t i = 1; i < line.points.size(); ++i) {
    const GridPoint from = line.points[i - 1], to = line.points[i];
    std::vector<GridPoint> hops;
    for (const GridPoint& hop : line.hops)
      if (from.y == to.y && hop.y == from.y && hop.x > std::min(from.x, to.x) && hop.x < std::max(from.x, to.x))
        hops.push_back(hop);
    if (from.x > to.x) std::reverse(hops.begin(), hops.end());
    for (const GridPoint& hop : hops) {
      const Point centre = ink.place(hop);
      if (from.x < to.x) {
        path.push_back(PathLine{{centre.x - hop_radius, centre.y}});
        path.push_back(PathArc{centre, hop_radius, 180, 360});
      } else {
        path.push_back(PathLine{{centre.x + hop_radius, centre.y}});
        path.push_back(PathCurve{{centre.x + hop_radius, centre.y - hop_radius * 1.33},
                                 {centre.x - hop_radius, centre.y - hop_radius * 1.33},
                                 {centre.x - hop_radius, centre.y}});
      }
    }
    path.push_back(PathLine{ink.place(to)});
  }
  return path;
}

void draw_line(const PartInk& ink, const InnerRun& run) {
  const bool is_link = run.line.style == InnerStyle::link;
  const InnerLine line = is_link ? end_on_blades(run.line, ink.drawing, ink.standing) : run.line;
  // What holds volts is drawn in ink, as outside; what has none, light.
  const bool is_inked = !ink.state.is_known || run.is_live || ink.state.is_held(line.node) || line.style != InnerStyle::wire;
  PathItem item;
  item.pieces = path_with_hops(ink, line);
  item.stroke = {true, is_link ? Pen{look::ink, look::line, {Millimetres(0.9), Millimetres(0.6)}, Cap::butt}
                               : Pen{is_inked ? look::ink : look::dead_wire, run.is_live ? look::live_line : look::part_line, {}, Cap::round}};
  clear_under_hops(ink, line, item.stroke.pen);
  ink.items.push_back(std::move(item));
}

/// What hops lies above what it hops over, what carries current above what branches off it.
void draw_lines(const PartInk& ink) {
  const std::vector<InnerRun> runs = runs_of_lines(ink.drawing, ink.state);
  for (const bool hops : {false, true})
    for (const bool is_live : {false, true})
      for (const InnerRun& run : runs)
        if (run.line.hops.empty() != hops && run.is_live == is_live) draw_line(ink, run);
  for (const GridPoint& dot : ink.drawing.dots)
    add_circle(ink.items, ink.place(dot), dot_radius, {false, {}}, {true, look::ink});
}

/// Rings are filled in the row in which the switch stands; the other rows step back.
bool is_in_force(const PartInk& ink, const SwitchTable& table, const SwitchTable::Row& row) {
  return !ink.state.is_known || ink.state.positions[static_cast<std::size_t>(table.inside)] == row.position;
}

/// Where a node's line runs within the table: from the edge its wire comes from to the last position that joins it.
struct NodeLine {
  Grid from = 0, to = 0;  ///< along the node's column; equal where no position joins it
};

constexpr Grid track_step = 150, bar_hop = 80;

/// The track of each group of a row: groups that reach into one another lie on tracks of their own, since on one line
/// all their rings would look joined.
std::vector<int> tracks_of(const SwitchTable& table, const SwitchTable::Row& row) {
  std::vector<int> tracks;
  std::vector<std::vector<std::pair<Grid, Grid>>> taken;
  for (const auto& group : row.joined) {
    Grid low = table.columns[static_cast<std::size_t>(group[0])], high = low;
    for (const int c : group) {
      low = std::min(low, table.columns[static_cast<std::size_t>(c)]);
      high = std::max(high, table.columns[static_cast<std::size_t>(c)]);
    }
    std::size_t track = 0;
    const auto is_free = [&](std::size_t t) {
      return std::none_of(taken[t].begin(), taken[t].end(),
                          [&](const auto& span) { return low <= span.second && high >= span.first; });
    };
    while (track < taken.size() && !is_free(track)) ++track;
    if (track == taken.size()) taken.emplace_back();
    taken[track].emplace_back(low, high);
    tracks.push_back(static_cast<int>(track));
  }
  return tracks;
}

/// How the tracks of a row lie about its middle.
Grid track_at(const SwitchTable::Row& row, const std::vector<int>& tracks, std::size_t group) {
  const int last = *std::max_element(tracks.begin(), tracks.end());
  return row.y + tracks[group] * track_step - last * track_step / 2;
}

NodeLine line_of(const SwitchTable& table, std::size_t column) {
  const bool from_start = table.from_start[column];
  NodeLine line;
  line.from = line.to = from_start ? table.reach_start : table.reach_end;
  for (const SwitchTable::Row& row : table.rows) {
    const std::vector<int> tracks = tracks_of(table, row);
    for (std::size_t g = 0; g < row.joined.size(); ++g) {
      if (std::find(row.joined[g].begin(), row.joined[g].end(), static_cast<int>(column)) == row.joined[g].end())
        continue;
      const Grid y = track_at(row, tracks, g);
      line.to = from_start ? std::max(line.to, y) : std::min(line.to, y);
    }
  }
  return line;
}

/// A bar over the joined nodes, with an arc over each line of another node that it crosses.
void draw_bar(const PartInk& ink, const SwitchTable& table, Grid y, const std::vector<int>& group, const Pen& pen) {
  const auto spot = [&](Grid column, Grid row) {
    return ink.place(table.is_across ? GridPoint{row, column} : GridPoint{column, row});
  };
  std::vector<Grid> ends;
  for (const int c : group) ends.push_back(table.columns[static_cast<std::size_t>(c)]);
  const auto [low, high] = std::minmax_element(ends.begin(), ends.end());
  std::vector<Grid> crossed;
  for (std::size_t c = 0; c < table.columns.size(); ++c) {
    const NodeLine line = line_of(table, c);
    const bool is_passed = table.columns[c] > *low && table.columns[c] < *high && y >= std::min(line.from, line.to) &&
                           y <= std::max(line.from, line.to);
    if (is_passed && std::find(ends.begin(), ends.end(), table.columns[c]) == ends.end())
      crossed.push_back(table.columns[c]);
  }
  std::sort(crossed.begin(), crossed.end());
  PathItem bar;
  bar.pieces.push_back(PathMove{spot(*low, y)});
  for (const Grid at : crossed) {
    bar.pieces.push_back(PathLine{spot(at - bar_hop, y)});
    bar.pieces.push_back(PathCurve{spot(at - bar_hop, y - bar_hop * 4 / 3), spot(at + bar_hop, y - bar_hop * 4 / 3),
                                   spot(at + bar_hop, y)});
  }
  bar.pieces.push_back(PathLine{spot(*high, y)});
  bar.stroke = {true, pen};
  ink.items.push_back(std::move(bar));
}

/// Bars with rings; filled in the row in which the switch stands.
void draw_table_row(const PartInk& ink, const SwitchTable& table, const SwitchTable::Row& row) {
  const Colour colour = is_in_force(ink, table, row) ? look::ink : look::dead_wire;
  const bool is_filled = ink.state.is_known && is_in_force(ink, table, row);
  const std::vector<int> tracks = tracks_of(table, row);
  for (std::size_t g = 0; g < row.joined.size(); ++g) {
    const Grid y = track_at(row, tracks, g);
    draw_bar(ink, table, y, row.joined[g], {colour, look::heavy_line, {}, Cap::round});
    for (const int c : row.joined[g]) {
      const Grid column = table.columns[static_cast<std::size_t>(c)];
      add_circle(ink.items, ink.place(table.is_across ? GridPoint{y, column} : GridPoint{column, y}), Millimetres(0.75),
                 {true, {colour, look::part_line}}, {true, is_filled ? look::ink : look::paper});
    }
  }
}

void draw_table(const PartInk& ink, const SwitchTable& table) {
  const auto spot = [&](Grid column, Grid row) {
    return ink.place(table.is_across ? GridPoint{row, column} : GridPoint{column, row});
  };
  const Pen hairline{look::hairline_grey, look::thin_line, {}, Cap::butt};
  const Pen lead{look::ink, look::part_line, {}, Cap::round};
  if (table.rows.empty() || table.columns.empty()) return;
  const auto [least, most] = std::minmax_element(table.columns.begin(), table.columns.end());
  for (const SwitchTable::Row& row : table.rows)
    add_line(ink.items, spot(*least - 120, row.y), spot(*most + 120, row.y), hairline);
  for (std::size_t c = 0; c < table.columns.size(); ++c) {
    const NodeLine line = line_of(table, c);
    add_line(ink.items, spot(table.columns[c], line.from), spot(table.columns[c], line.to), lead);
  }
  for (const SwitchTable::Row& row : table.rows) draw_table_row(ink, table, row);
}

void draw_terminal(const PartInk& ink, const PlacedTerminal& terminal) {
  const Pen pen{look::ink, look::part_line, {}, Cap::round};
  const auto [least, most] = std::minmax_element(terminal.taps.begin(), terminal.taps.end());
  const Point first = ink.place(*least), last = ink.place(*most);
  if (terminal.taps.size() == 1) {
    add_circle(ink.items, first, ring_radius, {true, pen}, {true, look::paper});
    return;
  }
  // Several wires on one terminal: a ring drawn long.
  const Rect rect{first.x - ring_radius, first.y - ring_radius, last.x - first.x + ring_radius * 2,
                  last.y - first.y + ring_radius * 2};
  add_boxed_rect(ink.items, rect, look::paper, pen, ring_radius);
}

/// Whether the text's terminal lies at its right.
bool ends_at_terminal(const PartDrawing& drawing, const InnerText& text) {
  const Grid middle = (text.box.x0 + text.box.x1) / 2, y = (text.box.y0 + text.box.y1) / 2;
  const GridPoint* nearest = nullptr;
  const auto away = [&](const GridPoint& tap) { return std::abs(tap.x - middle) + std::abs(tap.y - y); };
  for (const PlacedTerminal& terminal : drawing.terminals)
    for (const GridPoint& tap : terminal.taps)
      if (nearest == nullptr || away(tap) < away(*nearest)) nearest = &tap;
  return nearest != nullptr && nearest->x > middle;
}

/// A terminal's mark and behind it its figure, which may be shorter than the room kept for it; together they stand at their terminal.
void draw_terminal_text(const PartInk& ink, const InnerText& text) {
  const std::size_t gap = text.text.find(figure_gap);
  const std::string id = text.text.substr(0, gap);
  const bool is_minus = id == "\u2212";
  std::string figure;
  if (gap != std::string::npos)
    for (std::size_t t = 0; t < ink.state.figures.size(); ++t)
      if (ink.state.marks[t] == id) figure = ink.state.figures[t];
  Point left = ink.place(text.baseline);
  const Point right = ink.place({text.box.x1, text.baseline.y});
  const Millimetres between(is_minus ? 1.6 : 1.3);  // a pole is no sign of the volts behind it
  if (gap != std::string::npos && ends_at_terminal(ink.drawing, text)) {
    const Millimetres figure_width = figure.empty() ? Millimetres(0) : ink.measure.measure(figure, look::volts).width + between;
    add_text(ink.items, {right.x - figure_width, right.y}, id, text.style, look::ink, Align::right);
    if (!figure.empty()) add_text(ink.items, right, figure, look::volts, look::accent, Align::right);
    return;
  }
  if (is_minus) left.x += Millimetres(0.5);  // its bar would run into the lead
  add_text(ink.items, left, id, text.style);
  if (!figure.empty())
    add_text(ink.items, {left.x + ink.measure.measure(id, text.style).width + between, left.y}, figure, look::volts, look::accent);
}

/// The word at a contact names the position that closes it; in a situation, the one in which the switch stands.
std::string position_word(const PartInk& ink, const InnerText& text) {
  if (!ink.state.is_known || text.role != TextRole::position) return text.text;
  const PlacedSymbol* nearest = nullptr;
  Grid least = 0;
  for (const PlacedSymbol& symbol : ink.drawing.symbols) {
    const bool is_contact = symbol.symbol == Symbol::make_contact || symbol.symbol == Symbol::break_contact;
    if (!is_contact || symbol.inside < 0) continue;
    const auto& names = ink.state.position_names[static_cast<std::size_t>(symbol.inside)];
    const bool names_it = std::any_of(names.begin(), names.end(), [&](const std::string& name) {
      return ("," + text.text + ",").find(name) != std::string::npos;
    });
    const Grid away = std::abs(symbol.at.x - (text.box.x0 + text.box.x1) / 2) +
                      std::abs(symbol.at.y - (text.box.y0 + text.box.y1) / 2);
    if (!names_it || (nearest != nullptr && away >= least)) continue;
    nearest = &symbol;
    least = away;
  }
  const bool is_in_table =
      std::any_of(ink.drawing.tables.begin(), ink.drawing.tables.end(),
                  [&](const SwitchTable& table) { return table.box.grown(1500).overlaps(text.box); });
  if (nearest == nullptr || is_in_table) return text.text;
  const auto inside = static_cast<std::size_t>(nearest->inside);
  const int position = ink.state.positions[inside];
  if (position < 0) return text.text;
  // A longer word would run into what stands beside it: then none is better than one that is not so.
  const std::string& word = ink.state.position_names[inside][static_cast<std::size_t>(position)];
  if (text.text.find(word) != std::string::npos) return word;  // of several that close it, the one that is set
  return word.size() <= text.text.size() + 1 ? word : std::string();
}

/// Beside a table the position in which the switch stands is bold; at rest that is the rest position.
TextStyle position_style(const PartInk& ink, const InnerText& text) {
  TextStyle style = text.style;
  if (!ink.state.is_known || text.role != TextRole::position) return style;
  const Grid middle = (text.box.y0 + text.box.y1) / 2;
  for (const SwitchTable& table : ink.drawing.tables)
    for (const SwitchTable::Row& row : table.rows)
      if (!table.is_across && std::abs(row.y - middle) < 20 && table.box.grown(1500).overlaps(text.box))
        style.weight = is_in_force(ink, table, row) ? Weight::bold : Weight::regular;
  return style;
}

/// Whether a text stands where the rays of the symbol, a lit lamp, would reach to its sides.
bool has_text_aside(const PartDrawing& drawing, const PlacedSymbol& symbol) {
  constexpr Grid reach = 600, half = 260;
  const bool is_level = symbol.heading == Heading::right || symbol.heading == Heading::left;
  const GridBox rays = is_level
                           ? GridBox{symbol.at.x - half, symbol.at.y - reach, symbol.at.x + half, symbol.at.y + reach}
                           : GridBox{symbol.at.x - reach, symbol.at.y - half, symbol.at.x + reach, symbol.at.y + half};
  return std::any_of(drawing.texts.begin(), drawing.texts.end(),
                     [&](const InnerText& text) { return text.box.overlaps(rays); });
}

}  // namespace

InsideStyles inside_styles() { return {look::part_name, look::part_value, look::terminal_name, look::small}; }

void draw_part(Items& items, const PartDrawing& drawing, Point at, const TextMeasure& measure, const PartState& state) {
  PartInk ink{items, drawing, at, measure, state};
  for (const PlacedSymbol& symbol : drawing.symbols) ink.standing.push_back(state_of(state, symbol));
  add_boxed_rect(items, {at.x, at.y, to_mm(drawing.width), to_mm(drawing.height)}, look::paper,
                 {look::ink, look::part_line});
  draw_lines(ink);
  for (std::size_t s = 0; s < drawing.symbols.size(); ++s) {
    const PlacedSymbol& symbol = drawing.symbols[s];
    SymbolState stands = ink.standing[s];
    stands.shows_rays_aside = !has_text_aside(drawing, symbol);
    draw_symbol(items, symbol, at, ink.ink_of(symbol, stands), stands);
  }
  for (const SwitchTable& table : drawing.tables) draw_table(ink, table);
  for (const PlacedTerminal& terminal : drawing.terminals) draw_terminal(ink, terminal);
  for (const InnerText& text : drawing.texts)
    if (text.role == TextRole::terminal)
      draw_terminal_text(ink, text);
    else
      add_text(items, ink.place(text.baseline), position_word(ink, text), position_style(ink, text));
}

}  // namespace loomfolio
