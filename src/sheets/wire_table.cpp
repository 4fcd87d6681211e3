// SPDX-License-Identifier: MIT
// The wire table: every wire once, with all that is needed to cut, fit and check it.
#include "base/text.h"
#include "sheets/anchors.h"
#include "sheets/fitting_text.h"
#include "sheets/names.h"
#include "sheets/print_text.h"
#include "sheets/sheet_makers.h"
#include "sheets/table.h"
#include "sheets/wire_cells.h"

namespace loomfolio {
namespace {

std::vector<Column> wire_columns(const SheetContext& context) {
  const Words& words = context.words();
  const std::string unit = length_unit(context.build().document.units, words);
  return {{words("wires.number"), CellAlign::near, Wrapping::keeps, 0},
          {words("wires.colour"), CellAlign::near, Wrapping::wraps, 0.5},
          {words("wires.from"), CellAlign::near, Wrapping::wraps, 1},
          {words("wires.to"), CellAlign::near, Wrapping::wraps, 1},
          {words("wires.size"), CellAlign::near, Wrapping::wraps, 0},
          {words("wires.length", {{"unit", unit}}), CellAlign::point, Wrapping::keeps, 0},
          {words("wires.amperes"), CellAlign::point, Wrapping::keeps, 0},
          {words("wires.drop"), CellAlign::point, Wrapping::keeps, 0},
          {words("wires.fuse"), CellAlign::near, Wrapping::wraps, 0}};
}

Cell end_cell(const SheetContext& context, TerminalId terminal) {
  const Build& build = context.build();
  std::string fitting = fitting_text(build, terminal, context.words());
  const std::string strip = strip_text(build, terminal, context.words());
  if (!strip.empty()) fitting += ", " + strip;
  return terminal_cell(context, terminal, fitting);
}

/// The most it carries, and the number of the situation where it does; the numbers are told below the table.
Cell current_cell(const SheetContext& context, const WireFigures& figures) {
  if (!figures.most) return text_cell("");
  std::string where;
  if (figures.in_situation.is_set())
    where = context.words()("wires.in_situation", {{"number", std::to_string(figures.in_situation.index + 1)}});
  return two_line_cell(print_amperes(*figures.most), where);
}

Row wire_row(const SheetContext& context, WireId id) {
  const Build& build = context.build();
  const Wire& wire = build.wire(id);
  const BuildFigures& figures = context.solved.figures;
  const WireFigures own = id.at() < figures.wires.size() ? figures.wires[id.at()] : WireFigures{};
  Row row;
  row.anchor = wire_anchor(wire);
  row.cells = {wire_number_cell(context, id),
               wire_colour_cell(wire, wire.purpose),
               end_cell(context, wire.from),
               end_cell(context, wire.to),
               two_line_cell(print_wire_size(wire), print_insulation(wire.insulation, context.words())),
               text_cell(wire.length ? print_length(*wire.length, build.document.units) : ""),
               current_cell(context, own),
               text_cell(own.drop ? print_volts(*own.drop) : ""),
               text_cell(own.fuse ? fuse_name(build, *own.fuse) : "")};
  return row;
}

/// 'Situations: 1 key on, 2 ...', so that the numbers beside the amperes can be read.
void add_situation_numbers(PageFlow& flow) {
  const SheetContext& context = flow.context();
  if (context.solved.figures.wires.empty()) return;
  std::vector<std::string> names;
  const std::vector<Situation>& situations = context.build().situations;
  for (std::size_t i = 0; i < situations.size(); ++i)
    names.push_back(std::to_string(i + 1) + "\u00a0" + situation_name(situations[i]));
  flow.add_text(context.words()("wires.situations", {{"list", join(names, ", ")}}), look::table, look::block_gap);
}

}  // namespace

std::vector<Sheet> make_wire_table(const SheetContext& context) {
  const Build& build = context.build();
  if (build.wires.empty()) return {};
  const Words& words = context.words();
  PageFlow flow(context, {"wires", words("wires.title"), words("wires.intro")});
  Table table{wire_columns(context), {}};
  for (std::size_t i = 0; i < build.wires.size(); ++i)
    table.rows.push_back(wire_row(context, WireId{static_cast<std::int32_t>(i)}));
  add_table(flow, table);
  add_situation_numbers(flow);
  return flow.take();
}

}  // namespace loomfolio
