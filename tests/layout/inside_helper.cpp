// SPDX-License-Identifier: MIT
#include "layout/inside_helper.h"

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <map>
#include <numeric>
#include <sstream>

#include "diag/diagnostic.h"
#include "read/read.h"

namespace loomfolio::test {
namespace {

class PlainFiles final : public Files {
 public:
  std::optional<std::string> read(const std::string& path, std::string&) const override {
    std::ifstream in(path, std::ios::binary);
    if (!in) return std::nullopt;
    std::stringstream text;
    text << in.rdbuf();
    return text.str();
  }
  std::vector<std::string> list(const std::string& folder) const override {
    std::vector<std::string> names;
    if (!std::filesystem::is_directory(folder)) return names;
    for (const auto& entry : std::filesystem::directory_iterator(folder))
      names.push_back(entry.path().filename().string());
    std::sort(names.begin(), names.end());
    return names;
  }
};

std::string call(const Part& part, const std::string& what) { return part.label + ": " + what; }

GridBox box_of_symbol(const PlacedSymbol& symbol) {
  const SymbolRoom room = room_of(symbol.symbol);
  const bool is_upright = symbol.heading == Heading::down || symbol.heading == Heading::up;
  // A selector's leads are lines of their own length; its blade swings between its pivot and its hinges.
  const Grid half = symbol.symbol == Symbol::selector ? 250 : room.length / 2, side = std::min(room.left, room.right);
  return is_upright ? GridBox{symbol.at.x - side, symbol.at.y - half, symbol.at.x + side, symbol.at.y + half}
                    : GridBox{symbol.at.x - half, symbol.at.y - side, symbol.at.x + half, symbol.at.y + side};
}

struct Stretch {
  int node = -1;
  GridPoint a, b;
};

std::vector<Stretch> stretches_of(const PartDrawing& drawing) {
  std::vector<Stretch> found;
  for (const InnerLine& line : drawing.lines)
    for (std::size_t i = 1; line.style == InnerStyle::wire && i < line.points.size(); ++i)
      found.push_back(
          {line.node, std::min(line.points[i - 1], line.points[i]), std::max(line.points[i - 1], line.points[i])});
  return found;
}

bool lies_on(const Stretch& s, GridPoint p) {
  return (s.a.x == s.b.x && p.x == s.a.x && p.y >= s.a.y && p.y <= s.b.y) ||
         (s.a.y == s.b.y && p.y == s.a.y && p.x >= s.a.x && p.x <= s.b.x);
}

bool touch(const Stretch& a, const Stretch& b) {
  return lies_on(a, b.a) || lies_on(a, b.b) || lies_on(b, a.a) || lies_on(b, a.b);
}

/// All points of one node that must hang together: terminals, pins of symbols and of tables.
std::map<int, std::vector<GridPoint>> points_by_node(const Kind& kind, const PartDrawing& drawing,
                                                     const std::vector<int>& node_of) {
  std::map<int, std::vector<GridPoint>> points;
  for (const PlacedTerminal& terminal : drawing.terminals)
    if (!kind.insides.empty()) points[node_of[static_cast<std::size_t>(terminal.terminal)]].push_back(terminal.lead);
  for (const PlacedSymbol& symbol : drawing.symbols)
    for (std::size_t i = 0; i < symbol.pins.size() && i < symbol.nodes.size(); ++i)
      if (symbol.nodes[i] >= 0) points[symbol.nodes[i]].push_back(symbol.pins[i]);
  for (const SwitchTable& table : drawing.tables)
    for (std::size_t c = 0; c < table.nodes.size(); ++c) {
      const Grid along = table.from_start[c] ? table.reach_start : table.reach_end;
      points[table.nodes[c]].push_back(table.is_across ? GridPoint{along, table.columns[c]}
                                                       : GridPoint{table.columns[c], along});
    }
  return points;
}

/// Nodes after plain links are joined, as the drawing counts them.
std::vector<int> joined_nodes(const Kind& kind, const Part& part) {
  const auto count = static_cast<int>(kind.terminals.size()) + kind.inner_points;
  std::vector<int> node(static_cast<std::size_t>(count));
  std::iota(node.begin(), node.end(), 0);
  for (const Inside& inside : part.insides) {
    const bool is_way = kind.is_connector && inside.nodes[0].terminal >= 0 && inside.nodes[1].terminal >= 0;
    if (is_way || inside.type != InsideType::link || symbol_of(kind, inside) == Symbol::spark_gap) continue;
    const auto raw = [&](std::size_t i) {
      return inside.nodes[i].terminal >= 0 ? inside.nodes[i].terminal
                                           : static_cast<int>(kind.terminals.size()) + inside.nodes[i].inner;
    };
    const int a = node[static_cast<std::size_t>(raw(0))], b = node[static_cast<std::size_t>(raw(1))];
    std::replace(node.begin(), node.end(), std::max(a, b), std::min(a, b));
  }
  return node;
}

void find_loose_ends(const Build& build, const Part& part, const PartDrawing& drawing,
                     std::vector<std::string>& faults) {
  const Kind& kind = build.kind_of(part);
  const std::vector<Stretch> all = stretches_of(drawing);
  for (const auto& [node, points] : points_by_node(kind, drawing, joined_nodes(kind, part))) {
    std::vector<Stretch> own;
    for (const Stretch& s : all)
      if (s.node == node) own.push_back(s);
    std::vector<std::size_t> group(own.size());
    std::iota(group.begin(), group.end(), 0U);
    for (std::size_t i = 0; i < own.size(); ++i)
      for (std::size_t j = 0; j < i; ++j)
        if (touch(own[i], own[j]))
          std::replace(group.begin(), group.end(), std::size_t{group[i]}, std::size_t{group[j]});
    std::vector<std::size_t> met;
    for (const GridPoint& p : points) {
      const auto on = std::find_if(own.begin(), own.end(), [&](const Stretch& s) { return lies_on(s, p); });
      if (on == own.end() && points.size() > 1)
        faults.push_back(call(part, "node " + std::to_string(node) + " has a loose end"));
      if (on != own.end()) met.push_back(group[static_cast<std::size_t>(on - own.begin())]);
    }
    if (std::any_of(met.begin(), met.end(), [&](std::size_t g) { return g != met[0]; }))
      faults.push_back(call(part, "node " + std::to_string(node) + " is drawn in pieces"));
  }
}

void find_text_faults(const Part& part, const PartDrawing& drawing, std::vector<std::string>& faults) {
  for (std::size_t i = 0; i < drawing.texts.size(); ++i) {
    const InnerText& text = drawing.texts[i];
    if (text.box.x0 < 0 || text.box.y0 < 0 || text.box.x1 > drawing.width || text.box.y1 > drawing.height)
      faults.push_back(call(part, "text '" + text.text + "' leaves its box"));
    for (std::size_t j = 0; j < i; ++j)
      if (text.box.overlaps(drawing.texts[j].box))
        faults.push_back(call(part, "'" + text.text + "' on '" + drawing.texts[j].text + "'"));
    for (const PlacedSymbol& symbol : drawing.symbols)
      if (text.box.overlaps(box_of_symbol(symbol))) faults.push_back(call(part, "'" + text.text + "' on a symbol"));
    for (const InnerLine& line : drawing.lines)
      for (std::size_t p = 1; p < line.points.size(); ++p) {
        const GridPoint a = line.points[p - 1], b = line.points[p];
        const GridBox thin{std::min(a.x, b.x) - 1, std::min(a.y, b.y) - 1, std::max(a.x, b.x) + 1,
                           std::max(a.y, b.y) + 1};
        if (text.box.overlaps(thin)) faults.push_back(call(part, "a line runs through '" + text.text + "'"));
      }
  }
}

void find_overlaps(const Part& part, const PartDrawing& drawing, std::vector<std::string>& faults) {
  for (std::size_t i = 0; i < drawing.symbols.size(); ++i)
    for (std::size_t j = 0; j < i; ++j)
      if (box_of_symbol(drawing.symbols[i]).overlaps(box_of_symbol(drawing.symbols[j])))
        faults.push_back(call(part, "symbols overlap"));
  const std::vector<Stretch> all = stretches_of(drawing);
  for (std::size_t i = 0; i < all.size(); ++i)
    for (std::size_t j = 0; j < i; ++j)
      if (all[i].node != all[j].node && touch(all[i], all[j])) faults.push_back(call(part, "two nodes share a line"));
}

void check_terminals(const Part& part, const PartDrawing& drawing, std::vector<std::string>& faults) {
  std::vector<GridPoint> taps;
  for (const PlacedTerminal& terminal : drawing.terminals)
    for (const GridPoint& tap : terminal.taps) {
      const bool on_edge =
          (terminal.side == Side::top && tap.y == 0) || (terminal.side == Side::bottom && tap.y == drawing.height) ||
          (terminal.side == Side::left && tap.x == 0) || (terminal.side == Side::right && tap.x == drawing.width);
      if (!on_edge) faults.push_back(call(part, "a terminal stands off its edge"));
      for (const GridPoint& other : taps)
        if (std::abs(other.x - tap.x) + std::abs(other.y - tap.y) < 2 * module)
          faults.push_back(call(part, "terminals crowd"));
      taps.push_back(tap);
      if (tap.x % module != 0 || tap.y % module != 0) faults.push_back(call(part, "a terminal stands off the module"));
    }
}

}  // namespace

KindBench all_kinds() {
  PlainFiles files;
  Sources sources;
  Diagnostics diagnostics;
  const Library library = read_library(std::string(LOOMFOLIO_SOURCE_FOLDER) + "/layouts", files, sources, diagnostics);
  std::string spec = "[document]\ntitle = 'Bench'\n[[zone]]\nid = 'bench'\nlabel = 'Bench'\nplace = '0 m'\n";
  for (std::size_t i = 0; i < library.kinds.size(); ++i) {
    const Kind& kind = library.kinds[i];
    spec += "[[part]]\nid = 'p" + std::to_string(i) + "'\nkind = '" + kind.id + "'\nzone = 'bench'\nlabel = '" +
            kind.name + "'\n";
  }
  Project project = read_spec("bench", spec, library, sources, diagnostics);
  if (project.builds.empty()) return {{}, print_diagnostics_short(diagnostics, sources)};
  return {std::move(project.builds.front()), {}};
}

std::vector<int> ends_for(const Kind& kind, int wires) {
  std::vector<int> ends;
  for (const KindTerminal& terminal : kind.terminals) ends.push_back(terminal.form == TerminalForm::body ? 0 : wires);
  return ends;
}

std::vector<std::string> faults_of(const Build& build, const Part& part, const PartDrawing& drawing) {
  std::vector<std::string> faults;
  find_loose_ends(build, part, drawing, faults);
  find_text_faults(part, drawing, faults);
  find_overlaps(part, drawing, faults);
  check_terminals(part, drawing, faults);
  return faults;
}

}  // namespace loomfolio::test
