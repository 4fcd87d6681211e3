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
#include "sheets/cut_list.h"
#include "sheets/fuse_list.h"
#include "sheets/fuse_look.h"
#include "sheets/hook_ups.h"
#include "sheets/names.h"
#include "sheets/parts_tables.h"
#include "sheets/print_text.h"
#include "sheets/reference.h"
#include "sheets/sheet_makers.h"
#include "sheets/table.h"
#include "sheets/wire_cells.h"
#include "sheets/wire_groups.h"

namespace loomfolio {
namespace {

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
  std::size_t groups = 0;
  for (std::size_t i = 0; i < parts.size(); ++i) groups += i == 0 || parts[i].kind->group != parts[i - 1].kind->group;
  // In a short list the heads would be half of it.
  const bool has_heads = parts.size() > 2 * groups;
  for (const SameParts& same : parts) {
    if (has_heads && same.kind->group != group) table.rows.push_back(group_row(words("group." + same.kind->group)));
    group = same.kind->group;
    table.rows.push_back(
        {{tick_cell(), text_cell(std::to_string(same.labels.size())), text_cell(same.kind->name, look::table_bold),
          text_cell(same.value), text_cell(join(same.labels, "; "))}});
  }
  add_table(flow, table, {});
}

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
  add_table(flow, table, look::paragraph_gap);
}

/// The machine's own wires that the hook-up uses: each stays, or comes off where a step says so.
void add_machine_wires(PageFlow& flow) {
  const SheetContext& context = flow.context();
  const Build& build = context.build();
  const Words& words = context.words();
  Table table;
  table.columns = {tick_column(),
                   {words("parts.own_wire"), CellAlign::near, Wrapping::keeps, 0},
                   {words("parts.colour"), CellAlign::near, Wrapping::keeps, 0.4},
                   {words("parts.from"), CellAlign::near, Wrapping::wraps, 1},
                   {words("parts.to"), CellAlign::near, Wrapping::wraps, 1},
                   {words("parts.carries"), CellAlign::near, Wrapping::wraps, 1}};
  for (std::size_t w = 0; w < build.wires.size(); ++w) {
    const WireId id{static_cast<std::int32_t>(w)};
    const Wire& wire = build.wire(id);
    if (wire.provided != Provider::machine || !shows_wire(context, id)) continue;
    table.rows.push_back({{tick_cell(), wire_number_cell(context, id), wire_colour_cell(wire, {}),
                           terminal_cell(context, wire.from, {}), terminal_cell(context, wire.to, {}),
                           text_cell(wire.purpose)}});
  }
  if (table.rows.empty()) return;
  flow.add_lead(words("parts.own_wires_text"), look::block_gap);
  add_table(flow, table, look::paragraph_gap);
}

/// What the hook-up needs and the bag does not hold.
void add_machines_own(PageFlow& flow) {
  const SheetContext& context = flow.context();
  const std::vector<Wire>& wires = context.build().wires;
  bool has_any = !group_parts(context, Provider::machine).empty();
  for (std::size_t w = 0; w < wires.size() && !has_any; ++w)
    has_any = wires[w].provided == Provider::machine && shows_wire(context, WireId{static_cast<std::int32_t>(w)});
  if (!has_any) return;
  flow.add_heading(context.words()("parts.machine"));
  flow.add_lead(context.words()("parts.machine_text"), look::paragraph_gap);
  add_machine_parts(flow);
  add_machine_wires(flow);
}

/// Things of the author's steps that are no part of the electrics: a tray, a sleeve.
void add_things(PageFlow& flow) {
  const SheetContext& context = flow.context();
  const Words& words = context.words();
  std::vector<std::pair<std::string, int>> things;
  for (const AuthorStep& step : context.build().steps) {
    if (!shows_step(context, step)) continue;
    for (const std::string& thing : step.bag) {
      const auto same = std::find_if(things.begin(), things.end(), [&](const auto& t) { return t.first == thing; });
      if (same == things.end())
        things.emplace_back(thing, 1);
      else
        ++same->second;
    }
  }
  if (things.empty()) return;
  Table table;
  table.columns = {tick_column(),
                   {words("parts.count"), CellAlign::far, Wrapping::keeps, 0},
                   {words("parts.thing"), CellAlign::near, Wrapping::wraps, 1}};
  for (const auto& [thing, count] : things)
    table.rows.push_back({{tick_cell(), text_cell(std::to_string(count)), text_cell(thing)}});
  flow.add_heading(words("parts.things"));
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
  flow.add_heading(words("parts.fuses"));
  const bool is_kit = build.document.scope == Scope::kit;
  flow.add_lead(words(is_kit ? "parts.fuses_spare_kit" : "parts.fuses_spare"), look::paragraph_gap);
  add_table(flow, table, look::paragraph_gap);
}

/// Of several hook-ups, those who fit the kit cut and do not buy: the reels are told with what is cut from each.
void add_cut_wire(PageFlow& flow) {
  const Words& words = flow.context().words();
  if (group_wires(flow.context()).empty()) return;
  flow.add_heading(words("cuts.title"));
  flow.items().push_back(AnchorItem{std::string(cut_list_anchor), {}});
  flow.add_lead(words("cuts.intro"), look::paragraph_gap);
  add_cut_list(flow, look::paragraph_gap);
}

std::string parts_intro(const SheetContext& context) {
  if (context.extent != Extent::own) return context.words()("parts.intro");
  return context.words()("parts.own_intro", {{"sheet", sheet_mark("parts")}});
}

}  // namespace

std::vector<Sheet> make_parts_list(const SheetContext& context) {
  if (context.build().parts.empty()) return {};
  PageFlow flow(context, {"parts", context.words()("parts.title"), parts_intro(context)});
  add_parts(flow);
  add_things(flow);
  add_fuses(flow);
  add_fittings(flow);
  if (context.hook_ups != nullptr)
    add_cut_wire(flow);
  else
    add_reel_wire(flow);
  add_machines_own(flow);
  // A hook-up that adds nothing has no list of its own.
  return flow.is_at_top() ? std::vector<Sheet>{} : flow.take();
}

}  // namespace loomfolio
