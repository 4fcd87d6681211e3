// SPDX-License-Identifier: MIT
// The parts list: what to buy or to find in the bag. Parts by kind, then fittings for the wires' ends, then wire by the
// metre.
#include <algorithm>
#include <array>
#include <map>
#include <string_view>
#include <utility>

#include "base/text.h"
#include "check/paths.h"
#include "sheets/fitted_ends.h"
#include "sheets/fitting_text.h"
#include "sheets/fuse_list.h"
#include "sheets/fuse_look.h"
#include "sheets/hook_ups.h"
#include "sheets/names.h"
#include "sheets/print_text.h"
#include "sheets/sheet_makers.h"
#include "sheets/table.h"
#include "sheets/wire_groups.h"
#include "sheets/wire_look.h"
#include "sheets/wire_star.h"

namespace loomfolio {
namespace {

/// A cell to tick, as high as a line.
Cell tick_cell() {
  Cell cell = text_cell("");
  const Millimetres size(2.8);
  Block box{size, size, {}};
  add_rect(box.items, {{}, {}, size, size}, {look::ink, look::line});
  cell.picture = std::move(box);
  return cell;
}

Column tick_column() { return {"", CellAlign::near, Wrapping::keeps, 0}; }

/// From the battery outwards.
constexpr std::array<std::string_view, 12> group_order{"supply",      "protection",  "switching",  "starting",
                                                       "charging",    "ignition",    "lighting",   "signalling",
                                                       "instruments", "accessories", "connecting", "control"};

/// Parts that are the same thing to buy: kind and value.
struct SameParts {
  const Kind* kind = nullptr;
  std::string value;
  std::vector<std::string> labels;
};

std::vector<SameParts> group_parts(const SheetContext& context, Provider provider) {
  std::vector<SameParts> groups;
  const Build& build = context.build();
  for (std::size_t p = 0; p < build.parts.size(); ++p) {
    const Part& part = build.parts[p];
    if (part.provided != provider || !shows_part(context, PartId{static_cast<std::int32_t>(p)})) continue;
    const Kind& kind = build.kind_of(part);
    auto same = std::find_if(groups.begin(), groups.end(),
                             [&](const SameParts& g) { return g.kind == &kind && g.value == part.value_text; });
    if (same == groups.end()) same = groups.insert(groups.end(), {&kind, part.value_text, {}});
    same->labels.push_back(part.label);
  }
  const auto place = [](const SameParts& same) {
    return std::find(group_order.begin(), group_order.end(), same.kind->group);
  };
  std::stable_sort(groups.begin(), groups.end(),
                   [&](const SameParts& a, const SameParts& b) { return place(a) < place(b); });
  return groups;
}

void add_parts(PageFlow& flow) {
  const Words& words = flow.context().words();
  const std::vector<SameParts> parts = group_parts(flow.context(), Provider::kit);
  if (parts.empty()) return;
  Table table;
  table.columns = {tick_column(),
                   {words("parts.count"), CellAlign::far, Wrapping::keeps, 0},
                   {words("parts.kind"), CellAlign::near, Wrapping::wraps, 1},
                   {words("parts.value"), CellAlign::near, Wrapping::wraps, 0.5},
                   {words("parts.used_as"), CellAlign::near, Wrapping::wraps, 1.3}};
  std::string group;
  for (const SameParts& same : parts) {
    if (same.kind->group != group) table.rows.push_back(group_row(words("group." + same.kind->group)));
    group = same.kind->group;
    table.rows.push_back(
        {{tick_cell(), text_cell(std::to_string(same.labels.size())), text_cell(same.kind->name, look::table_bold),
          text_cell(same.value), text_cell(join(same.labels, "; "))}});
  }
  add_table(flow, table, {});
}

/// What the hook-up needs and the bag does not hold: the machine's own parts.
void add_machine_parts(PageFlow& flow) {
  const Words& words = flow.context().words();
  const std::vector<SameParts> parts = group_parts(flow.context(), Provider::machine);
  if (parts.empty()) return;
  Table table;
  table.columns = {tick_column(),
                   {words("parts.kind"), CellAlign::near, Wrapping::wraps, 1},
                   {words("parts.value"), CellAlign::near, Wrapping::wraps, 0.5},
                   {words("parts.used_as"), CellAlign::near, Wrapping::wraps, 1.3}};
  for (const SameParts& same : parts)
    table.rows.push_back({{tick_cell(), text_cell(same.kind->name, look::table_bold), text_cell(same.value),
                           text_cell(join(same.labels, "; "))}});
  flow.add_heading(words("parts.machine"), Millimetres(25));
  flow.add_text(words("parts.machine_text"), look::text, look::paragraph_gap);
  add_table(flow, table, look::paragraph_gap);
}

/// Ratings of the fuse that the bag holds: one, or all from which the fitter chooses.
std::vector<Amperes> ratings_of(const SheetContext& context, InsideRef ref) {
  std::vector<Amperes> ratings;
  if (context.solved.study)
    for (const FuseChoice& choice : context.solved.study->choices)
      if (choice.fuse == ref)
        for (const FuseChoiceRow& row : choice.rows) ratings.push_back(row.rating);
  const Inside& fuse = inside_of(context.build(), ref);
  if (ratings.empty() && fuse.rating) ratings.push_back(*fuse.rating);
  return ratings;
}

/// Fuses by family and rating.
void add_fuses(PageFlow& flow) {
  const SheetContext& context = flow.context();
  const Build& build = context.build();
  const Words& words = context.words();
  std::map<std::pair<std::string, double>, int> counts;
  for (const InsideRef ref : list_fuses(build)) {
    if (build.part(ref.part).provided == Provider::machine || !shows_part(context, ref.part)) continue;
    for (const Amperes rating : ratings_of(context, ref)) ++counts[{inside_of(build, ref).family, rating.number()}];
  }
  if (counts.empty()) return;
  Table table;
  table.columns = {tick_column(),
                   {words("parts.count"), CellAlign::far, Wrapping::keeps, 0},
                   {words("parts.fuse"), CellAlign::near, Wrapping::wraps, 1}};
  for (const auto& [fuse, count] : counts) {
    std::string name = print_rating(Amperes(fuse.second));
    for (const std::string& more :
         {fuse_colour_name(fuse.first, Amperes(fuse.second), words), fuse_family_name(fuse.first, words)})
      if (!more.empty()) name += ", " + more;
    table.rows.push_back({{tick_cell(), text_cell(std::to_string(count)), text_cell(name)}});
  }
  flow.add_heading(words("parts.fuses"), Millimetres(25));
  flow.add_text(words("parts.fuses_spare"), look::text, look::paragraph_gap);
  add_table(flow, table, look::paragraph_gap);
}

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
  if (table.rows.empty()) return;
  flow.add_heading(words("parts.fittings"), Millimetres(25));
  flow.add_text(words("parts.fittings_text"), look::text, look::paragraph_gap);
  add_table(flow, table, look::paragraph_gap);
}

void add_wire(PageFlow& flow) {
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
  flow.add_heading(words("parts.wire"), Millimetres(25));
  flow.add_text(words("parts.wire_text"), look::text, look::paragraph_gap);
  add_table(flow, table, look::paragraph_gap);
}

}  // namespace

std::vector<Sheet> make_parts_list(const SheetContext& context) {
  if (context.build().parts.empty()) return {};
  const Words& words = context.words();
  PageFlow flow(context, {"parts", words("parts.title"), words("parts.intro")});
  add_parts(flow);
  add_fuses(flow);
  add_fittings(flow);
  add_wire(flow);
  add_machine_parts(flow);
  // A hook-up that adds nothing has no list of its own.
  return flow.is_at_top() ? std::vector<Sheet>{} : flow.take();
}

}  // namespace loomfolio
