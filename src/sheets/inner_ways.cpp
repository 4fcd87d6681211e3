// SPDX-License-Identifier: MIT
// The lines of a node are a web of straight pieces. A loose end of it at a pin or a terminal that takes no current is taken away, with all
// that leads there alone, until none is left. What ends elsewhere (at the table of a switch) is taken to carry.
#include "sheets/inner_ways.h"

#include <algorithm>
#include <map>
#include <utility>

namespace loomfolio {
namespace {

/// Whether current passes the pin; where that is not known, yes.
bool carries(const PartState& state, const PlacedSymbol& symbol, std::size_t pin) {
  if (symbol.inside < 0 || pin >= symbol.nodes.size()) return true;
  if (has_blade(symbol.symbol)) {
    for (std::size_t other = 0; other < symbol.nodes.size(); ++other)
      if (other != pin && (pin == 0 || other == 0) && state.is_live(symbol.nodes[other]) &&
          joins(state, symbol, symbol.nodes[pin], symbol.nodes[other]))
        return true;
    return false;
  }
  if (symbol.nodes.size() != 2 || symbol.symbol == Symbol::contact_pair) return true;
  const auto passes = [&](int inside) { return state.passed[static_cast<std::size_t>(inside)]; };
  return passes(symbol.inside) || std::any_of(symbol.also.begin(), symbol.also.end(), passes);
}

struct Piece {
  GridPoint a, b;
  std::size_t line = 0;
  bool is_live = true;
};

bool lies_on(GridPoint p, GridPoint a, GridPoint b) {
  return p.x >= std::min(a.x, b.x) && p.x <= std::max(a.x, b.x) && p.y >= std::min(a.y, b.y) && p.y <= std::max(a.y, b.y) &&
         (a.x == b.x || a.y == b.y);
}

/// The node's lines, cut wherever one of them ends or bends.
std::vector<Piece> pieces_of(const PartDrawing& drawing, int node) {
  std::vector<GridPoint> cuts;
  const auto is_own = [node](const InnerLine& line) { return line.style == InnerStyle::wire && line.node == node; };
  for (const InnerLine& line : drawing.lines)
    if (is_own(line)) cuts.insert(cuts.end(), line.points.begin(), line.points.end());
  std::vector<Piece> pieces;
  for (std::size_t l = 0; l < drawing.lines.size(); ++l) {
    if (!is_own(drawing.lines[l])) continue;
    const auto& points = drawing.lines[l].points;
    for (std::size_t i = 1; i < points.size(); ++i) {
      const GridPoint from = points[i - 1], to = points[i];
      std::vector<GridPoint> along{from, to};
      std::copy_if(cuts.begin(), cuts.end(), std::back_inserter(along), [&](GridPoint p) { return lies_on(p, from, to); });
      std::sort(along.begin(), along.end());
      along.erase(std::unique(along.begin(), along.end()), along.end());
      if (to < from) std::reverse(along.begin(), along.end());
      for (std::size_t k = 1; k < along.size(); ++k) pieces.push_back({along[k - 1], along[k], l});
    }
  }
  return pieces;
}

/// Ends that take no current, and no other that does stands at the same place.
std::vector<GridPoint> idle_ends(const PartDrawing& drawing, const PartState& state, int node) {
  std::vector<GridPoint> idle, busy;
  for (const PlacedSymbol& symbol : drawing.symbols)
    for (std::size_t pin = 0; pin < symbol.pins.size(); ++pin)
      if (pin < symbol.nodes.size() && symbol.nodes[pin] == node)
        (carries(state, symbol, pin) ? busy : idle).push_back(symbol.pins[pin]);
  for (const PlacedTerminal& terminal : drawing.terminals)
    if (terminal.terminal == node) (state.fed[static_cast<std::size_t>(node)] ? busy : idle).push_back(terminal.lead);
  std::erase_if(idle, [&](GridPoint p) { return std::find(busy.begin(), busy.end(), p) != busy.end(); });
  return idle;
}

void prune(std::vector<Piece>& pieces, std::vector<GridPoint> idle) {
  const auto count_at = [&](GridPoint p) {
    return std::count_if(pieces.begin(), pieces.end(), [&](const Piece& piece) { return piece.is_live && (piece.a == p || piece.b == p); });
  };
  for (std::size_t i = 0; i < idle.size(); ++i) {
    if (count_at(idle[i]) != 1) continue;
    for (Piece& piece : pieces) {
      if (!piece.is_live || (piece.a != idle[i] && piece.b != idle[i])) continue;
      piece.is_live = false;
      const GridPoint other = piece.a == idle[i] ? piece.b : piece.a;
      idle.push_back(other);  // a loose end now, unless more than one piece still meets there
    }
  }
}

std::vector<Piece> live_pieces(const PartDrawing& drawing, const PartState& state, int node) {
  std::vector<Piece> pieces = pieces_of(drawing, node);
  const std::vector<Piece> whole = pieces;
  prune(pieces, idle_ends(drawing, state, node));
  const bool is_any = std::any_of(pieces.begin(), pieces.end(), [](const Piece& piece) { return piece.is_live; });
  return is_any ? pieces : whole;  // current passes the node: then better all than nothing
}

/// The pieces of one line, put together again where they go on alike.
void add_runs(std::vector<InnerRun>& runs, const InnerLine& line, const std::vector<Piece>& pieces, std::size_t index) {
  const std::size_t first = runs.size();
  for (const Piece& piece : pieces) {
    if (piece.line != index) continue;
    if (runs.size() == first || runs.back().is_live != piece.is_live) {
      InnerRun run{line, piece.is_live};
      run.line.points = {piece.a};
      runs.push_back(std::move(run));
    }
    runs.back().line.points.push_back(piece.b);
  }
}

}  // namespace

bool joins(const PartState& state, const PlacedSymbol& symbol, int a, int b) {
  std::vector<NodeJoint> joints = state.links;
  const auto add = [&](int inside) {
    const auto& own = state.joints[static_cast<std::size_t>(inside)];
    joints.insert(joints.end(), own.begin(), own.end());
  };
  add(symbol.inside);
  for (int inside : symbol.also) add(inside);
  std::vector<int> reached{a};
  for (std::size_t r = 0; r < reached.size(); ++r)
    for (const NodeJoint& joint : joints)
      for (const auto& [from, to] : {std::pair(joint.a, joint.b), std::pair(joint.b, joint.a)})
        if (from == reached[r] && std::find(reached.begin(), reached.end(), to) == reached.end()) reached.push_back(to);
  return std::find(reached.begin(), reached.end(), b) != reached.end();
}

std::vector<InnerRun> runs_of_lines(const PartDrawing& drawing, const PartState& state) {
  std::vector<InnerRun> runs;
  std::map<int, std::vector<Piece>> pieces;  // by node
  for (std::size_t l = 0; l < drawing.lines.size(); ++l) {
    const InnerLine& line = drawing.lines[l];
    if (!state.is_known || line.style != InnerStyle::wire || !state.is_live(line.node)) {
      runs.push_back({line, false});
      continue;
    }
    const auto [at, is_new] = pieces.try_emplace(line.node);
    if (is_new) at->second = live_pieces(drawing, state, line.node);
    add_runs(runs, line, at->second, l);
  }
  return runs;
}

}  // namespace loomfolio
