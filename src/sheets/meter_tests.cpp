// SPDX-License-Identifier: MIT
// The tests: without power, at first power, then in each situation. Every figure is the solver's; blanks are for the
// meter's.
#include <algorithm>
#include <cmath>
#include <iterator>
#include <map>
#include <utility>

#include "base/text.h"
#include "check/paths.h"
#include "sheets/cold_tests.h"
#include "sheets/earth_net.h"
#include "sheets/fault_pages.h"
#include "sheets/fuse_order.h"
#include "sheets/hook_up_tables.h"
#include "sheets/interlock_tests.h"
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
#include "solve/battery.h"
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

constexpr std::size_t most_behind = 6;      // rows: further situations add nothing that the tests after do not prove
constexpr Millimetres with_its_test(75);  // a warning and the test that it is for

/// The tests of one hook-up, or of all in one run: what all have stands once, else its letters beside it.
class TestPages {
 public:
  TestPages(const SheetContext& context, const ChartBook& faults)
      : context_(context),
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
    flow_.add_heading(words_("tests.without_power"), Millimetres(75));
    flow_.items().push_back(AnchorItem{"cold", {}});
    add_actions("tests.cold");
    add_merged([this](const FaultEntry& one) { return earth_ohms(one); }, words_("tests.earths", poles_));
    add_merged([this](const FaultEntry& one) { return insulation(one); }, words_("tests.insulation"));
    add_merged([this](const FaultEntry& one) { return interlock(one); }, words_("tests.interlock"));
    add_merged([this](const FaultEntry& one) { return part_ohms(one); }, words_("tests.part_ohms"));
    add_merged([this](const FaultEntry& one) { return diodes(one); }, words_("tests.diodes"));
  }

  /// The table of all hook-ups, merged, under its text; nothing when it has no rows.
  template <class Make>
  void add_merged(const Make& make, const std::string& text) {
    std::vector<HookUpTable> tables;
    bool has_rows = false;
    for (const FaultEntry& one : faults_.entries) {
      tables.push_back({one.context.build_index, make(one)});
      has_rows = has_rows || !tables.back().table.rows.empty();
    }
    if (!has_rows) return;
    flow_.keep(Millimetres(40));
    flow_.add_text(text, look::text, look::block_gap);
    add_table(flow_, merge_tables(context_, std::move(tables), {1}), look::paragraph_gap);
  }

  /// Connectors are left out: nobody gets a probe into a joined one, and the part behind it proves them.
  Table earth_ohms(const FaultEntry& one) const {
    const Build& build = one.context.build();
    Table table = ohms_table(words_("tests.earth_terminal"), words_("tests.by_wire"));
    const std::vector<bool> is_earthed = find_earth_net(build);
    const auto wires = wires_at_terminals(build);
    for (std::size_t t = 0; t < build.terminals.size(); ++t) {
      const TerminalId id{static_cast<std::int32_t>(t)};
      if (!is_earthed[t] || wires[t].empty() || build.terminal(id).owner != OwnerType::part || is_at_source(build, id) ||
          is_at_connector(build, id))
        continue;
      const double ohms = read_ohms(build, Situation{}, id, earthed_pole(build)).number;
      if (std::isinf(ohms)) continue;  // through a switch that is open at rest
      table.rows.push_back(
          {{tick_cell(), terminal_cell(one.context, id, {}), text_cell(way_text(build, id)),
            text_cell(words_("tests.beep_ohms", {{"ohms", print_ohms(beep_limit(ohms))}})), blank_cell()}});
    }
    return table;
  }

  /// The wires, and the metal where the last of them does not reach the battery itself.
  std::string way_text(const Build& build, TerminalId id) const {
    const std::vector<WireId> way = way_to_earth(build, id);
    if (way.empty()) return words_("tests.metal");
    const Wire& last = build.wire(way.back());
    const bool reaches_pole = last.from == earthed_pole(build) || last.to == earthed_pole(build);
    return reaches_pole ? wire_ids(build, way) : wire_ids(build, way) + ", " + words_("tests.metal");
  }

  static bool is_at_connector(const Build& build, TerminalId id) {
    return build.kind_of(build.parts[static_cast<std::size_t>(build.terminal(id).owner_index)]).is_connector;
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

  Table insulation(const FaultEntry& one) const {
    const Build& build = one.context.build();
    Table table = ohms_table(words_("tests.red_probe"), words_("fuses.fuse"));
    for (const InsulationTest& test : find_insulation_tests(build)) {
      const std::string least = print_ohms(test.least);
      const std::string must = test.is_open
                                   ? words_("tests.open")
                                   : words_(test.beeps ? "tests.low_ohms" : "tests.high_ohms", {{"ohms", least}});
      table.rows.push_back({{tick_cell(), terminal_cell(one.context, test.at, {}), text_cell(fuse_name(build, test.fuse)),
                             text_cell(must), blank_cell()}});
    }
    return table;
  }

  /// That the starter may turn in neutral and with the clutch pulled, and not otherwise, before it can.
  Table interlock(const FaultEntry& one) const {
    const Build& build = one.context.build();
    Table table = ohms_table(words_("tests.red_probe"), words_("tests.switches"));
    for (const InterlockTest& test : find_interlock_tests(build)) {
      const char* key = test.shows == ColdReading::open    ? "tests.interlock_open"
                        : test.shows == ColdReading::beeps ? "tests.interlock_beep"
                                                           : "tests.interlock_diode";
      table.rows.push_back({{tick_cell(), terminal_cell(one.context, test.at, {}),
                             text_cell(list_settings(build, with_gear(build, test.settings))), text_cell(words_(key)),
                             blank_cell()}});
    }
    return table;
  }

  /// A gear is named in every row, also in neutral: 'at rest' is no word for it.
  static std::vector<Setting> with_gear(const Build& build, std::vector<Setting> settings) {
    for (std::size_t p = 0; p < build.parts.size(); ++p)
      for (std::size_t i = 0; i < build.parts[p].insides.size(); ++i) {
        const InsideRef ref{PartId{static_cast<std::int32_t>(p)}, static_cast<int>(i)};
        const Inside& inside = inside_of(build, ref);
        if (inside.type != InsideType::switch_ || inside.worked_by != "gear") continue;
        if (std::none_of(settings.begin(), settings.end(), [&](const Setting& s) { return s.actuator == ref; }))
          settings.push_back({ref, inside.rest_position, {}});
      }
    return settings;
  }

  /// Each way round, and which wire belongs to which end: a diode fitted backwards shows nowhere else before power.
  Table diodes(const FaultEntry& one) const {
    const Build& build = one.context.build();
    Table table = ohms_table(words_("tests.part"), words_("tests.across"));
    const auto at = wires_at_terminals(build);
    for (const InsideRef what : find_diodes(build)) {
      const Part& part = build.part(what.part);
      const auto end = [&](std::size_t node) {
        const auto t = static_cast<std::size_t>(inside_of(build, what).nodes[node].terminal);
        const std::string wires = wire_ids(build, at[part.terminals[t].at()]);
        const std::string& mark = build.kind_of(part).terminals[t].id;
        return wires.empty() ? mark : words_("tests.diode_end", {{"mark", mark}, {"wires", wires}});
      };
      const std::string first = end(0), second = end(1);
      for (const bool forward : {true, false})
        table.rows.push_back({{tick_cell(), text_cell(inside_name(build, what), look::table_bold),
                               text_cell(words_("tests.diode_probes", {{"red", forward ? first : second},
                                                                       {"black", forward ? second : first}})),
                               text_cell(words_(forward ? "tests.interlock_diode" : "tests.interlock_open")),
                               blank_cell()}});
    }
    return table;
  }

  Table part_ohms(const FaultEntry& one) const {
    const Build& build = one.context.build();
    Table table = ohms_table(words_("tests.part"), words_("tests.across"));
    for (const PartOhms& part : find_part_ohms(build))
      table.rows.push_back(
          {{tick_cell(), text_cell(inside_name(build, part.what), look::table_bold),
            text_cell(part.first + " \u2013 " + part.second), text_cell(ohms_text(part)), blank_cell()}});
    return table;
  }

  /// A pocket meter cannot tell tenths of an ohm from its leads.
  std::string ohms_text(const PartOhms& part) const {
    const double most = std::ceil(part.most.number());
    if (most <= 2) return words_("tests.ohms_low", {{"most", print_ohms(Ohms(most))}});
    return words_(
        "tests.ohms_range",
        {{"ohms", print_ohms(part.ohms)}, {"least", print_ohms(part.least)}, {"most", print_ohms(part.most)}});
  }

  static bool is_at_source(const Build& build, TerminalId id) {
    const Part& part = build.parts[static_cast<std::size_t>(build.terminal(id).owner_index)];
    for (const Inside& inside : part.insides)
      if (inside.type == InsideType::source) return true;
    return false;
  }

  void add_first_power() {
    flow_.add_heading(words_("tests.first_power"), Millimetres(50));
    flow_.items().push_back(AnchorItem{"first", {}});
    add_actions("tests.power");
    const bool is_kit = context_.build().document.scope == Scope::kit;
    std::vector<std::vector<FuseTrial>> trials;
    for (const FaultEntry& one : faults_.entries) trials.push_back(order_fuses(one.context.build()));
    const auto trials_of = [&](const FaultEntry& one) -> const std::vector<FuseTrial>& {
      return trials[static_cast<std::size_t>(&one - faults_.entries.data())];
    };
    add_merged([&](const FaultEntry& one) { return trial_table(one.context.build(), trials_of(one)); },
               words_("tests.fuses") + (is_kit ? " " + words_("tests.fuses_kit") : ""));
    std::string behind = words_("tests.behind");
    if (has_starter(context_.build())) behind += " " + words_("tests.no_start");
    add_merged([&](const FaultEntry& one) { return behind_test_fuse(one.context.solved, trials_of(one)); }, behind);
    flow_.add_text(words_("tests.fuses_end", {{"sheet", sheet_mark("steps", "after first power")}}), look::text_bold,
                   look::paragraph_gap);
  }

  /// Wires behind the key see the test fuse too, as far as it carries what they feed.
  Table behind_test_fuse(const SolvedBuild& solved, const std::vector<FuseTrial>& trials) const {
    const Build& build = solved.build;
    Amperes in_line = trial_fuse(Amperes(0));
    for (const FuseTrial& trial : trials) in_line = std::max(in_line, trial_fuse(trial.drawn));
    Table table;
    table.columns = {{"", CellAlign::near, Wrapping::keeps, 0},
                     {words_("tests.switches"), CellAlign::near, Wrapping::wraps, 1},
                     {words_("tests.battery_gives"), CellAlign::near, Wrapping::keeps, 0},
                     {words_("tests.expect"), CellAlign::near, Wrapping::wraps, 1}};
    for (const TrialSituation& trial : situations_behind(solved, in_line)) {
      if (table.rows.size() >= most_behind) break;
      table.rows.push_back(
          {{tick_cell(), text_cell(list_settings(build, build.situations[trial.situation.at()].settings), look::table_bold),
            text_cell(amperes_text(trial.drawn)),
            text_cell(words_("tests.behind_holds", {{"list", list_working(build, trial.works)}}))}});
    }
    return table;
  }

  static bool has_starter(const Build& build) {
    return std::any_of(build.parts.begin(), build.parts.end(), [&](const Part& part) {
      return build.kind_of(part).group == "starting" &&
             std::any_of(part.insides.begin(), part.insides.end(),
                         [](const Inside& i) { return i.type == InsideType::motor; });
    });
  }

  static std::string list_working(const Build& build, const std::vector<InsideRef>& works) {
    std::vector<NamedElement> named;
    for (const InsideRef what : works) named.push_back({what, {}});
    return list_elements(build, named);
  }

  std::string holds_text(const Build& build, const FuseTrial& trial) const {
    if (!trial.has_supply) return words_("tests.fuse_later");
    if (trial.works.empty()) return words_("tests.fuse_holds");
    return words_("tests.fuse_works", {{"list", list_working(build, trial.works)}});
  }

  /// Fuses in the order in which each has supply when it goes in; heads say what to switch, and which test fuse.
  Table trial_table(const Build& build, const std::vector<FuseTrial>& trials) const {
    Table table;
    table.columns = {{"", CellAlign::near, Wrapping::keeps, 0},
                     {words_("fuses.position"), CellAlign::near, Wrapping::wraps, 1},
                     {words_("fuses.fuse"), CellAlign::near, Wrapping::keeps, 0},
                     {words_("tests.battery_gives"), CellAlign::near, Wrapping::keeps, 0},
                     {words_("tests.expect"), CellAlign::near, Wrapping::wraps, 1}};
    std::string said;
    Amperes test_fuse = trial_fuse(Amperes(0));
    for (const FuseTrial& trial : trials) {
      const Amperes needed = trial_fuse(trial.drawn);
      if (needed > test_fuse) {
        auto values = poles_;
        values.emplace_back("rating", print_rating(needed));
        table.rows.push_back(group_row(words_("tests.larger_test_fuse", values)));
        test_fuse = needed;
      }
      const std::string head = settings_head(build, trial);
      if (head != said) table.rows.push_back(group_row(head));
      said = head;
      const Inside& inside = inside_of(build, trial.fuse);
      table.rows.push_back(
          {{tick_cell(), text_cell(fuse_name(build, trial.fuse), look::table_bold),
            text_cell(inside.rating ? print_rating(*inside.rating) : ""),
            text_cell(drawn_text(trial)),
            text_cell(holds_text(build, trial))}});
    }
    return table;
  }

  /// A pocket meter shows nothing of less than a twentieth of an ampere.
  std::string drawn_text(const FuseTrial& trial) const {
    return trial.has_supply ? amperes_text(trial.drawn) : std::string();
  }

  std::string amperes_text(Amperes drawn) const {
    if (drawn.number() < 0.05) return words_("situations.nothing");
    return words_("tests.about", {{"amperes", fixed(drawn.number(), 1)}});
  }

  std::string settings_head(const Build& build, const FuseTrial& trial) const {
    if (!trial.has_supply) return words_("tests.no_supply");
    if (trial.settings.empty()) return words_("tests.key_off");
    return words_("tests.then_set", {{"switches", list_settings(build, trial.settings)}});
  }

  std::string list_settings(const Build& build, const std::vector<Setting>& settings) const {
    std::vector<std::string> texts;
    for (const Setting& setting : settings) texts.push_back(setting_text(build, setting));
    return texts.empty() ? words_("situations.all_at_rest") : join(texts, "; ");
  }

  /// A situation as one hook-up tests it.
  struct Tested {
    const FaultEntry* one = nullptr;
    SituationReadings readings;

    const Build& build() const { return one->context.build(); }
    const Situation& situation() const { return build().situations[readings.situation.at()]; }
  };

  void add_situations() {
    std::vector<std::vector<Tested>> groups;
    for (const FaultEntry& one : faults_.entries)
      for (SituationReadings& readings : find_readings(one.context.solved))
        if (!readings.readings.empty() || !readings.stay_off.empty()) put_into_group(groups, {&one, std::move(readings)});
    if (groups.empty()) return;
    flow_.add_heading(words_("tests.in_situations"), Millimetres(60));
    flow_.items().push_back(AnchorItem{"live", {}});
    add_battery_first();
    flow_.add_text(words_("tests.situations_text", poles_), look::text, look::paragraph_gap);
    for (const std::vector<Tested>& group : groups) add_situation(group);
  }

  /// All limits hang on what the battery reads before anything is switched on.
  void add_battery_first() {
    const Electrics& electrics = context_.build().electrics;
    Table table;
    table.columns = {{"", CellAlign::near, Wrapping::keeps, 0},
                     {words_("tests.action"), CellAlign::near, Wrapping::wraps, 1},
                     {words_("tests.expect"), CellAlign::near, Wrapping::wraps, 0.6},
                     {words_("tests.yours"), CellAlign::near, Wrapping::keeps, 0}};
    const double least = rest_volts(BatteryType::flooded, sound::least_charge, electrics.nominal).number();
    const double most = electrics.resting.number() + electrics.nominal.number() / 12 * sound::freshest.number();
    table.rows.push_back({{tick_cell(), text_cell(words_("tests.battery_first"), look::text),
                           text_cell(words_("tests.battery_must", {{"least", fixed(least, 1)}, {"most", fixed(most, 1)}})),
                           blank_cell()}});
    add_table(flow_, table, look::paragraph_gap);
  }

  /// Hook-ups that set the situation alike share its table; one that sets it otherwise comes after them.
  void put_into_group(std::vector<std::vector<Tested>>& groups, Tested tested) const {
    const auto is_same = [&](const std::vector<Tested>& group) {
      const Tested& other = group.front();
      return other.situation().name == tested.situation().name && set_text_of(other) == set_text_of(tested) &&
             other.readings.gear == tested.readings.gear;
    };
    const auto found = std::find_if(groups.begin(), groups.end(), is_same);
    if (found != groups.end()) return found->push_back(std::move(tested));
    const auto later = std::find_if(groups.begin(), groups.end(), [&](const std::vector<Tested>& group) {
      return group.front().readings.situation > tested.readings.situation;
    });
    groups.insert(later, {std::move(tested)});
  }

  std::string set_text_of(const Tested& tested) const {
    return words_(engine_setting_key(tested.situation().engine),
                  {{"switches", list_settings(tested.build(), tested.readings.settings)}});
  }

  void add_situation(const std::vector<Tested>& group) {
    const Tested& first = group.front();
    add_hazards(group);
    flow_.keep(Millimetres(50));
    std::vector<Span> head{
        {std::to_string(first.readings.situation.index + 1) + "  ", look::heading, look::ink, {}},
        {situation_name(first.situation()), look::text_bold, look::ink, {}}};
    if (group.size() < faults_.entries.size())
      head.push_back({"   " + words_("hook_up.column") + " " + letters_text(hook_ups_of(group)),
                      look::text_bold,
                      look::ink,
                      {}});
    flow_.add(set_paragraph({std::move(head), Align::left, "H3"}, flow_.width(), flow_.setting()), look::block_gap);
    std::string set = set_text_of(first);
    if (first.situation().engine == EngineState::running && has_said_cranking_ && !has_put_cap_back_) {
      set = words_("tests.cap_back") + " " + set;
      has_put_cap_back_ = true;
    }
    flow_.add_text(set, look::text, Millimetres(0));
    std::vector<HookUpTable> tables;
    for (const auto& [tested, lines] : agreed_lines(group))
      tables.push_back({tested->one->context.build_index, readings_table(*tested, lines)});
    constexpr std::size_t else_column = 7;
    add_table(flow_, without_empty_columns(merge_tables(context_, std::move(tables), {1, else_column})),
              look::paragraph_gap);
  }

  static std::vector<std::size_t> hook_ups_of(const std::vector<Tested>& group) {
    std::vector<std::size_t> hook_ups;
    for (const Tested& tested : group) hook_ups.push_back(tested.one->context.build_index);
    return hook_ups;
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
  void add_hazards(const std::vector<Tested>& group) {
    const EngineState engine = group.front().situation().engine;
    if (engine == EngineState::running && !has_said_exhaust_) add_hazard("tests.exhaust");
    has_said_exhaust_ = has_said_exhaust_ || engine == EngineState::running;
    if (engine == EngineState::cranking && !has_said_cranking_) add_hazard("tests.cranking");
    has_said_cranking_ = has_said_cranking_ || engine == EngineState::cranking;
    const bool moves = engine != EngineState::stopped || std::any_of(group.begin(), group.end(), watches_motor);
    if (group.front().readings.gear != Gear::in || !moves) return;
    if (has_said_gear_) return add_reminder(engine);
    add_hazard("tests.in_gear");
    has_said_gear_ = true;
  }

  /// The warning stands in full on the page before, or on this one: here its word and what to do.
  void add_reminder(EngineState engine) {
    const char* key = engine == EngineState::cranking ? "tests.in_gear_cranking" : "tests.in_gear_again";
    const Millimetres width = flow_.width(), triangle(5), text_x = triangle + Millimetres(2);
    Block text = set_text(words_("signal.warning") + ": " + words_(key), look::text_bold,
                          width - text_x, flow_.setting());
    Block block{width, std::max(text.height, triangle), {}};
    const bool is_right_to_left = flow_.setting().is_right_to_left;
    place_block(block.items, alert_triangle(triangle, look::safety_orange, look::ink),
                {is_right_to_left ? width - triangle : Millimetres(0), {}});
    place_block(block.items, std::move(text), {is_right_to_left ? Millimetres(0) : text_x, {}});
    flow_.keep(block.height + with_its_test);
    flow_.add(std::move(block), look::block_gap);
  }

  void add_hazard(const std::string& key) {
    Block panel =
        make_panel(panel_from_words(words_, Signal::warning, key, poles_), flow_.width(), words_, flow_.setting());
    flow_.keep(panel.height + with_its_test);
    flow_.add(std::move(panel), look::block_gap);
  }

  /// A motor must stay still, and might not.
  static bool watches_motor(const Tested& tested) {
    for (const InsideRef what : tested.readings.stay_off)
      for (const Inside& inside : tested.build().part(what.part).insides)
        if (inside.type == InsideType::motor) return true;
    return false;
  }

  /// What one reading prints, in volts.
  struct Line {
    const ExpectedReading* reading = nullptr;
    double volts = 0, least = 0, most = 0, back_least = 0, back_most = 0;
    bool has_back = false;
  };

  /// Hook-ups whose figures no meter tells apart print the same: the first's volts, the widest limits.
  std::vector<std::pair<const Tested*, std::vector<Line>>> agreed_lines(const std::vector<Tested>& group) const {
    constexpr double apart = 0.15;
    std::vector<std::pair<const Tested*, std::vector<Line>>> all;
    std::map<std::string, std::vector<std::pair<std::size_t, std::size_t>>> alike;
    for (const Tested& tested : group) {
      const Build as_set = as_tested(tested.build(), tested.readings);
      const ReadingLimits limits =
          find_reading_limits(as_set, solve_situation(as_set, tested.readings.situation));
      all.push_back({&tested, {}});
      for (const ExpectedReading& reading : tested.readings.readings) {
        const std::string key = inside_name(tested.build(), reading.consumer) + state_note(reading.state) + "\n" +
                                tested.build().terminal(reading.feed).name;
        alike[key].emplace_back(all.size() - 1, all.back().second.size());
        all.back().second.push_back(line_of(reading, limits));
      }
    }
    for (const auto& [key, places] : alike) {
      const Line first = all[places.front().first].second[places.front().second];
      Line widest = first;
      const auto is_near = [&](const Line& line) {
        return line.has_back == first.has_back && std::abs(line.volts - first.volts) <= apart;
      };
      for (const auto& [t, l] : places) {
        const Line& line = all[t].second[l];
        if (!is_near(line)) continue;
        widest.least = std::min(widest.least, line.least), widest.most = std::max(widest.most, line.most);
        widest.back_least = std::min(widest.back_least, line.back_least);
        widest.back_most = std::max(widest.back_most, line.back_most);
      }
      for (const auto& [t, l] : places)
        if (Line& line = all[t].second[l]; is_near(line)) {
          const ExpectedReading* reading = line.reading;
          line = widest;
          line.reading = reading;
        }
    }
    return all;
  }

  static Line line_of(const ExpectedReading& reading, const ReadingLimits& limits) {
    Line line{&reading, reading.feed_volts.number(), limits.least[reading.feed.at()].number(),
              limits.most[reading.feed.at()].number()};
    line.has_back = reading.back.is_set() && !std::isnan(reading.back_volts.number());
    if (!line.has_back) return line;
    line.back_least = limits.least[reading.back.at()].number();
    line.back_most = limits.most[reading.back.at()].number();
    return line;
  }

  Table readings_table(const Tested& tested, const std::vector<Line>& lines) const {
    const Build& build = tested.build();
    Table table;
    table.columns = {{"", CellAlign::near, Wrapping::keeps, 0},
                     {words_("tests.works"), CellAlign::near, Wrapping::wraps, 1},
                     {words_("tests.red_probe"), CellAlign::near, Wrapping::wraps, 1},
                     {words_("tests.volts"), CellAlign::point, Wrapping::keeps, 0},
                     {words_("tests.limits"), CellAlign::near, Wrapping::keeps, 0},
                     {words_("tests.return"), CellAlign::near, Wrapping::keeps, 0},
                     {words_("tests.yours"), CellAlign::near, Wrapping::keeps, 0},
                     {words_("tests.else"), CellAlign::near, Wrapping::keeps, 0}};
    for (const Line& line : lines) {
      const ExpectedReading& reading = *line.reading;
      const std::string back = line.has_back ? terminal_mark(build, reading.back) + ": " +
                                                   range_text(line.back_least, line.back_most)
                                             : std::string();
      table.rows.push_back(
          {{tick_cell(), text_cell(inside_name(build, reading.consumer) + state_note(reading.state) + load_note(build, reading.consumer),
                      look::table_bold),
            terminal_cell(tested.one->context, reading.feed, {}), volts_cell(reading, line.volts),
            text_cell(range_text(line.least, line.most)), text_cell(back), blank_cell(),
            else_cell(*tested.one, reading.consumer, tested.readings.situation)}});
    }
    for (const InsideRef what : tested.readings.stay_off)
      table.rows.push_back(
          {{tick_cell(), text_cell(words_("tests.stays_off", {{"what", off_name(build, what)}}), look::table_bold),
            text_cell(""), text_cell(""), text_cell(words_("tests.off")), text_cell(""), text_cell(""),
            odd_cell(*tested.one)}});
    return table;
  }

  static std::string off_name(const Build& build, InsideRef what) {
    return what.inside < 0 ? build.part(what.part).label : inside_name(build, what);
  }

  /// A meter does not settle on a lamp that flashes.
  static Cell volts_cell(const ExpectedReading& reading, double volts) {
    if (reading.state == Expected::flashing) return text_cell("");
    return text_cell(fixed(volts, 1));
  }

  /// Rounded outwards to the tenth that is printed. Readings near 0 V begin at 0.
  std::string range_text(double least, double most) const {
    const bool is_near_nothing = least < 0 && most > 0;
    return words_("tests.range", {{"least", is_near_nothing ? fixed(0, 1) : fixed(std::floor(least * 10) / 10, 1)},
                                  {"most", fixed(std::ceil(most * 10) / 10, 1)}});
  }

  /// What a person plugs in.
  std::string load_note(const Build& build, InsideRef consumer) const {
    const std::vector<Inside>& insides = build.part(consumer.part).insides;
    const bool is_socket = std::any_of(insides.begin(), insides.end(), [](const Inside& i) { return i.id == "plug"; });
    const Inside& inside = inside_of(build, consumer);
    if (!is_socket || !inside.current) return {};
    return " " + words_("tests.plug_in", {{"amperes", shortest(inside.current->number(), 1)}});
  }

  /// The fault chart for a consumer that fails there; the list of charts when it has none of its own.
  Cell else_cell(const FaultEntry& one, InsideRef consumer, SituationId situation) const {
    if (one.plan.charts.empty()) return text_cell("");
    const int chart = one.plan.chart_for(consumer, situation);
    return page_cell(chart < 0 ? std::string()
                               : fault_page_number(one.numbers[static_cast<std::size_t>(chart)], words_));
  }

  /// The page of what is on and should not be.
  Cell odd_cell(const FaultEntry& one) const {
    if (one.plan.charts.empty()) return text_cell("");
    const bool has_odd = std::any_of(faults_.entries.begin(), faults_.entries.end(),
                                     [](const FaultEntry& entry) { return !entry.plan.odd.empty(); });
    const std::size_t index = faults_.charts.size() + (faults_.has_blows() ? 1 : 0);
    return page_cell(has_odd ? fault_page_number(index, words_) : std::string());
  }

  Cell page_cell(const std::string& number) const {
    const LinkTarget target{context_.id_prefix + "faults", number};
    const std::string sheet = words_("tests.sheet", {{"sheet", sheet_mark(target.sheet, number)}});
    Cell cell{{{{{number.empty() ? sheet : number, look::table_bold, look::accent, target}}, Align::left, {}}}};
    if (!number.empty()) cell.lines.push_back({{{sheet, look::table_small, look::accent, target}}, Align::left, {}});
    return cell;
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
  const Words& words_;
  const ChartBook& faults_;
  std::vector<std::pair<std::string, std::string>> poles_;
  PageFlow flow_;
  bool has_said_exhaust_ = false, has_said_cranking_ = false, has_said_gear_ = false, has_put_cap_back_ = false;
};

}  // namespace

/// The tests, and the fault pages that they lead to: both use one plan, and solving every fault takes its time. Of
/// several hook-ups they stand once, among the common pages.
std::vector<Sheet> make_tests(const SheetContext& context) {
  if (context.build().wires.empty() || context.extent == Extent::own) return {};
  const ChartBook faults = make_chart_book(context);
  std::vector<Sheet> sheets = TestPages(context, faults).make();
  SheetContext below = context;
  below.start = sheets.back().free;
  std::vector<Sheet> fault_sheets = make_fault_finding(below, faults);
  std::move(fault_sheets.begin(), fault_sheets.end(), std::back_inserter(sheets));
  return sheets;
}

}  // namespace loomfolio
