// SPDX-License-Identifier: MIT
// The battery's household: what each ride takes and the generator can give, how long the machine may stand, what the
// starter gets from a warm and from a cold battery, and what these figures rest on.
#include <algorithm>
#include <cmath>
#include <utility>

#include "base/text.h"
#include "sheets/hook_up_tables.h"
#include "sheets/hook_ups.h"
#include "sheets/names.h"
#include "sheets/page_flow.h"
#include "sheets/print_text.h"
#include "sheets/sheet_makers.h"
#include "sheets/table.h"
#include "solve/battery.h"
#include "solve/defaults.h"

namespace loomfolio {
namespace {

constexpr double year = 365;

/// A hook-up with its study; one where the context shows a whole build.
struct Studied {
  SheetContext context;
  BatteryStudy study;

  const Words& words() const { return context.words(); }
};

const Inside* first_battery(const Build& build) {
  for (const Part& part : build.parts)
    for (const Inside& inside : part.insides)
      if (inside.type == InsideType::source) return &inside;
  return nullptr;
}

std::vector<Studied> study_hook_ups(const SheetContext& context) {
  std::vector<SheetContext> contexts{context};
  if (context.extent == Extent::common) contexts = own_contexts(context);
  std::vector<Studied> studied;
  for (SheetContext& one : contexts) {
    BatteryStudy study = study_battery(one.build(), one.solved.solutions);
    studied.push_back({std::move(one), std::move(study)});
  }
  return studied;
}

std::string print_small_amperes(Amperes current) {
  const double size = current.number();
  if (size < 0.0995) return shortest(size * 1000, size < 0.00995 ? 1 : 0) + "\u00a0mA";
  return print_amperes(current) + "\u00a0A";
}

/// With its sign where it is below nothing.
std::string print_balance(Amperes current) {
  const std::string size = fixed(std::abs(current.number()), 1);
  return (current.number() < 0 && size != "0.0" ? "\u2212" : "") + size;
}

std::string print_charge(double share) {
  return fixed(share * 100, 0) + "\u00a0%";
}

const std::string& name_of(const Studied& one, SituationId situation) {
  return situation_name(one.context.build().situations[situation.at()]);
}

Table riding_table(const Studied& one) {
  const Words& words = one.words();
  Table table;
  table.columns = {{words("battery.situation"), CellAlign::near, Wrapping::wraps, 1},
                   {words("battery.takes"), CellAlign::point, Wrapping::keeps, 0},
                   {words("battery.can_give"), CellAlign::point, Wrapping::keeps, 0},
                   {words("battery.left_over"), CellAlign::point, Wrapping::keeps, 0},
                   {words("battery.volts"), CellAlign::point, Wrapping::keeps, 0}};
  for (const ChargeBalance& balance : one.study.riding) {
    const bool has_limit = balance.most.number() > 0;
    const bool empties = balance.battery.number() < -0.05;
    table.rows.push_back({{two_line_cell(name_of(one, balance.situation), empties ? words("battery.empties") : ""),
                           text_cell(print_balance(balance.loads)),
                           text_cell(has_limit ? print_balance(balance.most) : words("battery.not_stated")),
                           text_cell(has_limit ? print_balance(balance.most - balance.loads) : ""),
                           text_cell(fixed(balance.at_battery.number(), 1))}});
  }
  return table;
}

std::string days_text(const Studied& one, const RestDrain& rest) {
  if (rest.capacity.number() <= 0) return one.words()("battery.unknown");
  if (rest.days_to_no_crank > year) return one.words()("battery.long");
  return fixed(std::floor(rest.days_to_no_crank), 0);
}

Table rest_table(const Studied& one) {
  const Words& words = one.words();
  Table table;
  table.columns = {{words("battery.what"), CellAlign::near, Wrapping::wraps, 1},
                   {words("battery.figure"), CellAlign::near, Wrapping::keeps, 1}};
  if (!one.study.rest) return table;
  const RestDrain& rest = *one.study.rest;
  const auto add = [&](std::string_view key, std::string figure) {
    table.rows.push_back({{text_cell(words(key)), text_cell(std::move(figure))}});
  };
  add("battery.drain", print_small_amperes(rest.drain));
  if (rest.capacity.number() > 0) {
    add("battery.self", print_small_amperes(rest.self));
    add("battery.capacity", shortest(rest.capacity.number(), 1) + "\u00a0Ah");
  }
  add(one.study.cranking.empty() ? "battery.charge_taken" : "battery.charge", print_charge(rest.least_charge));
  table.rows.push_back(
      {{text_cell(words(one.study.cranking.empty() ? "battery.days_taken" : "battery.days"), look::table_bold), text_cell(days_text(one, rest), look::table_bold)}});
  return table;
}

Cell poles_cell(const Studied& one, Volts poles) {
  const bool is_low = poles < one.context.build().electrics.cranking;
  return two_line_cell(print_volts(poles), is_low ? one.words()("battery.below_that") : "");
}

/// Warm and cold side by side, in one line: neither a page's end nor another hook-up comes between them, and no
/// situation looks as if it were one of the two.
Row cranking_row(const Studied& one, const std::vector<std::string>& names, const CrankingVolts& c) {
  return {{lines_cell(names), poles_cell(one, c.warm_battery), text_cell(print_volts(c.warm_motor), look::table_bold),
           text_cell(fixed(c.warm_amperes.number(), 0)), poles_cell(one, c.cold_battery),
           text_cell(print_volts(c.cold_motor), look::table_bold), text_cell(fixed(c.cold_amperes.number(), 0))}};
}

/// What the row of one situation prints.
std::string print_figures(const CrankingVolts& c) {
  return join({print_volts(c.warm_battery), print_volts(c.warm_motor), fixed(c.warm_amperes.number(), 0),
               print_volts(c.cold_battery), print_volts(c.cold_motor), fixed(c.cold_amperes.number(), 0)},
              " ");
}

/// Situations that print the same share their row.
Table cranking_table(const Studied& one) {
  const Words& words = one.words();
  Table table;
  table.columns = {{words("battery.situation"), CellAlign::near, Wrapping::wraps, 1}};
  for (const char* at : {"25\u00a0°C", "\u221218\u00a0°C"})
    for (const char* figure : {"battery.at_poles", "battery.at_starter", "battery.starter_amperes"})
      table.columns.push_back({std::string(at) + " " + words(figure), CellAlign::near, Wrapping::keeps, 0});
  const std::vector<CrankingVolts>& all = one.study.cranking;
  for (std::size_t i = 0; i < all.size(); ++i) {
    const auto is_alike = [&](const CrankingVolts& c) { return print_figures(c) == print_figures(all[i]); };
    if (std::any_of(all.begin(), all.begin() + static_cast<std::ptrdiff_t>(i), is_alike)) continue;
    std::vector<std::string> names;
    for (const CrankingVolts& c : all)
      if (is_alike(c)) names.push_back(name_of(one, c.situation));
    table.rows.push_back(cranking_row(one, names, all[i]));
  }
  return table;
}

/// A heading, its text and the table, of all hook-ups in one; nothing where no table has a row.
void add_part(PageFlow& flow, const std::vector<Studied>& studied, Table (*make)(const Studied&), std::string_view heading,
              const std::string& text) {
  std::vector<HookUpTable> tables;
  for (const Studied& one : studied) tables.push_back({one.context.build_index, make(one)});
  const Table table = merge_tables(flow.context(), std::move(tables), {1, std::nullopt});
  if (table.rows.empty()) return;
  flow.add_heading(flow.context().words()(heading));
  flow.add_lead(text, look::paragraph_gap);
  add_table(flow, table, look::paragraph_gap);
}

/// The battery's ohms, and from where.
std::vector<std::string> ohms_texts(const Words& words, const Inside& battery) {
  if (battery.resistance)
    return {words("battery.taken_ohms", {{"ohms", fixed(battery.resistance->number(), 3)}})};
  if (!battery.cranking && !battery.capacity) return {words("battery.taken_nothing")};
  std::vector<std::string> texts;
  if (!battery.cranking) texts.push_back(words("battery.taken_guess"));
  const double cranking = battery.cranking ? battery.cranking->number()
                                           : battery.capacity->number() * standard::cranking_per_ampere_hour;
  texts.push_back(words("battery.taken_cranking", {{"amperes", fixed(cranking, 0)}}));
  return texts;
}

void add_grounds(PageFlow& flow, const Build& build, const Inside& battery) {
  const Words& words = flow.context().words();
  flow.add_heading(words("battery.taken"));
  std::vector<std::string> texts{
      words("battery.scope") + " " +
      words("battery.taken_full", {{"volts", shortest(build.electrics.resting.number(), 2)}})};
  for (std::string& text : ohms_texts(words, battery)) texts.push_back(std::move(text));
  texts.push_back(words("battery.taken_rest"));
  for (const std::string& text : texts) flow.add_text(text, look::text, look::paragraph_gap);
}

}  // namespace

std::vector<Sheet> make_battery(const SheetContext& context) {
  const Inside* battery = first_battery(context.build());
  if (context.extent == Extent::own || battery == nullptr || context.solved.solutions.empty()) return {};
  const std::vector<Studied> studied = study_hook_ups(context);
  const Words& words = context.words();
  const bool cranks = std::any_of(studied.begin(), studied.end(), [](const Studied& one) { return !one.study.cranking.empty(); });
  PageFlow flow(context, {"battery", words("battery.title"), words(cranks ? "battery.intro" : "battery.intro_no_starter")});
  add_part(flow, studied, riding_table, "battery.riding", words("battery.riding_text"));
  add_part(flow, studied, rest_table, "battery.rest", words("battery.rest_text"));
  const std::string least = shortest(context.build().electrics.cranking.number(), 2);
  add_part(flow, studied, cranking_table, "battery.cranking",
           words("battery.cranking_text", {{"volts", least}}) + " " + words("battery.cold_motor"));
  add_grounds(flow, context.build(), *battery);
  return flow.take();
}

}  // namespace loomfolio
