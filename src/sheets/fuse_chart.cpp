// SPDX-License-Identifier: MIT
// The fuse chart: which fuse goes where, what it looks like, what it protects, and what stops when it blows.
#include <algorithm>

#include "base/text.h"
#include "check/paths.h"
#include "sheets/anchors.h"
#include "sheets/fuse_look.h"
#include "sheets/names.h"
#include "sheets/panel.h"
#include "sheets/print_text.h"
#include "sheets/sheet_makers.h"
#include "sheets/table.h"
#include "sheets/wire_cells.h"

namespace loomfolio {
namespace {

/// All fuses, in the order of parts; ways of a fuse box that no wire leaves are left out.
std::vector<InsideRef> list_fuses(const Build& build) {
  const auto wires = wires_at_terminals(build);
  const auto has_wire = [&](const Part& part, const Inside::Node& node) {
    return node.terminal < 0 || !wires[part.terminals[static_cast<std::size_t>(node.terminal)].at()].empty();
  };
  std::vector<InsideRef> fuses;
  for (std::size_t p = 0; p < build.parts.size(); ++p) {
    const Part& part = build.parts[p];
    for (std::size_t i = 0; i < part.insides.size(); ++i) {
      const Inside& inside = part.insides[i];
      if (inside.type != InsideType::fuse) continue;
      const bool is_used = std::all_of(inside.nodes.begin(), inside.nodes.end(),
                                       [&](const Inside::Node& node) { return has_wire(part, node); });
      if (is_used) fuses.push_back({PartId{static_cast<std::int32_t>(p)}, static_cast<int>(i)});
    }
  }
  return fuses;
}

Cell rating_cell(const Inside& fuse, const Words& words) {
  if (!fuse.rating) return text_cell("");
  Cell cell = text_cell(print_rating(*fuse.rating), look::table_bold);
  const std::string colour = fuse_colour_name(fuse.family, *fuse.rating, words);
  if (!colour.empty()) cell.lines.push_back({{{colour, look::table, look::ink, {}}}, Align::left, {}});
  cell.picture = fuse_body(fuse.family, *fuse.rating);
  return cell;
}

std::string list_parts(const Build& build, const std::vector<PartId>& parts) {
  std::vector<std::string> names;
  for (const PartId part : parts) names.push_back(build.part(part).label);
  return join(names, ", ");
}

Cell load_cell(const SheetContext& context, InsideRef fuse) {
  const MostCurrent most = most_through(context.solved, fuse);
  if (!most.situation.is_set()) return text_cell("");
  const std::string where = situation_name(context.build().situations[most.situation.at()]);
  return two_line_cell(print_amperes(most.amperes) + "\u00a0A", where);
}

Cell smallest_wire_cell(const SheetContext& context, InsideRef fuse) {
  const WireId id = smallest_wire_behind(context.solved, fuse);
  if (!id.is_set()) return text_cell("");
  const Wire& wire = context.build().wire(id);
  return two_line_cell(print_wire_size(wire), context.words()("called.wire", {{"id", wire.id}}));
}

Row fuse_row(const SheetContext& context, InsideRef ref) {
  const Build& build = context.build();
  const Inside& fuse = inside_of(build, ref);
  Row row;
  row.anchor = fuse_anchor(build, ref);
  row.cells = {rating_cell(fuse, context.words()),
               two_line_cell(fuse_name(build, ref), fuse_family_name(fuse.family, context.words()), look::table_bold),
               text_cell(list_parts(build, parts_behind(context.solved, ref))), load_cell(context, ref),
               smallest_wire_cell(context, ref)};
  return row;
}

Table fuse_table(const SheetContext& context, const std::vector<InsideRef>& fuses) {
  const Words& words = context.words();
  Table table;
  table.columns = {{words("fuses.fuse"), CellAlign::near, Wrapping::keeps, 0},
                   {words("fuses.position"), CellAlign::near, Wrapping::wraps, 0.5},
                   {words("fuses.protects"), CellAlign::near, Wrapping::wraps, 1},
                   {words("fuses.load"), CellAlign::near, Wrapping::wraps, 0.3},
                   {words("fuses.smallest_wire"), CellAlign::near, Wrapping::wraps, 0.3}};
  for (const InsideRef fuse : fuses) table.rows.push_back(fuse_row(context, fuse));
  return table;
}

}  // namespace

std::vector<Sheet> make_fuse_chart(const SheetContext& context) {
  const std::vector<InsideRef> fuses = list_fuses(context.build());
  if (fuses.empty()) return {};
  const Words& words = context.words();
  PageFlow flow(context, {"fuses", words("fuses.title"), words("fuses.intro")});
  flow.add(make_panel(panel_from_words(words, Signal::warning, "fuses.panel"), flow.width(), words, flow.setting()),
           {});
  add_table(flow, fuse_table(context, fuses));
  return flow.take();
}

}  // namespace loomfolio
