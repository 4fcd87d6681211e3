// SPDX-License-Identifier: MIT
// What hangs on a fuse that the kit leaves to the fitter -> which of the fuses in the bag.
#include "sheets/fuse_selection_table.h"

#include <cmath>
#include <utility>

#include "base/text.h"
#include "check/paths.h"
#include "sheets/fuse_look.h"
#include "sheets/hook_ups.h"
#include "sheets/names.h"
#include "sheets/print_text.h"
#include "sheets/table.h"
#include "solve/fuse_choice.h"

namespace loomfolio {
namespace {

Cell fit_cell(const Words& words, const FuseFitCell& fit, const std::string& family) {
  if (fit.fit == FuseFit::too_much_load) return text_cell(words("fuses.fit_too_much"));
  if (fit.fit == FuseFit::wire_too_thin) return text_cell(words("fuses.fit_too_thin"));
  Cell cell = text_cell(print_rating(fit.rating), look::table_bold);
  const std::string colour = fuse_colour_name(family, fit.rating, words);
  if (!colour.empty()) cell.lines.push_back({{{colour, look::table, look::ink, {}}}, Align::left, {}});
  cell.picture = fuse_body(family, fit.rating);
  return cell;
}

Table selection_table(const SheetContext& context, const FuseSelection& selection) {
  const Words& words = context.words();
  const std::string& family = inside_of(context.build(), selection.fuse).family;
  Table table;
  table.columns = {{words("fuses.fit_watts"), CellAlign::near, Wrapping::keeps, 0},
                   {words("fuses.fit_amperes"), CellAlign::near, Wrapping::keeps, 0}};
  for (const ConductorSize& size : selection.sizes)
    table.columns.push_back(
        {words("fuses.fit_wire", {{"size", print_area(size.area)}}), CellAlign::near, Wrapping::wraps, 1});
  bool is_own_marked = false;
  for (const FuseLoadRow& row : selection.rows) {
    // The build's own load falls into the first row that holds it.
    const bool is_own = !is_own_marked && selection.load.number() > 0 && selection.load <= row.load;
    is_own_marked = is_own_marked || is_own;
    Row shown{{two_line_cell(words("fuses.fit_up_to_watts", {{"watts", fixed(std::floor(row.power.number()), 0)}}),
                             is_own ? words("fuses.fit_own") : "", look::table_bold),
               text_cell(words("fuses.fit_up_to_amperes", {{"amperes", print_amperes(row.load)}}))}};
    for (const FuseFitCell& fit : row.cells) shown.cells.push_back(fit_cell(words, fit, family));
    table.rows.push_back(std::move(shown));
  }
  return table;
}

}  // namespace

void add_fuse_selections(PageFlow& flow) {
  const SheetContext& context = flow.context();
  const Words& words = context.words();
  if (!context.solved.study) return;
  for (const FuseSelection& selection : select_fuses(context.build(), *context.solved.study)) {
    if (!shows_fuse(context, selection.fuse.part) || selection.rows.empty()) continue;
    const std::string name = fuse_name(context.build(), selection.fuse);
    flow.add_heading(words("fuses.hangs", {{"fuse", name}}), Millimetres(45));
    flow.add_text(words("fuses.hangs_text"), look::text, look::paragraph_gap);
    add_table(flow, selection_table(context, selection), look::paragraph_gap);
    flow.add_text(words("fuses.hangs_more"), look::text, look::paragraph_gap);
  }
}

}  // namespace loomfolio
