// SPDX-License-Identifier: MIT
// The tests: without power, at first power, then in each situation. Every figure is the solver's; blanks are for the
// meter's.
#include <cmath>
#include <utility>

#include "base/text.h"
#include "check/paths.h"
#include "sheets/earth_net.h"
#include "sheets/fuse_list.h"
#include "sheets/names.h"
#include "sheets/page_flow.h"
#include "sheets/panel.h"
#include "sheets/print_text.h"
#include "sheets/readings.h"
#include "sheets/setting_text.h"
#include "sheets/sheet_makers.h"
#include "sheets/table.h"
#include "sheets/wire_cells.h"

namespace loomfolio {
namespace {

/// A box to tick.
Cell tick_cell() {
  Cell cell = text_cell("", look::text);
  const Millimetres size(3.2);
  Block box{size, size, {}};
  add_rect(box.items, {{}, {}, size, size}, {look::ink, look::line});
  cell.picture = std::move(box);
  return cell;
}

/// A line to write on.
Cell blank_cell() {
  Cell cell = text_cell("", look::text);
  Block line{Millimetres(15), Millimetres(4.4), {}};
  add_line(line.items, {{}, line.height}, {line.width, line.height}, {look::grey, look::line});
  cell.picture = std::move(line);
  return cell;
}

class TestPages {
 public:
  explicit TestPages(const SheetContext& context)
      : context_(context),
        build_(context.build()),
        words_(context.words()),
        poles_(pole_names(context.build(), context.words())),
        flow_(context, {"tests", words_("tests.title"), words_("tests.intro", poles_)}) {}

  std::vector<Sheet> make() {
    flow_.add(make_panel(panel_from_words(words_, Signal::warning, "tests.panel", poles_), flow_.width(), words_,
                         flow_.setting()),
              {});
    add_without_power();
    add_first_power();
    add_situations();
    return flow_.take();
  }

 private:
  /// Numbered actions of the words: `key`_1, `key`_2 ...
  void add_actions(const std::string& key) {
    Table table;
    table.columns = {{"", CellAlign::near, Wrapping::keeps, 0},
                     {"", CellAlign::near, Wrapping::keeps, 0},
                     {words_("tests.action"), CellAlign::near, Wrapping::wraps, 1},
                     {words_("tests.result"), CellAlign::near, Wrapping::wraps, 1}};
    for (int i = 1; words_.has(key + "_" + std::to_string(i)); ++i) {
      const std::string name = key + "_" + std::to_string(i);
      const std::string result = words_.has(name + "_result") ? words_(name + "_result", poles_) : "";
      table.rows.push_back({{text_cell(std::to_string(i), look::heading), tick_cell(),
                             text_cell(words_(name, poles_), look::text), text_cell(result, look::text)}});
    }
    add_table(flow_, table, look::paragraph_gap);
  }

  void add_without_power() {
    flow_.add_heading(words_("tests.without_power"), Millimetres(50));
    add_actions("tests.cold");
    Table table;
    table.columns = {{"", CellAlign::near, Wrapping::keeps, 0},
                     {words_("tests.earth_terminal"), CellAlign::near, Wrapping::wraps, 1},
                     {words_("tests.by_wire"), CellAlign::near, Wrapping::wraps, 0.5},
                     {words_("tests.expect"), CellAlign::near, Wrapping::wraps, 0.5}};
    const std::vector<bool> is_earthed = find_earth_net(build_);
    const auto wires = wires_at_terminals(build_);
    for (std::size_t t = 0; t < build_.terminals.size(); ++t) {
      const TerminalId id{static_cast<std::int32_t>(t)};
      if (!is_earthed[t] || wires[t].empty() || build_.terminal(id).owner != OwnerType::part || is_at_source(id))
        continue;
      table.rows.push_back({{tick_cell(), terminal_cell(context_, id, {}), text_cell(list_wires(wires[t])),
                             text_cell(words_("tests.beep"))}});
    }
    if (table.rows.empty()) return;
    flow_.add_text(words_("tests.earths", poles_), look::text, look::block_gap);
    add_table(flow_, table, look::paragraph_gap);
  }

  bool is_at_source(TerminalId id) const {
    const Part& part = build_.parts[static_cast<std::size_t>(build_.terminal(id).owner_index)];
    for (const Inside& inside : part.insides)
      if (inside.type == InsideType::source) return true;
    return false;
  }

  std::string list_wires(const std::vector<WireId>& wires) const {
    std::vector<std::string> ids;
    for (const WireId wire : wires) ids.push_back(build_.wire(wire).id);
    return join(ids, ", ");
  }

  void add_first_power() {
    flow_.add_heading(words_("tests.first_power"), Millimetres(50));
    add_actions("tests.power");
    const std::vector<InsideRef> fuses = list_fuses(build_);
    if (fuses.empty()) return;
    Table table;
    table.columns = {{"", CellAlign::near, Wrapping::keeps, 0},
                     {words_("fuses.position"), CellAlign::near, Wrapping::wraps, 1},
                     {words_("fuses.fuse"), CellAlign::near, Wrapping::keeps, 0.4},
                     {words_("tests.expect"), CellAlign::near, Wrapping::wraps, 1}};
    for (const InsideRef fuse : fuses) {
      const Inside& inside = inside_of(build_, fuse);
      table.rows.push_back(
          {{tick_cell(), text_cell(fuse_name(build_, fuse), look::table_bold),
            text_cell(inside.rating ? print_rating(*inside.rating) : ""), text_cell(words_("tests.fuse_holds"))}});
    }
    flow_.add_text(words_("tests.fuses"), look::text, look::block_gap);
    add_table(flow_, table, look::paragraph_gap);
  }

  void add_situations() {
    const std::vector<SituationReadings> all = find_readings(context_.solved);
    if (all.empty()) return;
    const std::string tolerance = shortest(reading_tolerance(build_.electrics).number(), 2);
    flow_.add_heading(words_("tests.in_situations"), Millimetres(60));
    flow_.add_text(words_("tests.situations_text", {{"tolerance", tolerance}, {"earthed", poles_.front().second}}),
                   look::text, look::paragraph_gap);
    for (const SituationReadings& readings : all) add_situation(readings);
  }

  void add_situation(const SituationReadings& readings) {
    if (readings.readings.empty() && readings.stay_off.empty()) return;
    const Situation& situation = build_.situations[readings.situation.at()];
    flow_.keep(Millimetres(45));
    flow_.add(set_paragraph({{{std::to_string(readings.situation.index + 1) + "  ", look::heading, look::ink, {}},
                              {situation_name(situation), look::text_bold, look::ink, {}}},
                             Align::left,
                             "H3"},
                            flow_.width(), flow_.setting()),
              look::block_gap);
    std::vector<std::string> settings;
    for (const Setting& setting : situation.settings) settings.push_back(setting_text(build_, setting));
    const std::string set = settings.empty() ? words_("situations.all_at_rest") : join(settings, "; ");
    flow_.add_text(words_("tests.set", {{"switches", set}, {"engine", words_(engine_key(situation.engine))}}),
                   look::text, Millimetres(0));
    if (!readings.readings.empty()) add_table(flow_, readings_table(readings), look::paragraph_gap);
    if (readings.stay_off.empty()) return;
    std::vector<NamedElement> elements;
    for (const InsideRef what : readings.stay_off) elements.push_back({what, {}});
    flow_.add_text(words_("tests.stay_off", {{"list", list_elements(build_, elements)}}), look::text,
                   look::paragraph_gap);
  }

  Table readings_table(const SituationReadings& readings) const {
    Table table;
    table.columns = {{"", CellAlign::near, Wrapping::keeps, 0},
                     {words_("tests.works"), CellAlign::near, Wrapping::wraps, 1},
                     {words_("tests.red_probe"), CellAlign::near, Wrapping::wraps, 1},
                     {words_("tests.volts"), CellAlign::point, Wrapping::keeps, 0},
                     {words_("tests.limits"), CellAlign::near, Wrapping::keeps, 0},
                     {words_("tests.return"), CellAlign::point, Wrapping::keeps, 0},
                     {words_("tests.yours"), CellAlign::near, Wrapping::keeps, 0}};
    const double tolerance = reading_tolerance(build_.electrics).number();
    for (const ExpectedReading& reading : readings.readings) {
      const double volts = reading.feed_volts.number();
      const bool has_return = reading.back.is_set() && !std::isnan(reading.back_volts.number());
      table.rows.push_back(
          {{tick_cell(), text_cell(inside_name(build_, reading.consumer) + state_note(reading.state), look::table_bold),
            terminal_cell(context_, reading.feed, {}), text_cell(fixed(volts, 1)),
            text_cell(
                words_("tests.range", {{"least", fixed(volts - tolerance, 1)}, {"most", fixed(volts + tolerance, 1)}})),
            text_cell(has_return ? fixed(reading.back_volts.number(), 1) : ""), blank_cell()}});
    }
    return table;
  }

  std::string state_note(Expected state) const {
    if (state == Expected::flashing) return " " + words_("situations.flashing");
    if (state == Expected::dim) return " " + words_("situations.dim");
    return {};
  }

  const SheetContext& context_;
  const Build& build_;
  const Words& words_;
  std::vector<std::pair<std::string, std::string>> poles_;
  PageFlow flow_;
};

}  // namespace

std::vector<Sheet> make_tests(const SheetContext& context) {
  if (context.build().wires.empty()) return {};
  return TestPages(context).make();
}

}  // namespace loomfolio
