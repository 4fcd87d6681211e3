// SPDX-License-Identifier: MIT
// Tables: hairline rows, no vertical rules, every fifth row a touch darker, the head again on each page, no row cut in
// two.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "sheets/draw.h"
#include "sheets/page_flow.h"
#include "sheets/text_flow.h"

namespace loomfolio {

enum class CellAlign : std::uint8_t {
  near,  ///< at the side from which the language reads
  far,   ///< at the other side: whole numbers
  centre,
  point,  ///< decimal points under each other
};

/// Whether a column may break its texts into lines.
enum class Wrapping : std::uint8_t { keeps, wraps };

struct Column {
  std::string head;
  CellAlign align = CellAlign::near;
  Wrapping wrapping = Wrapping::keeps;
  double stretch = 0;  ///< share of the width that is left over
};

/// Lines of text, each wrapped on its own, beside an optional picture on the first line's near side.
struct Cell {
  std::vector<Paragraph> lines;
  std::optional<Block> picture = std::nullopt;
  bool runs_on = false;  ///< takes the room of the empty cells after it
};

struct Row {
  std::vector<Cell> cells;  ///< by column; a group's head has one
  bool is_group = false;    ///< a head that spans all columns and stays with the row after it
  std::string anchor = {};  ///< links may lead to this row
  bool is_marked = false;   ///< a bar at its near edge: of several hook-ups, not all have it
};

struct Table {
  std::vector<Column> columns;
  std::vector<Row> rows;
};

Cell text_cell(std::string text, const TextStyle& style = look::table);
/// Each on a line of its own.
Cell lines_cell(const std::vector<std::string>& lines);
/// A main line, and a smaller grey one under it when `second` is not empty.
Cell two_line_cell(std::string first, std::string second, const TextStyle& style = look::table);
Row group_row(std::string text);

/// How many columns a row's cell takes: more than one where it runs on.
std::size_t columns_taken(const Row& row, std::size_t column);

/// The widest part before and after the decimal point in a column.
struct PointPlace {
  Millimetres before, after;
};
PointPlace find_point(const Table& table, std::size_t column, const TextMeasure& measure);

/// The span of a cell that stands on the point: of one line, one span, beginning with a digit or minus; else nothing.
const Span* pointed_span(const Cell& cell);

/// How far the picture stands from the cell's top: centred on the first line where it is lower than that.
Millimetres picture_top(const Cell& cell);
/// What a line whose top is that far down must leave to the picture beside it.
Millimetres picture_indent(const Cell& cell, Millimetres line_top);

/// Where the decimal point is in a number; its length when there is none.
std::size_t point_in(const std::string& number);

/// Without the columns in which no row has anything, save the first: a head over nothing only takes room.
Table without_empty_columns(Table table);

/// Widths that fit texts where there is room: each column its natural width, what is left shared by `stretch`; where
/// there is not, wrapping columns give way in proportion to what they can give.
std::vector<Millimetres> fit_columns(const Table& table, Millimetres width, const TextMeasure& measure);

/// Sets the table into the flow, over as many pages as it needs.
void add_table(PageFlow& flow, const Table& table, Millimetres gap = look::block_gap);

/// The whole table as one block, for small ones that stand beside something.
Block table_block(const Table& table, Millimetres width, const TypeSetting& setting);

}  // namespace loomfolio
