// SPDX-License-Identifier: MIT
// The tests: without power, at first power, then in each situation. Every figure is the solver's; blanks are for the
// meter's.
#include <cmath>
#include <iterator>
#include <utility>

#include "base/text.h"
#include "check/paths.h"
#include "sheets/cold_tests.h"
#include "sheets/earth_net.h"
#include "sheets/fault_pages.h"
#include "sheets/fuse_order.h"
#include "sheets/names.h"
#include "sheets/page_flow.h"
#include "sheets/panel.h"
#include "sheets/print_text.h"
#include "sheets/readings.h"
#include "sheets/reference.h"
#include "sheets/setting_text.h"
#include "sheets/sheet_makers.h"
#include "sheets/table.h"
#include "sheets/wire_cells.h"
#include "solve/meter.h"
#include "solve/reading_limits.h"

namespace loomfolio {
namespace {

/// A box to tick, as high as the row's letters.
Cell tick_cell() {
  Cell cell = text_cell("", look::table);
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
  TestPages(const SheetContext& context, const FaultPlan& faults)
      : context_(context),
        build_(context.build()),
        words_(context.words()),
        faults_(faults),
        poles_(pole_names(context.build(), context.words())),
        flow_(context, {"tests", words_("tests.title"), words_("tests.intro", poles_)}) {}

  std::vector<Sheet> make() {
    flow_.add(make_panel(panel_from_words(words_, Signal::warning, "tests.panel", poles_), flow_.width(), words_,
                         flow_.setting()),
              {});
    add_without_power();
    add_first_power();
    add_situations();
    add_signature();
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
    flow_.items().push_back(AnchorItem{"cold", {}});
    add_actions("tests.cold");
    add_earth_ohms();
    add_insulation();
    add_part_ohms();
  }

  /// Connectors are left out: nobody gets a probe into a joined one, and the part behind it proves them.
  void add_earth_ohms() {
    Table table = ohms_table(words_("tests.earth_terminal"), words_("tests.by_wire"));
    const std::vector<bool> is_earthed = find_earth_net(build_);
    const auto wires = wires_at_terminals(build_);
    for (std::size_t t = 0; t < build_.terminals.size(); ++t) {
      const TerminalId id{static_cast<std::int32_t>(t)};
      if (!is_earthed[t] || wires[t].empty() || build_.terminal(id).owner != OwnerType::part || is_at_source(id) ||
          is_at_connector(id))
        continue;
      const double ohms = read_ohms(build_, Situation{}, id, earthed_pole(build_)).number;
      if (std::isinf(ohms)) continue;  // through a switch that is open at rest
      table.rows.push_back(
          {{tick_cell(), terminal_cell(context_, id, {}), text_cell(list_wires(way_to_earth(build_, id))),
            text_cell(words_("tests.beep_ohms", {{"ohms", print_ohms(beep_limit(ohms))}})), blank_cell()}});
    }
    if (table.rows.empty()) return;
    flow_.add_text(words_("tests.earths", poles_), look::text, look::block_gap);
    add_table(flow_, table, look::paragraph_gap);
  }

  bool is_at_connector(TerminalId id) const {
    return build_.kind_of(build_.parts[static_cast<std::size_t>(build_.terminal(id).owner_index)]).is_connector;
  }

  /// Tick box, what, a second column, what must be, and a line to write on.
  Table ohms_table(const std::string& what, const std::string& second) const {
    Table table;
    table.columns = {{"", CellAlign::near, Wrapping::keeps, 0},
                     {what, CellAlign::near, Wrapping::wraps, 1},
                     {second, CellAlign::near, Wrapping::wraps, 0.5},
                     {words_("tests.expect"), CellAlign::near, Wrapping::wraps, 0.5},
                     {words_("tests.yours"), CellAlign::near, Wrapping::keeps, 0}};
    return table;
  }

  void add_insulation() {
    Table table = ohms_table(words_("tests.red_probe"), words_("fuses.fuse"));
    for (const InsulationTest& test : find_insulation_tests(build_)) {
      const std::string least = print_ohms(rounded_down(test.least));
      const std::string must = test.is_open
                                   ? words_("tests.no_beep")
                                   : words_(test.beeps ? "tests.low_ohms" : "tests.high_ohms", {{"ohms", least}});
      table.rows.push_back({{tick_cell(), terminal_cell(context_, test.at, {}), text_cell(fuse_name(build_, test.fuse)),
                             text_cell(must), blank_cell()}});
    }
    if (table.rows.empty()) return;
    flow_.keep(Millimetres(40));
    flow_.add_text(words_("tests.insulation"), look::text, look::block_gap);
    add_table(flow_, table, look::paragraph_gap);
  }

  void add_part_ohms() {
    Table table = ohms_table(words_("tests.part"), words_("tests.across"));
    for (const PartOhms& part : find_part_ohms(build_))
      table.rows.push_back(
          {{tick_cell(), text_cell(inside_name(build_, part.what), look::table_bold),
            text_cell(part.first + " \u2013 " + part.second), text_cell(ohms_text(part)), blank_cell()}});
    if (table.rows.empty()) return;
    flow_.keep(Millimetres(40));
    flow_.add_text(words_("tests.part_ohms"), look::text, look::block_gap);
    add_table(flow_, table, look::paragraph_gap);
  }

  /// A pocket meter cannot tell tenths of an ohm from its leads.
  std::string ohms_text(const PartOhms& part) const {
    const double most = std::ceil(part.most.number());
    if (most <= 2) return words_("tests.ohms_low", {{"most", print_ohms(Ohms(most))}});
    return words_(
        "tests.ohms_range",
        {{"ohms", print_ohms(part.ohms)}, {"least", print_ohms(part.least)}, {"most", print_ohms(part.most)}});
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
    flow_.items().push_back(AnchorItem{"first", {}});
    add_actions("tests.power");
    const std::vector<FuseTrial> trials = order_fuses(build_);
    if (trials.empty()) return;
    const bool is_kit = build_.document.scope == Scope::kit;
    flow_.add_text(words_("tests.fuses") + (is_kit ? " " + words_("tests.fuses_kit") : ""), look::text,
                   look::block_gap);
    add_table(flow_, trial_table(trials), look::paragraph_gap);
    flow_.add_text(words_("tests.fuses_end", {{"sheet", sheet_mark("steps")}}), look::text_bold, look::paragraph_gap);
  }

  /// Fuses in the order in which each has supply when it goes in; heads say what to switch, and which test fuse.
  Table trial_table(const std::vector<FuseTrial>& trials) const {
    Table table;
    table.columns = {{"", CellAlign::near, Wrapping::keeps, 0},
                     {words_("fuses.position"), CellAlign::near, Wrapping::wraps, 1},
                     {words_("fuses.fuse"), CellAlign::near, Wrapping::keeps, 0},
                     {words_("tests.battery_gives"), CellAlign::near, Wrapping::keeps, 0},
                     {words_("tests.expect"), CellAlign::near, Wrapping::wraps, 1}};
    std::string said;
    Amperes test_fuse = trial_fuse(Amperes(0));
    for (const FuseTrial& trial : trials) {
      const std::string head = settings_head(trial);
      if (head != said) table.rows.push_back(group_row(head));
      said = head;
      const Amperes needed = trial_fuse(trial.drawn);
      if (needed > test_fuse) {
        auto values = poles_;
        values.emplace_back("rating", print_rating(needed));
        table.rows.push_back(group_row(words_("tests.larger_test_fuse", values)));
        test_fuse = needed;
      }
      const Inside& inside = inside_of(build_, trial.fuse);
      table.rows.push_back(
          {{tick_cell(), text_cell(fuse_name(build_, trial.fuse), look::table_bold),
            text_cell(inside.rating ? print_rating(*inside.rating) : ""),
            text_cell(trial.has_supply ? words_("tests.about", {{"amperes", fixed(trial.drawn.number(), 1)}}) : ""),
            text_cell(words_(trial.has_supply ? "tests.fuse_holds" : "tests.fuse_later"))}});
    }
    return table;
  }

  std::string settings_head(const FuseTrial& trial) const {
    if (!trial.has_supply) return words_("tests.no_supply");
    if (trial.settings.empty()) return words_("tests.key_off");
    return words_("tests.then_set", {{"switches", list_settings(trial.settings)}});
  }

  std::string list_settings(const std::vector<Setting>& settings) const {
    std::vector<std::string> texts;
    for (const Setting& setting : settings) texts.push_back(setting_text(build_, setting));
    return texts.empty() ? words_("situations.all_at_rest") : join(texts, "; ");
  }

  void add_situations() {
    const std::vector<SituationReadings> all = find_readings(context_.solved);
    if (all.empty()) return;
    flow_.add_heading(words_("tests.in_situations"), Millimetres(60));
    flow_.items().push_back(AnchorItem{"live", {}});
    flow_.add_text(words_("tests.situations_text", poles_), look::text, look::paragraph_gap);
    for (const SituationReadings& readings : all) add_situation(readings);
  }

  void add_situation(const SituationReadings& readings) {
    if (readings.readings.empty() && readings.stay_off.empty()) return;
    const Situation& situation = build_.situations[readings.situation.at()];
    add_hazards(readings);
    flow_.keep(Millimetres(50));
    flow_.add(set_paragraph({{{std::to_string(readings.situation.index + 1) + "  ", look::heading, look::ink, {}},
                              {situation_name(situation), look::text_bold, look::ink, {}}},
                             Align::left,
                             "H3"},
                            flow_.width(), flow_.setting()),
              look::block_gap);
    flow_.add_text(words_(engine_setting_key(situation.engine), {{"switches", list_settings(readings.settings)}}),
                   look::text, Millimetres(0));
    add_table(flow_, readings_table(readings), look::paragraph_gap);
  }

  static std::string_view engine_setting_key(EngineState engine) {
    switch (engine) {
      case EngineState::stopped:
        return "tests.set_stopped";
      case EngineState::cranking:
        return "tests.set_cranking";
      case EngineState::running:
        return "tests.set_running";
    }
    return {};
  }

  /// Exhaust gas once, a cranking engine once, a wheel that may turn before each test in gear.
  void add_hazards(const SituationReadings& readings) {
    const EngineState engine = build_.situations[readings.situation.at()].engine;
    if (engine == EngineState::running && !has_said_exhaust_) add_hazard("tests.exhaust");
    has_said_exhaust_ = has_said_exhaust_ || engine == EngineState::running;
    if (engine == EngineState::cranking && !has_said_cranking_) add_hazard("tests.cranking");
    has_said_cranking_ = has_said_cranking_ || engine == EngineState::cranking;
    const bool moves = engine != EngineState::stopped || watches_motor(readings);
    if (readings.gear != Gear::in || !moves) return;
    if (has_said_gear_) return add_reminder();
    add_hazard("tests.in_gear");
    has_said_gear_ = true;
  }

  /// The warning stands in full on the page before, or on this one: here its word and what to do.
  void add_reminder() {
    const Millimetres width = flow_.width(), triangle(5), text_x = triangle + Millimetres(2);
    Block text = set_text(words_("signal.warning") + ": " + words_("tests.in_gear_again"), look::text_bold,
                          width - text_x, flow_.setting());
    Block block{width, std::max(text.height, triangle), {}};
    const bool is_right_to_left = flow_.setting().is_right_to_left;
    place_block(block.items, alert_triangle(triangle, look::safety_orange, look::ink),
                {is_right_to_left ? width - triangle : Millimetres(0), {}});
    place_block(block.items, std::move(text), {is_right_to_left ? Millimetres(0) : text_x, {}});
    flow_.keep(block.height + Millimetres(45));
    flow_.add(std::move(block), look::block_gap);
  }

  void add_hazard(const std::string& key) {
    Block panel =
        make_panel(panel_from_words(words_, Signal::warning, key, poles_), flow_.width(), words_, flow_.setting());
    flow_.keep(panel.height + Millimetres(45));
    flow_.add(std::move(panel), look::block_gap);
  }

  /// A motor must stay still, and might not.
  bool watches_motor(const SituationReadings& readings) const {
    for (const InsideRef what : readings.stay_off)
      for (const Inside& inside : build_.part(what.part).insides)
        if (inside.type == InsideType::motor) return true;
    return false;
  }

  Table readings_table(const SituationReadings& readings) const {
    Table table;
    table.columns = {{"", CellAlign::near, Wrapping::keeps, 0},
                     {words_("tests.works"), CellAlign::near, Wrapping::wraps, 1},
                     {words_("tests.red_probe"), CellAlign::near, Wrapping::wraps, 1},
                     {words_("tests.volts"), CellAlign::point, Wrapping::keeps, 0},
                     {words_("tests.limits"), CellAlign::near, Wrapping::keeps, 0},
                     {words_("tests.return"), CellAlign::near, Wrapping::keeps, 0},
                     {words_("tests.yours"), CellAlign::near, Wrapping::keeps, 0},
                     {words_("tests.else"), CellAlign::near, Wrapping::keeps, 0}};
    const Build tested = as_tested(build_, readings);
    const ReadingLimits limits = find_reading_limits(tested, solve_situation(tested, readings.situation));
    for (const ExpectedReading& reading : readings.readings) {
      const bool has_return = reading.back.is_set() && !std::isnan(reading.back_volts.number());
      const std::string back =
          has_return ? terminal_mark(build_, reading.back) + ": " + range_text(limits, reading.back) : std::string();
      table.rows.push_back(
          {{tick_cell(), text_cell(inside_name(build_, reading.consumer) + state_note(reading.state), look::table_bold),
            terminal_cell(context_, reading.feed, {}), volts_cell(reading), text_cell(range_text(limits, reading.feed)),
            text_cell(back), blank_cell(), else_cell(reading.consumer)}});
    }
    for (const InsideRef what : readings.stay_off)
      table.rows.push_back(
          {{tick_cell(), text_cell(words_("tests.stays_off", {{"what", off_name(what)}}), look::table_bold),
            text_cell(""), text_cell(""), text_cell(words_("tests.off")), text_cell(""), blank_cell(),
            else_cell(what)}});
    return table;
  }

  std::string off_name(InsideRef what) const {
    return what.inside < 0 ? build_.part(what.part).label : inside_name(build_, what);
  }

  /// A meter does not settle on a lamp that flashes.
  Cell volts_cell(const ExpectedReading& reading) const {
    if (reading.state == Expected::flashing) return text_cell("");
    return text_cell(fixed(reading.feed_volts.number(), 1));
  }

  /// Rounded outwards to the tenth that is printed. Readings near 0 V begin at 0.
  std::string range_text(const ReadingLimits& limits, TerminalId at) const {
    const double least = limits.least[at.at()].number(), most = limits.most[at.at()].number();
    const bool is_near_nothing = least < 0 && most > 0;
    return words_("tests.range", {{"least", is_near_nothing ? fixed(0, 1) : fixed(std::floor(least * 10) / 10, 1)},
                                  {"most", fixed(std::ceil(most * 10) / 10, 1)}});
  }

  /// The fault chart for a consumer that fails; the list of charts when it has none of its own.
  Cell else_cell(InsideRef consumer) const {
    if (faults_.charts.empty()) return text_cell("");
    const int chart = faults_.chart_for(consumer);
    const std::string number = chart < 0 ? std::string() : fault_page_number(static_cast<std::size_t>(chart), words_);
    const LinkTarget target{context_.id_prefix + "faults", number};
    const std::string sheet = words_("tests.sheet", {{"sheet", sheet_mark(target.sheet, number)}});
    const std::string text = chart < 0 ? sheet : number + ", " + sheet;
    return Cell{{{{{text, look::table_bold, look::accent, target}}, Align::left, {}}}};
  }

  /// Who tested, when and with what: the shop's proof.
  void add_signature() {
    std::vector<std::string> heads;
    for (int i = 1; words_.has("tests.sign_" + std::to_string(i)); ++i)
      heads.push_back(words_("tests.sign_" + std::to_string(i)));
    if (heads.empty()) return;
    const Millimetres height(16), column = flow_.width() / static_cast<double>(heads.size());
    Block block{flow_.width(), height, {}};
    for (std::size_t i = 0; i < heads.size(); ++i) {
      const Millimetres x = column * static_cast<double>(flow_.setting().is_right_to_left ? heads.size() - 1 - i : i);
      add_line(block.items, {x, height - Millimetres(5)}, {x + column - look::gutter, height - Millimetres(5)},
               {look::ink, look::line});
      add_text(block.items, {x, height - Millimetres(1)}, heads[i], look::table, look::grey);
    }
    flow_.add_heading(words_("tests.signed"), height);
    flow_.add(std::move(block), {});
  }

  std::string state_note(Expected state) const {
    if (state == Expected::flashing) return " " + words_("situations.flashing");
    if (state == Expected::dim) return " " + words_("situations.dim");
    return {};
  }

  const SheetContext& context_;
  const Build& build_;
  const Words& words_;
  const FaultPlan& faults_;
  std::vector<std::pair<std::string, std::string>> poles_;
  PageFlow flow_;
  bool has_said_exhaust_ = false, has_said_cranking_ = false, has_said_gear_ = false;
};

}  // namespace

/// The tests, and the fault pages that they lead to: both use one plan, and solving every fault takes its time.
std::vector<Sheet> make_tests(const SheetContext& context) {
  if (context.build().wires.empty()) return {};
  const FaultPlan faults =
      context.solved.solutions.empty() ? FaultPlan{} : plan_faults(context.build(), context.solved.solutions);
  std::vector<Sheet> sheets = TestPages(context, faults).make();
  std::vector<Sheet> fault_sheets = make_fault_finding(context, faults);
  std::move(fault_sheets.begin(), fault_sheets.end(), std::back_inserter(sheets));
  return sheets;
}

}  // namespace loomfolio
