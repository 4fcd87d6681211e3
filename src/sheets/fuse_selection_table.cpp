// SPDX-License-Identifier: MIT
// What hangs on a fuse that the kit leaves to the fitter -> which of the fuses in the bag.
#include "sheets/fuse_selection_table.h"

#include <algorithm>
#include <charconv>
#include <cmath>
#include <optional>
#include <string_view>
#include <utility>

#include "base/text.h"
#include "check/paths.h"
#include "sheets/anchors.h"
#include "sheets/figures.h"
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

/// '35 W', as it stands on the part and beside its name; nothing for what bears amperes, or two figures.
std::optional<double> watts_on(const Part& part) {
  const std::string_view text = part.value_text;
  constexpr std::string_view unit = "\u00a0W", plain_unit = " W";
  const std::string_view ending = text.ends_with(unit) ? unit : text.ends_with(plain_unit) ? plain_unit : "";
  if (ending.empty()) return std::nullopt;
  const std::string_view figure = text.substr(0, text.size() - ending.size());
  double watts = 0;
  const auto read = std::from_chars(figure.data(), figure.data() + figure.size(), watts);
  return read.ec == std::errc() && read.ptr == figure.data() + figure.size() ? std::optional(watts) : std::nullopt;
}

/// What stands on all that hangs there as printed; nothing where one bears no watts. What a relay takes for itself does
/// not count.
std::optional<double> marked_watts(const SheetContext& context, InsideRef fuse) {
  const Build& build = context.build();
  double sum = 0;
  for (const FuseStudy& study : context.solved.study->fuses) {
    if (study.fuse != fuse) continue;
    for (const PartId part : consumers_on(build, study.wires)) {
      const std::vector<Inside>& insides = build.part(part).insides;
      const bool is_relay = std::any_of(insides.begin(), insides.end(),
                                        [](const Inside& inside) { return inside.type == InsideType::coil; });
      if (is_relay) continue;
      const auto watts = watts_on(build.part(part));
      if (!watts) return std::nullopt;
      sum += *watts;
    }
  }
  return sum > 0 ? std::optional(sum) : std::nullopt;
}

std::string own_text(const SheetContext& context, const FuseSelection& selection) {
  const auto watts = marked_watts(context, selection.fuse);
  if (!watts) return context.words()("fuses.fit_own");
  return context.words()("fuses.fit_own_watts", {{"watts", fixed(*watts, 0)}});
}

/// ' As printed that is 2.5 mm², wire 3 ...'; nothing where no wire was studied.
std::string thinnest_text(const SheetContext& context, InsideRef fuse) {
  const FuseStudy* study = study_of(context.solved, fuse);
  if (study == nullptr || !study->thinnest.is_set()) return {};
  const Wire& wire = context.build().wire(study->thinnest);
  return " " + context.words()("fuses.hangs_thinnest", {{"size", print_wire_size(wire)}, {"id", wire.id}});
}

Table selection_table(const SheetContext& context, const FuseSelection& selection) {
  const Words& words = context.words();
  const std::string& family = inside_of(context.build(), selection.fuse).family;
  Table table;
  table.columns = {{words("fuses.fit_watts"), CellAlign::near, Wrapping::keeps, 0},
                   {words("fuses.fit_amperes"), CellAlign::near, Wrapping::keeps, 0}};
  for (const ConductorSize& size : selection.sizes) {
    const bool is_last = &size == &selection.sizes.back();
    table.columns.push_back({words(is_last ? "fuses.fit_wire_last" : "fuses.fit_wire", {{"size", print_area(size.area)}}),
                             CellAlign::near, Wrapping::wraps, 1});
  }
  bool is_own_marked = false;
  for (const FuseLoadRow& row : selection.rows) {
    // The build's own load falls into the first row that holds it.
    const bool is_own = !is_own_marked && selection.load.number() > 0 && selection.load <= row.load;
    is_own_marked = is_own_marked || is_own;
    Row shown{{two_line_cell(words("fuses.fit_up_to_watts", {{"watts", fixed(std::floor(row.power.number()), 0)}}),
                             is_own ? own_text(context, selection) : "", look::table_bold),
               text_cell(words("fuses.fit_up_to_amperes", {{"amperes", print_amperes(row.load)}}))}};
    for (const FuseFitCell& fit : row.cells) shown.cells.push_back(fit_cell(words, fit, family));
    table.rows.push_back(std::move(shown));
  }
  return table;
}

}  // namespace

std::string choice_anchor(const SheetContext& context, InsideRef fuse) {
  const std::string row = fuse_anchor(context.build(), fuse);
  if (!context.solved.study) return row;
  for (const FuseSelection& selection : select_fuses(context.build(), *context.solved.study))
    if (selection.fuse == fuse && !selection.rows.empty()) return "choice of " + row;
  return row;
}

void add_fuse_selections(PageFlow& flow) {
  const SheetContext& context = flow.context();
  const Words& words = context.words();
  if (!context.solved.study) return;
  for (const FuseSelection& selection : select_fuses(context.build(), *context.solved.study)) {
    if (!shows_fuse(context, selection.fuse.part) || selection.rows.empty()) continue;
    const std::string name = fuse_name(context.build(), selection.fuse);
    flow.add_heading(words("fuses.hangs", {{"fuse", name}}));
    flow.items().push_back(AnchorItem{choice_anchor(context, selection.fuse), flow.cursor()});
    flow.add_lead(words("fuses.hangs_text") + thinnest_text(context, selection.fuse), look::paragraph_gap);
    add_table(flow, selection_table(context, selection), look::paragraph_gap);
    flow.add_text(words("fuses.hangs_more"), look::text, look::paragraph_gap);
  }
}

}  // namespace loomfolio
