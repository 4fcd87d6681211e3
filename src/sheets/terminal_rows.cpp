// SPDX-License-Identifier: MIT
#include "sheets/terminal_rows.h"

#include "base/text.h"
#include "sheets/cavity_place.h"
#include "sheets/hook_ups.h"
#include "sheets/names.h"
#include "sheets/print_text.h"
#include "sheets/wire_cells.h"

namespace loomfolio {
namespace {

const std::vector<WireId>& wires_of(const TerminalWires& wires, const Part& part, std::size_t terminal) {
  return wires.by_terminal[part.terminals[terminal].at()];
}

Row wire_end_row(const SheetContext& context, TerminalId terminal, WireId id, Cell mark) {
  const Wire& wire = context.build().wire(id);
  Row row{{std::move(mark), wire_number_cell(context, id), wire_colour_cell(wire, {}), text_cell(print_wire_size(wire)),
           terminal_cell(context, other_end(wire, terminal), wire.purpose)}};
  row.is_marked = context.extent == Extent::own && differs(context, id);
  return row;
}

/// A sealed cavity without a wire leaks unless it is plugged. A part that the machine has may have wires there that these
/// pages do not know.
Row open_row(const SheetContext& context, const Part& part, const KindTerminal& terminal, Cell mark) {
  std::string key = terminal.form == TerminalForm::sealed ? "terminals.plug" : "terminals.no_wire";
  if (terminal.form == TerminalForm::body)
    key += "_body";
  else if (terminal.form == TerminalForm::sealed && part.plugs == PlugSource::fitted)
    key += "_fitted";
  else if (part.provided == Provider::machine)
    key += "_machine";
  Cell note{{{{{context.words()(key), look::table, look::grey, {}}}, Align::left, {}}}};
  return {{std::move(mark), text_cell(""), text_cell(""), text_cell(""), std::move(note)}};
}

/// The terminal's mark, where a connector has it, and its name below.
Cell mark_cell(const SheetContext& context, const Kind& kind, std::size_t t, NameTerminals names) {
  const KindTerminal& terminal = kind.terminals[t];
  Cell mark = two_line_cell(terminal.id, names == NameTerminals::yes ? terminal.name : "", look::table_bold);
  const std::string place = cavity_place_text(kind, t, context.words());
  if (!place.empty()) mark.lines.front().spans.push_back({"  " + place, look::table_small, look::ink, {}});
  return mark;
}

}  // namespace

std::vector<Column> terminal_columns(const Words& words) {
  return {{words("terminals.terminal"), CellAlign::near, Wrapping::wraps, 1},
          {words("terminals.wire"), CellAlign::near, Wrapping::keeps, 0},
          {words("terminals.colour"), CellAlign::near, Wrapping::keeps, 0},
          {words("terminals.size"), CellAlign::near, Wrapping::keeps, 0},
          {words("terminals.goes_to"), CellAlign::near, Wrapping::wraps, 1.2}};
}

std::vector<Row> terminal_rows(const SheetContext& context, const TerminalWires& wires, const Part& part,
                               NameTerminals names) {
  const Kind& kind = context.build().kind_of(part);
  std::vector<Row> rows;
  for (std::size_t t = 0; t < part.terminals.size(); ++t) {
    const KindTerminal& terminal = kind.terminals[t];
    const Cell mark = mark_cell(context, kind, t, names);
    const std::vector<WireId>& ends = wires_of(wires, part, t);
    if (ends.empty()) rows.push_back(open_row(context, part, terminal, mark));
    for (std::size_t i = 0; i < ends.size(); ++i) {
      Cell shown = i == 0 ? mark : text_cell(terminal.id, look::table_bold);
      rows.push_back(wire_end_row(context, part.terminals[t], ends[i], std::move(shown)));
    }
  }
  return rows;
}

std::vector<FaceLabel> face_labels(const SheetContext& context, const TerminalWires& wires, const Part& part, int face,
                                   LabelCodes codes) {
  const Kind& kind = context.build().kind_of(part);
  std::vector<FaceLabel> labels;
  for (std::size_t t = 0; t < kind.terminals.size(); ++t) {
    if (kind.terminals[t].face != face) continue;
    std::vector<std::string> lines;
    if (codes == LabelCodes::with_colours)
      for (const WireId id : wires_of(wires, part, t))
        lines.push_back(context.build().wire(id).id + " " + context.build().wire(id).colour.text());
    labels.push_back({kind.terminals[t].at, kind.terminals[t].id, std::move(lines)});
  }
  return labels;
}

}  // namespace loomfolio
