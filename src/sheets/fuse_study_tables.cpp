// SPDX-License-Identifier: MIT
#include "sheets/fuse_study_tables.h"

#include <algorithm>
#include <set>
#include <string>
#include <utility>

#include "base/text.h"
#include "check/paths.h"
#include "sheets/fuse_list.h"
#include "sheets/fuse_look.h"
#include "sheets/hook_ups.h"
#include "sheets/names.h"
#include "sheets/print_text.h"
#include "sheets/table.h"

namespace loomfolio {
namespace {

Row choice_row(const SheetContext& context, const FuseChoice& choice, const FuseChoiceRow& row) {
  const Words& words = context.words();
  const Inside& fuse = inside_of(context.build(), choice.fuse);
  const bool is_best = std::abs((row.rating - choice.best).number()) < 1e-9;
  Cell rating = text_cell(print_rating(row.rating), look::table_bold);
  const std::string colour = fuse_colour_name(fuse.family, row.rating, words);
  if (!colour.empty()) rating.lines.push_back({{{colour, look::table, look::ink, {}}}, Align::left, {}});
  rating.picture = fuse_body(fuse.family, row.rating);
  const std::string_view key = guard_key(row.verdict, row.carries_135);
  std::string wires = key.empty() ? "" : words(key);
  if (row.wire.is_set() && !key.empty() && row.verdict != WireVerdict::is_protected)
    wires += " (" + words("called.wire", {{"id", context.build().wire(row.wire).id}}) + ")";
  return {{std::move(rating), text_cell(words("fuses.share", {{"share", fixed(row.load_share * 100, 0)}})),
           text_cell(std::move(wires)), text_cell(is_best ? words("fuses.best") : "", look::table_bold)}};
}

/// 'wire 1', 'wires 1, 2'.
std::string list_wires(const SheetContext& context, const std::vector<WireId>& wires) {
  const std::string ids = wire_ids(context.build(), wires);
  if (wires.size() == 1) return context.words()("called.wire", {{"id", ids}});
  return context.words()("called.wires", {{"list", ids}});
}

/// Common to all hook-ups are pairs and leads of which every fuse or wire is.
bool shows_pair(const SheetContext& context, const FusePair& pair) {
  if (context.extent == Extent::whole) return true;
  SheetContext common = context;
  common.extent = Extent::common;
  const bool is_common = shows_fuse(common, pair.upper.part) && shows_fuse(common, pair.lower.part);
  return is_common == (context.extent == Extent::common);
}

bool shows_lead(const SheetContext& context, const UnfusedLead& lead) {
  if (context.extent == Extent::whole) return true;
  const bool is_common =
      std::none_of(lead.wires.begin(), lead.wires.end(), [&](WireId wire) { return differs(context, wire); });
  return is_common == (context.extent == Extent::common);
}

/// Whether all hook-ups share a fuse, so that there is a common chart.
bool has_common_fuses(const SheetContext& context) {
  SheetContext common = context;
  common.extent = Extent::common;
  const std::vector<InsideRef> fuses = list_fuses(context.build());
  return std::any_of(fuses.begin(), fuses.end(), [&](InsideRef fuse) { return shows_fuse(common, fuse.part); });
}

}  // namespace

void add_fuse_choices(PageFlow& flow) {
  const SheetContext& context = flow.context();
  const Words& words = context.words();
  if (!context.solved.study) return;
  for (const FuseChoice& choice : context.solved.study->choices) {
    if (choice.rows.empty() || !shows_fuse(context, choice.fuse.part)) continue;
    Table table;
    table.columns = {{words("fuses.fuse"), CellAlign::near, Wrapping::keeps, 0},
                     {words("fuses.choice_load"), CellAlign::near, Wrapping::wraps, 1},
                     {words("fuses.choice_wire"), CellAlign::near, Wrapping::wraps, 1},
                     {words("fuses.choice_take"), CellAlign::near, Wrapping::keeps, 0}};
    for (const FuseChoiceRow& row : choice.rows) table.rows.push_back(choice_row(context, choice, row));
    flow.add_heading(words("fuses.choose", {{"fuse", fuse_name(context.build(), choice.fuse)}}));
    flow.add_lead(words("fuses.choose_text"), look::paragraph_gap);
    add_table(flow, table, look::paragraph_gap);
  }
}

void add_fuse_order(PageFlow& flow) {
  const SheetContext& context = flow.context();
  const Words& words = context.words();
  if (!context.solved.study || context.solved.study->pairs.empty()) return;
  Table table;
  table.columns = {{words("fuses.upper"), CellAlign::near, Wrapping::wraps, 1},
                   {words("fuses.lower"), CellAlign::near, Wrapping::wraps, 1},
                   {words("fuses.first"), CellAlign::near, Wrapping::wraps, 1}};
  bool is_any = false;
  for (const FusePair& pair : context.solved.study->pairs) {
    if (!shows_pair(context, pair)) continue;
    is_any = true;
    if (pair.selectivity == Selectivity::proven) continue;
    const std::string result = words("fuses.not_proven", {{"amperes", print_amperes(pair.fails_from)}});
    table.rows.push_back({{text_cell(fuse_name(context.build(), pair.upper)),
                           text_cell(fuse_name(context.build(), pair.lower)), text_cell(result)}});
  }
  if (!is_any) return;
  const std::string rest = table.rows.empty() ? "fuses.all_proven" : "fuses.rest_proven";
  flow.add_heading(words("fuses.pairs"));
  flow.add_lead(words("fuses.pairs_text") + " " + words(rest), look::paragraph_gap);
  add_table(flow, table, look::paragraph_gap);
  if (!table.rows.empty()) flow.add_text(words("fuses.pairs_advice"), look::text, look::paragraph_gap);
}

void add_fuse_curves(PageFlow& flow) {
  const SheetContext& context = flow.context();
  const Words& words = context.words();
  if (!context.solved.study || context.solved.study->fuses.empty()) return;
  // The common chart has told the same.
  if (context.extent == Extent::own && has_common_fuses(context)) return;
  std::set<std::string> told;
  flow.add_heading(words("fuses.curves"));
  for (const FuseStudy& fuse : context.solved.study->fuses) {
    const FuseFamily& family = *fuse.family;
    if (!told.insert(family.name).second) continue;
    const std::string_view key = !family.set.empty()                     ? "fuses.curve_given"
                                 : family.id == "torpedo"                ? "fuses.curve_no_source"
                                 : family.status == FigureStatus::memory ? "fuses.curve_memory"
                                                                         : "fuses.curve_published";
    const std::string name = fuse_family_name(family.id, words);
    flow.add_text(words(key, {{"family", name}, {"set", family.set}, {"standard", family.standard}}), look::text,
                  look::paragraph_gap);
  }
}

void add_unfused_leads(PageFlow& flow) {
  const SheetContext& context = flow.context();
  const Build& build = context.build();
  const Words& words = context.words();
  if (!context.solved.study || context.solved.study->leads.empty()) return;
  Table table;
  table.columns = {{words("fuses.lead"), CellAlign::near, Wrapping::wraps, 1},
                   {words("fuses.lead_length", {{"unit", length_unit(build.document.units, words)}}), CellAlign::point,
                    Wrapping::keeps, 0},
                   {words("fuses.lead_ends"), CellAlign::near, Wrapping::wraps, 1}};
  for (const UnfusedLead& lead : context.solved.study->leads) {
    if (!shows_lead(context, lead)) continue;
    const std::string end = lead.fuse.part.is_set() ? fuse_name(build, lead.fuse)
                                                    : words(lead.is_starter ? "fuses.starter" : "fuses.no_end");
    table.rows.push_back({{text_cell(list_wires(context, lead.wires)),
                           text_cell(print_length(lead.length, build.document.units)), text_cell(end)}});
  }
  if (table.rows.empty()) return;
  flow.add_heading(words("fuses.unfused"));
  flow.add_lead(words("fuses.unfused_text"), look::paragraph_gap);
  add_table(flow, table, look::paragraph_gap);
}

}  // namespace loomfolio
