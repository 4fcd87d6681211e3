// SPDX-License-Identifier: MIT
#include "sheets/parts_tables.h"

#include <algorithm>
#include <map>
#include <utility>

#include "base/text.h"
#include "check/paths.h"
#include "sheets/cavity_plugs.h"
#include "sheets/fitted_ends.h"
#include "sheets/fitting_picture.h"
#include "sheets/fitting_text.h"
#include "sheets/hook_ups.h"
#include "sheets/names.h"
#include "sheets/print_text.h"
#include "sheets/wire_groups.h"
#include "sheets/wire_look.h"
#include "sheets/wire_star.h"

namespace loomfolio {
namespace {

/// How many fittings for each size of what goes in.
struct FittingCount {
  int total = 0;
  std::map<std::pair<double, std::string>, int> by_size;
};

std::map<std::string, FittingCount> count_fittings(const SheetContext& context) {
  std::map<std::string, FittingCount> counts;
  const Build& build = context.build();
  const Words& words = context.words();
  for (const FittedEnd& end : find_fitted_ends(build)) {
    if (std::none_of(end.wires.begin(), end.wires.end(), [&](WireId wire) { return shows_wire(context, wire); })) continue;
    // A fitting that a hook-up's own wire shares with a common one is counted with the hook-up.
    if (context.extent == Extent::common &&
        !std::all_of(end.wires.begin(), end.wires.end(), [&](WireId wire) { return shows_wire(context, wire); }))
      continue;
    const std::string fitting = fitting_name(build, end.terminal, words);
    if (fitting.empty()) continue;
    ++counts[fitting].total;
    ++counts[fitting].by_size[{end.area.number(), end.size}];
  }
  return counts;
}

/// Splice barrels by the metal they must take: all wires lie in the one barrel.
void add_splice_row(const SheetContext& context, Table& table) {
  const Build& build = context.build();
  const Words& words = context.words();
  const auto wires_at = wires_at_terminals(build);
  std::map<double, int> by_area;
  int all = 0;
  for (std::size_t i = 0; i < build.splices.size(); ++i) {
    if (!shows_splice(context, SpliceId{static_cast<std::int32_t>(i)})) continue;
    ++by_area[total_area(build, wires_at[build.splices[i].terminal.at()]).number()];
    ++all;
  }
  if (all == 0) return;
  std::vector<std::string> sizes;
  for (const auto& [area, count] : by_area)
    sizes.push_back(words("parts.number_of_size",
                          {{"count", std::to_string(count)}, {"size", print_area(SquareMillimetres(area))}}));
  table.rows.push_back(
      {{tick_cell(), text_cell(std::to_string(all)), text_cell(words("parts.splice")), text_cell(join(sizes, ", "))}});
}

/// A plug for each cavity that stays empty, and where it goes; those of the bag, or those that the fitter brings.
void add_plug_row(const std::vector<EmptyCavities>& empty, PlugSource source, const Words& words, Table& table) {
  std::size_t count = 0;
  std::vector<std::string> places;
  for (const EmptyCavities& cavities : empty) {
    if (cavities.plugs != source) continue;
    count += cavities.marks.size();
    const bool is_machines = cavities.provided == Provider::machine;
    places.push_back(words(is_machines ? "parts.plug_place_machine" : "parts.plug_place",
                           {{"part", cavities.part}, {"marks", join(cavities.marks, ", ")}}));
  }
  if (count == 0) return;
  table.rows.push_back(
      {{tick_cell(), text_cell(std::to_string(count)), text_cell(words(source == PlugSource::bag ? "parts.plug" : "parts.plug_missing")), text_cell(join(places, "; "))}});
}

/// What to look for in the rows; that no plug is needed is said once, where there are sealed contacts.
std::string fittings_text(const SheetContext& context, bool has_plugs) {
  const Build& build = context.build();
  const Words& words = context.words();
  std::string text = words("parts.fittings_text");
  const std::vector<FittedEnd> ends = find_fitted_ends(build);
  const bool has_sealed = std::any_of(ends.begin(), ends.end(), [&](const FittedEnd& end) {
    return fitting_shape(build, end.terminal) == FittingShape::sealed;
  });
  if (has_sealed) text += " " + words("parts.seals_text");
  if (has_sealed && !has_plugs && !leaves_cavities_empty(context)) text += " " + words("parts.no_plugs_text");
  return text;
}

}  // namespace

Cell tick_cell() {
  Cell cell = text_cell("");
  const Millimetres size(2.8);
  Block box{size, size, {}};
  add_rect(box.items, {{}, {}, size, size}, {look::ink, look::line});
  cell.picture = std::move(box);
  return cell;
}

Column tick_column() { return {"", CellAlign::near, Wrapping::keeps, 0}; }

void add_fittings(PageFlow& flow) {
  const Words& words = flow.context().words();
  Table table;
  table.columns = {tick_column(),
                   {words("parts.count"), CellAlign::far, Wrapping::keeps, 0},
                   {words("parts.fitting"), CellAlign::near, Wrapping::wraps, 1},
                   {words("parts.for_wire"), CellAlign::near, Wrapping::wraps, 1}};
  for (const auto& [fitting, count] : count_fittings(flow.context())) {
    std::vector<std::string> sizes;
    for (const auto& [size, number] : count.by_size)
      sizes.push_back(words("parts.number_of_size", {{"count", std::to_string(number)}, {"size", size.second}}));
    table.rows.push_back(
        {{tick_cell(), text_cell(std::to_string(count.total)), text_cell(fitting), text_cell(join(sizes, ", "))}});
  }
  add_splice_row(flow.context(), table);
  const std::vector<EmptyCavities> empty = find_empty_cavities(flow.context());
  for (const PlugSource source : {PlugSource::bag, PlugSource::nowhere}) add_plug_row(empty, source, words, table);
  if (table.rows.empty()) return;
  flow.add_heading(words("parts.fittings"));
  if (flow.context().extent != Extent::own)
    flow.add_lead(fittings_text(flow.context(), !empty.empty()), look::paragraph_gap);
  add_table(flow, table, look::paragraph_gap);
}

void add_reel_wire(PageFlow& flow) {
  const Build& build = flow.context().build();
  const Words& words = flow.context().words();
  Table table;
  table.columns = {
      tick_column(),
      {words("parts.colour"), CellAlign::near, Wrapping::keeps, 0.4},
      {words("parts.size"), CellAlign::near, Wrapping::keeps, 0.4},
      {words("parts.insulation"), CellAlign::near, Wrapping::keeps, 0.4},
      {words("parts.total", {{"unit", reel_unit(build.document.units, words)}}), CellAlign::point, Wrapping::keeps, 0},
      {words("parts.wires"), CellAlign::near, Wrapping::wraps, 1}};
  const std::vector<WireGroup> groups = group_wires(flow.context());
  if (groups.empty()) return;
  for (const WireGroup& group : groups) {
    const Wire& first = build.wire(group.wires.front());
    Cell colour = text_cell(first.colour.text(), look::table_mono);
    colour.picture = wire_swatch(first.colour, first.area, look::swatch_length);
    table.rows.push_back({{tick_cell(), std::move(colour), text_cell(print_wire_size(first)),
                           text_cell(print_insulation(first.insulation, words)),
                           text_cell(group.has_all_lengths ? print_reel_length(group.total, build.document.units)
                                                           : words("parts.unknown")),
                           text_cell(wire_ids(build, group.wires))}});
  }
  flow.add_heading(words("parts.wire"));
  flow.add_lead(words("parts.wire_text"), look::paragraph_gap);
  add_table(flow, table, look::paragraph_gap);
}

}  // namespace loomfolio
