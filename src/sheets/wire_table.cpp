// SPDX-License-Identifier: MIT
// The wire table: every wire once, with all that is needed to cut, fit and check it.
#include <algorithm>

#include "base/text.h"
#include "check/paths.h"
#include "sheets/anchors.h"
#include "sheets/fitting_text.h"
#include "sheets/hook_up_tables.h"
#include "sheets/hook_ups.h"
#include "sheets/names.h"
#include "sheets/print_text.h"
#include "sheets/sheet_makers.h"
#include "sheets/table.h"
#include "sheets/wire_cells.h"

namespace loomfolio {
namespace {

/// A table of more rows does not begin at the foot of another page.
constexpr std::size_t long_table = 10;
constexpr Millimetres long_table_room(130);

std::vector<Column> wire_columns(const SheetContext& context) {
  const Words& words = context.words();
  const std::string unit = length_unit(context.build().document.units, words);
  return {{words("wires.number"), CellAlign::near, Wrapping::keeps, 0},
          {words("wires.colour"), CellAlign::near, Wrapping::wraps, 0.88},
          {words("wires.from"), CellAlign::near, Wrapping::wraps, 1.07},
          {words("wires.to"), CellAlign::near, Wrapping::wraps, 1.07},
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

/// The letter for how the battery is charged when the wire carries most.
std::string_view charging_key(ChargeState state) { return state == ChargeState::dead ? "wires.dead" : "wires.into_empty"; }

/// The most it carries, and the number of the situation where it does; the numbers are told below the table.
Cell current_cell(const SheetContext& context, const WireLoad& load, bool has_own) {
  if (!load.situation.is_set()) return text_cell("–");
  std::vector<std::string> marks;
  if (context.extent != Extent::common)  // what all hook-ups share: the situations are numbered anew in each
    marks.push_back(context.words()("wires.in_situation", {{"number", std::to_string(load.situation.index + 1)}}));
  if (load.charging != ChargeState::as_stated) marks.push_back(context.words()(charging_key(load.charging)));
  if (has_own) marks.push_back(context.words()("wires.own"));
  return two_line_cell(print_amperes(load.worst), join(marks, ", "));
}

Cell fuse_cell(const SheetContext& context, const WireLoad& load) {
  const Build& build = context.build();
  const std::string_view verdict = verdict_key(load.verdict);
  const std::string said = verdict.empty() ? "" : context.words()(verdict);
  if (!load.fuse.part.is_set()) return two_line_cell("", said);
  const Inside& fuse = inside_of(build, load.fuse);
  Cell cell = two_line_cell(fuse.rating ? print_rating(*fuse.rating) : "", fuse_name(build, load.fuse));
  const LinkTarget target{context.id_prefix + "fuses", fuse_anchor(build, load.fuse)};
  // What all hook-ups share does not lead to the fuse of one of them.
  if (context.extent != Extent::common || shows_fuse(context, load.fuse.part))
    cell.lines.front().spans.front().link = target;
  if (!said.empty()) cell.lines.push_back({{{said, look::table_small, look::grey, {}}}, Align::left, {}});
  return cell;
}

/// The fuse of another hook-up as this one calls it; unset where it has none such.
InsideRef same_fuse(const Build& build, const Build& other, InsideRef fuse) {
  if (!fuse.part.is_set()) return {};
  for (std::size_t p = 0; p < build.parts.size(); ++p)
    if (build.parts[p].id == other.part(fuse.part).id) return {PartId{static_cast<std::int32_t>(p)}, fuse.inside};
  return {};
}

/// Of several hook-ups, the one in which the wire carries most gives its amperes, its drop, and what stands above it.
WireLoad load_of(const SheetContext& context, WireId id) {
  const std::vector<WireLoad>& loads = context.solved.wire_loads;
  if (id.at() >= loads.size()) return {};
  WireLoad load = loads[id.at()];
  if (context.extent != Extent::common) return load;
  const std::string text = describe_wire(context.build(), context.build().wire(id));
  for (const SolvedBuild* other : context.hook_ups->builds)
    for (std::size_t w = 0; w < other->build.wires.size() && w < other->wire_loads.size(); ++w) {
      const WireLoad& found = other->wire_loads[w];
      if (describe_wire(other->build, other->build.wires[w]) != text || found.worst <= load.worst) continue;
      load.worst = found.worst;
      load.drop = found.drop;
      load.situation = found.situation;
      load.charging = found.charging;
      load.verdict = std::max(load.verdict, found.verdict);
      if (const InsideRef fuse = same_fuse(context.build(), other->build, found.fuse); fuse.part.is_set()) load.fuse = fuse;
    }
  return load;
}

std::string purpose_of(const SheetContext& context, const Wire& wire) {
  if (wire.provided == Provider::kit) return wire.purpose;
  return context.words()("wires.machine", {{"purpose", wire.purpose}});
}

Row wire_row(const SheetContext& context, WireId id) {
  const Build& build = context.build();
  const Wire& wire = build.wire(id);
  const WireLoad load = load_of(context, id);
  Row row;
  row.anchor = wire_anchor(wire);
  row.cells = {wire_number_cell(context, id),
               wire_colour_cell(wire, purpose_of(context, wire)),
               end_cell(context, wire.from),
               end_cell(context, wire.to),
               two_line_cell(print_wire_size(wire), print_insulation(wire.insulation, context.words())),
               text_cell(wire.length ? print_length(*wire.length, build.document.units) : ""),
               current_cell(context, load, context.solved.own_supply.wires.contains(id)),
               text_cell(load.situation.is_set() ? print_volts(load.drop) : "–"),
               fuse_cell(context, load)};
  return row;
}

/// By number, so that a wire is found: 'C2' before 'C10', '9' before '10'.
std::vector<WireId> wires_in_order(const SheetContext& context, bool is_beside = false) {
  const Build& build = context.build();
  std::vector<WireId> wires;
  for (std::size_t i = 0; i < build.wires.size(); ++i)
    if (const WireId id{static_cast<std::int32_t>(i)};
        is_beside ? is_told_beside(context, id)
                  : shows_wire(context, id) && (context.extent != Extent::own || !is_told_beside(context, id)))
      wires.push_back(id);
  std::stable_sort(wires.begin(), wires.end(),
                   [&](WireId a, WireId b) { return is_numbered_before(build.wire(a).id, build.wire(b).id); });
  return wires;
}

/// What the letters beside the amperes mean, as far as the build has them.
std::string charging_notes(const SheetContext& context) {
  std::string notes;
  for (const ChargeState state : {ChargeState::into_empty, ChargeState::dead}) {
    const auto is_so = [&](const WireLoad& load) { return load.charging == state; };
    if (std::any_of(context.solved.wire_loads.begin(), context.solved.wire_loads.end(), is_so))
      notes += " " + context.words()(std::string(charging_key(state)) + "_note");
  }
  if (!context.solved.own_supply.switches.empty()) notes += " " + context.words()("wires.own_note");
  return notes;
}

/// 'Situations: 1 key on, 2 ...', so that the numbers beside the amperes can be read.
void add_situation_numbers(PageFlow& flow) {
  const SheetContext& context = flow.context();
  if (context.solved.wire_loads.empty()) return;
  if (context.extent == Extent::common)
    return flow.add_text(context.words()("wires.most_of_all") + charging_notes(context), look::table, look::block_gap);
  std::vector<std::string> names;
  const std::vector<Situation>& situations = context.build().situations;
  for (std::size_t i = 0; i < situations.size(); ++i)
    names.push_back(std::to_string(i + 1) + "\u00a0" + situation_name(situations[i]));
  flow.add_text(context.words()("wires.situations", {{"list", join(names, "; ")}}) + charging_notes(context), look::table, look::block_gap);
}

/// Wires that not all hook-ups have, each once, with the letters of those that have it.
void add_told_beside(PageFlow& flow) {
  std::vector<HookUpTable> tables;
  bool has_rows = false;
  for (SheetContext& own : own_contexts(flow.context())) {
    own.extent = Extent::common;
    own.id_prefix.clear();
    tables.push_back({own.build_index, {wire_columns(own), {}}});
    for (const WireId id : wires_in_order(own, true)) tables.back().table.rows.push_back(wire_row(own, id));
    has_rows = has_rows || !tables.back().table.rows.empty();
  }
  if (!has_rows) return;
  Table table = merge_tables(flow.context(), std::move(tables), {0});
  std::stable_sort(table.rows.begin(), table.rows.end(), [](const Row& a, const Row& b) {
    return is_numbered_before(a.cells[1].lines.front().spans.front().text, b.cells[1].lines.front().spans.front().text);
  });
  flow.add_heading(flow.context().words()("hook_up.wires"));
  flow.add_lead(flow.context().words()("hook_up.letters_text"), look::paragraph_gap);
  add_table(flow, table, look::paragraph_gap);
}

}  // namespace

std::vector<Sheet> make_wire_table(const SheetContext& context) {
  const Words& words = context.words();
  Table table{wire_columns(context), {}};
  for (const WireId id : wires_in_order(context)) table.rows.push_back(wire_row(context, id));
  if (table.rows.empty()) return {};
  PageFlow flow(context, {"wires", words("wires.title"), words("wires.intro")});
  if (table.rows.size() > long_table) flow.keep(long_table_room);
  add_table(flow, table);
  if (context.extent == Extent::common) add_told_beside(flow);
  add_situation_numbers(flow);
  return flow.take();
}

}  // namespace loomfolio
