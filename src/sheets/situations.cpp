// SPDX-License-Identifier: MIT
// The situations: how the switches stand in each, what works then, and what the battery shows.
#include <cmath>

#include "base/text.h"
#include "sheets/names.h"
#include "sheets/print_text.h"
#include "sheets/setting_text.h"
#include "sheets/sheet_makers.h"
#include "sheets/table.h"

namespace loomfolio {
namespace {

bool is_worth_listing(const Inside& inside) {
  return inside.type == InsideType::lamp || inside.type == InsideType::motor || inside.type == InsideType::load ||
         inside.type == InsideType::charger;
}

/// Everything that a person sees or hears working, with how when not plainly on.
std::string working_text(const SheetContext& context, const Solution& solution) {
  const Build& build = context.build();
  std::vector<NamedElement> elements;
  for (std::size_t p = 0; p < build.parts.size(); ++p)
    for (std::size_t i = 0; i < build.parts[p].insides.size(); ++i) {
      const Inside& inside = build.parts[p].insides[i];
      if (!is_worth_listing(inside)) continue;
      const Expected seen = observed(inside, solution.insides[p][i]);
      if (seen == Expected::off) continue;
      std::string note;
      if (seen == Expected::flashing) note = context.words()("situations.flashing");
      if (seen == Expected::dim) note = context.words()("situations.dim");
      elements.push_back({{PartId{static_cast<std::int32_t>(p)}, static_cast<int>(i)}, std::move(note)});
    }
  return list_elements(build, elements);
}

struct BatteryReading {
  Volts volts;
  Amperes amperes;  ///< out of the battery
};

/// The first source of the build: its poles' difference and what it gives.
std::optional<BatteryReading> read_battery(const Build& build, const Solution& solution) {
  for (std::size_t p = 0; p < build.parts.size(); ++p)
    for (std::size_t i = 0; i < build.parts[p].insides.size(); ++i) {
      if (build.parts[p].insides[i].type != InsideType::source) continue;
      const InsideState& state = solution.insides[p][i];
      return BatteryReading{state.volts, -state.amperes};
    }
  return std::nullopt;
}

Cell lines_cell(const std::vector<std::string>& lines) {
  Cell cell;
  for (const std::string& line : lines) cell.lines.push_back({{{line, look::table, look::ink, {}}}, Align::left, {}});
  return cell;
}

/// Amperes with the direction in words: a battery that is being charged is not the same as one that gives.
Cell current_cell(const SheetContext& context, Amperes out) {
  if (std::abs(out.number()) < 0.005) return text_cell(print_amperes(Amperes(0)));
  return two_line_cell(print_amperes(out), context.words()(out.number() > 0 ? "situations.gives" : "situations.takes"));
}

Row situation_row(const SheetContext& context, std::size_t index) {
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
    row.cells.resize(6, text_cell(""));
    return row;
  }
  const Solution& solution = context.solved.solutions[index];
  const auto battery = read_battery(build, solution);
  const std::string working = working_text(context, solution);
  row.cells.push_back(text_cell(working.empty() ? context.words()("situations.nothing") : working));
  row.cells.push_back(text_cell(battery ? fixed(battery->volts.number(), 1) : ""));
  row.cells.push_back(battery ? current_cell(context, battery->amperes) : text_cell(""));
  return row;
}

}  // namespace

std::vector<Sheet> make_situations(const SheetContext& context) {
  const std::vector<Situation>& situations = context.build().situations;
  if (situations.empty()) return {};
  const Words& words = context.words();
  PageFlow flow(context, {"situations", words("situations.title"), words("situations.intro")});
  Table table;
  table.columns = {{words("situations.number"), CellAlign::near, Wrapping::keeps, 0},
                   {words("situations.situation"), CellAlign::near, Wrapping::wraps, 0.8},
                   {words("situations.switches"), CellAlign::near, Wrapping::wraps, 1},
                   {words("situations.works"), CellAlign::near, Wrapping::wraps, 1},
                   {words("situations.volts"), CellAlign::point, Wrapping::keeps, 0},
                   {words("situations.amperes"), CellAlign::point, Wrapping::keeps, 0}};
  for (std::size_t i = 0; i < situations.size(); ++i) table.rows.push_back(situation_row(context, i));
  add_table(flow, table);
  return flow.take();
}

}  // namespace loomfolio
