// SPDX-License-Identifier: MIT
// The situations: how the switches stand in each, what works then, and what the battery shows.
#include <algorithm>
#include <cmath>
#include <optional>
#include <utility>

#include "base/text.h"
#include "sheets/names.h"
#include "sheets/panel.h"
#include "sheets/print_text.h"
#include "sheets/reference.h"
#include "sheets/setting_text.h"
#include "sheets/sheet_makers.h"
#include "sheets/situation_sheets.h"
#include "sheets/situation_text.h"
#include "sheets/table.h"
#include "solve/bench_situations.h"

namespace loomfolio {
namespace {

/// Amperes with the direction in words: a battery that is being charged is not the same as one that gives.
Cell current_cell(const SheetContext& context, Amperes out) {
  if (std::abs(out.number()) < 0.005) return text_cell(print_amperes(Amperes(0)));
  return two_line_cell(print_amperes(out), context.words()(out.number() > 0 ? "situations.gives" : "situations.takes"));
}

/// Where the situation is drawn; the situation that looks alike, or a dash when nothing is to be seen in it.
Cell sheet_cell(const SheetContext& context, const SituationSheets& drawn, std::size_t index) {
  const int same = drawn.same_as[index];
  if (same >= 0) return text_cell(context.words()("situations.same_as", {{"number", std::to_string(same + 1)}}));
  const std::string& anchor = drawn.anchors[index];
  if (anchor.empty()) return text_cell("\u2013");
  const std::string& sheets = drawn.drawn_on[index];
  Cell cell;
  cell.lines.push_back(
      {{{sheet_mark(sheets, anchor), look::table_bold, look::accent, {sheets, anchor}}}, Align::left, {}});
  return cell;
}

Row situation_row(const SheetContext& context, const SituationSheets& drawn, std::size_t index) {
  const Build& build = context.build();
  const Situation& situation = build.situations[index];
  std::vector<std::string> settings;
  for (const Setting& setting : situation.settings) settings.push_back(setting_text(build, setting));
  if (settings.empty()) settings.push_back(context.words()("situations.all_at_rest"));
  Row row;
  row.anchor = "situation " + situation.name;
  row.cells = {
      text_cell(std::to_string(index + 1), look::table_bold),
      two_line_cell(situation_name(situation), context.words()(engine_key(situation.engine)), look::table_bold),
      lines_cell(settings)};
  if (index >= context.solved.solutions.size()) {
    row.cells.resize(7, text_cell(""));
    return row;
  }
  const Solution& solution = context.solved.solutions[index];
  const auto battery = read_battery(build, solution);
  const std::string working = working_text(build, solution, context.words());
  row.cells.push_back(text_cell(working.empty() ? context.words()("situations.nothing") : working));
  row.cells.push_back(text_cell(battery ? fixed(battery->volts.number(), 1) : ""));
  row.cells.push_back(battery ? current_cell(context, battery->amperes) : text_cell(""));
  row.cells.push_back(sheet_cell(context, drawn, index));
  return row;
}

/// A drawing has no running head; where there are several hook-ups, their names stand at the far end of its title line.
void name_hook_up(Sheet& sheet, const SheetContext& context) {
  if (context.group.empty()) return;
  const Rect body = page_of(sheet, context.input.text_paper, context.input.drawing_paper).body;
  const Millimetres title = context.measure().measure(sheet.title, look::title).width;
  const FittedText name =
      fit_text(context.group, look::group_label, body.width - title - look::gutter * 2, context.measure());
  sheet.items.push_back(TagOpenItem{"P", {}});
  add_text(sheet.items, {body.right(), body.y + Millimetres(6)}, name.text, name.style, look::grey, Align::right);
  sheet.items.push_back(TagCloseItem{});
}

bool has_gear_in(const Build& build) {
  return std::any_of(build.situations.begin(), build.situations.end(),
                     [&](const Situation& situation) { return is_in_gear(build, situation); });
}

std::vector<Sheet> make_table_sheets(const SheetContext& context, const SituationSheets& drawn) {
  const std::vector<Situation>& situations = context.build().situations;
  const Words& words = context.words();
  PageFlow flow(context, {"situations", words("situations.title"), words("situations.intro")});
  Table table;
  table.columns = {{words("situations.number"), CellAlign::near, Wrapping::keeps, 0},
                   {words("situations.situation"), CellAlign::near, Wrapping::wraps, 0.8},
                   {words("situations.switches"), CellAlign::near, Wrapping::wraps, 1},
                   {words("situations.works"), CellAlign::near, Wrapping::wraps, 1},
                   {words("situations.volts"), CellAlign::point, Wrapping::keeps, 0},
                   {words("situations.amperes"), CellAlign::point, Wrapping::keeps, 0},
                   {words("situations.drawn"), CellAlign::far, Wrapping::keeps, 0}};
  for (std::size_t i = 0; i < situations.size(); ++i) table.rows.push_back(situation_row(context, drawn, i));
  // Below another run it is not cut for the sake of the room there: a page of its own holds it whole.
  Millimetres height = table_block(table, flow.width(), flow.setting()).height;
  std::optional<Block> reminder;
  if (has_gear_in(context.build())) reminder = make_reminder(words("situations.in_gear"), flow.width(), words, flow.setting());
  if (reminder) height += look::block_gap + reminder->height;
  flow.keep_whole(height);
  if (reminder) flow.add(std::move(*reminder), look::block_gap);
  add_table(flow, table);
  return flow.take();
}

}  // namespace

std::vector<Sheet> make_situations(const SheetContext& context) {
  if (context.build().situations.empty()) return {};
  SituationSheets drawn = make_situation_sheets(context);
  std::vector<Sheet> sheets;
  if (context.extent != Extent::common) sheets = make_table_sheets(context, drawn);
  for (Sheet& sheet : drawn.sheets) {
    sheet.id = context.id_prefix + "situations" + (sheets.empty() ? "" : "-" + std::to_string(sheets.size() + 1));
    name_hook_up(sheet, context);
    sheets.push_back(std::move(sheet));
  }
  return sheets;
}

}  // namespace loomfolio
