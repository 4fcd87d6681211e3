// SPDX-License-Identifier: MIT
#include "sheets/wire_cells.h"

#include "sheets/names.h"
#include "sheets/wire_look.h"

namespace loomfolio {
namespace {

void add_second_line(Cell& cell, const std::string& second) {
  if (!second.empty()) cell.lines.push_back({{{second, look::table_small, look::grey, {}}}, Align::left, {}});
}

}  // namespace

Cell wire_number_cell(const SheetContext& context, WireId id) {
  const Wire& wire = context.build().wire(id);
  return {{{{{wire.id, look::table_mono_bold, look::ink, {}}}, Align::left, {}}}};
}

Cell wire_colour_cell(const Wire& wire, const std::string& second) {
  Cell cell = text_cell(wire.colour.text(), look::table_mono);
  cell.picture = wire_swatch(wire.colour, wire.area, look::swatch_length);
  add_second_line(cell, second);
  return cell;
}

Cell terminal_cell(const SheetContext& context, TerminalId terminal, const std::string& second) {
  Paragraph line{
      {{owner_name(context.build(), terminal, context.words()), look::table, look::ink, {}}}, Align::left, {}};
  const std::string mark = terminal_mark(context.build(), terminal);
  if (!mark.empty()) line.spans.push_back({"\u00a0" + mark, look::table_bold, look::ink, {}});
  Cell cell{{line}};
  add_second_line(cell, second);
  return cell;
}

TerminalId other_end(const Wire& wire, TerminalId here) { return wire.from == here ? wire.to : wire.from; }

}  // namespace loomfolio
