// SPDX-License-Identifier: MIT
// How a part is drawn: the size of its box, where its terminals stand on the edge, and what is inside, as geometry in
// whole 0.01 mm from the box's top left. No ink here: sheets/ draws it.
#pragma once

#include <string>
#include <vector>

#include "base/geometry.h"
#include "base/text_measure.h"
#include "layout/inside_symbol.h"
#include "model/build.h"

namespace loomfolio {

/// The module of graphic symbols; terminals of one side stand at least two modules apart.
constexpr Grid module = 250;

struct InsideStyles {
  TextStyle name{FaceName::sans, Weight::bold, 10};
  TextStyle value{FaceName::sans, Weight::regular, 8};
  TextStyle terminal{FaceName::sans, Weight::bold, 7.5};
  TextStyle small{FaceName::sans, Weight::regular, 7.5};
};

/// How a connector lies: wires pass from left to right, or down through it.
enum class ConnectorLie : std::uint8_t { level, a_above, b_above };

/// Which part to draw, and how many wire ends each of its terminals has on the sheet.
struct InsideRequest {
  const Build& build;
  PartId part;
  const TextMeasure& measure;
  std::vector<int> ends;  ///< by Kind::terminals: wire ends to make room for; 0: open; -1: not shown. Empty: one each
  InsideStyles styles = {};
  ConnectorLie lie = ConnectorLie::level;  ///< of a connector
};

/// A terminal on the box's edge. Each wire end has a tap of its own; several taps are one terminal drawn long.
struct PlacedTerminal {
  int terminal = -1;  ///< index into Kind::terminals
  Side side = Side::top;
  std::vector<GridPoint> taps;  ///< at least one, even when open, 2 modules apart
  bool is_open = false;         ///< no wire ends here
  GridPoint lead;               ///< where the inner line starts, on the edge
};

struct PlacedSymbol {
  Symbol symbol = Symbol::load;
  int inside = -1;                  ///< index into Part::insides; -1: of the whole part
  std::vector<int> also;            ///< further insides that this symbol shows: the other contact of a changeover
  GridPoint at;                     ///< centre
  Heading heading = Heading::down;  ///< from its first pin to the others
  bool is_mirrored = false;         ///< across its heading
  std::vector<GridPoint> pins;      ///< ends of its leads, in the order that its symbol declares
  std::vector<int> nodes;           ///< by pin: node of the part (terminals first, then inner points)
  std::vector<GridPoint> hinges;    ///< selector: where each position stands, by `ways`
  int way = -1;                     ///< selector: the pin (from 1) on which it rests; -1: between
  Operator worked_by = Operator::none;
  bool is_sprung = false;
  std::string letters;  ///< written inside the symbol: M, G, 3~
};

enum class InnerStyle : std::uint8_t { wire, link, core };

/// A line inside the box: a wire, the dashed link of a coil and what it moves, the core of a pair of windings.
struct InnerLine {
  InnerStyle style = InnerStyle::wire;
  int node = -1;  ///< which node a wire is
  std::vector<GridPoint> points;
  std::vector<GridPoint> hops;  ///< where it passes over another wire; only on horizontal stretches
};

enum class TextRole : std::uint8_t { part_name, part_value, terminal, element, rating, position };

struct InnerText {
  TextRole role = TextRole::element;
  std::string text;
  TextStyle style;
  GridBox box;
  GridPoint baseline;  ///< left end of its baseline
};

/// The positions of a switch as a table: a column a node, a row a position, a bar with rings over the joined nodes.
struct SwitchTable {
  int inside = -1;
  GridBox box;
  std::vector<int> nodes;
  bool is_across = false;               ///< nodes run across the page: `columns` are y and rows' `y` is x
  std::vector<Grid> columns;            ///< x by node
  std::vector<bool> from_start;         ///< by node: its wire comes from above (from the left, when across)
  Grid reach_start = 0, reach_end = 0;  ///< y where the wires from above and from below end at the table
  struct Row {
    Grid y = 0;
    int position = -1;
    bool is_rest = false;
    std::vector<std::vector<int>> joined;  ///< indices into `nodes`
  };
  std::vector<Row> rows;
};

struct PartDrawing {
  Grid width = 0, height = 0;
  std::vector<PlacedTerminal> terminals;
  std::vector<PlacedSymbol> symbols;
  std::vector<SwitchTable> tables;
  std::vector<InnerLine> lines;
  std::vector<GridPoint> dots;
  std::vector<InnerText> texts;
  bool may_mirror = false;
};

/// Draws the part by what is inside it. Same request, same drawing. Never fails: a part with nothing inside is a box
/// with its name and terminals.
PartDrawing draw_inside(const InsideRequest& request);

/// The same drawing left to right; texts stay readable.
PartDrawing mirrored(const PartDrawing& drawing);

}  // namespace loomfolio
