// SPDX-License-Identifier: MIT
#include "sheets/meter_test_situations.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <utility>

#include "base/text.h"
#include "check/paths.h"
#include "sheets/hook_up_tables.h"
#include "sheets/hook_ups.h"
#include "sheets/meter_test_cells.h"
#include "sheets/names.h"
#include "sheets/panel.h"
#include "sheets/print_text.h"
#include "sheets/readings.h"
#include "sheets/reference.h"
#include "sheets/setting_text.h"
#include "sheets/wire_cells.h"
#include "solve/battery.h"
#include "solve/meter.h"
#include "solve/reading_limits.h"

namespace loomfolio {
namespace {

constexpr Millimetres with_its_test(75);  // a warning and the test that it is for

class SituationTests {
 public:
  SituationTests(PageFlow& flow, const ChartBook& faults)
      : context_(flow.context()),
        words_(context_.words()),
        faults_(faults),
        poles_(pole_names(context_.build(), words_)),
        flow_(flow) {}

  void make() {
    std::vector<std::vector<Tested>> groups;
    for (const FaultEntry& one : faults_.entries)
      for (SituationReadings& readings : find_readings(one.context.solved))
        if (!readings.readings.empty() || !readings.stay_off.empty()) put_into_group(groups, {&one, std::move(readings)});
    if (groups.empty()) return;
    // Each hook-up's own numbers rise down the pages.
    std::stable_sort(groups.begin(), groups.end(), [](const auto& a, const auto& b) { return last_of(a) < last_of(b); });
    flow_.add_heading(words_("tests.in_situations"));
    flow_.items().push_back(AnchorItem{"live", {}});
    add_battery_first();
    flow_.add_lead(words_("tests.situations_text", poles_), look::paragraph_gap);
    for (const std::vector<Tested>& group : groups) add_situation(group);
  }

 private:
  /// A situation as one hook-up tests it.
  struct Tested {
    const FaultEntry* one = nullptr;
    SituationReadings readings;

    const Build& build() const { return one->context.build(); }
    const Situation& situation() const { return build().situations[readings.situation.at()]; }
  };

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
    table.rows.push_back({{test_tick_cell(), text_cell(words_("tests.battery_first"), look::text),
                           text_cell(words_("tests.battery_must", {{"least", fixed(least, 1)}, {"most", fixed(most, 1)}})),
                           reading_blank_cell()}});
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
                  {{"switches", list_settings(tested.build(), words_, tested.readings.settings)}});
  }

  void add_situation(const std::vector<Tested>& group) {
    const Tested& first = group.front();
    add_hazards(group);
    flow_.keep(Millimetres(50));
    std::vector<Span> head{
        {number_text(group) + "  ", look::heading, look::ink, {}},
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

  static SituationId last_of(const std::vector<Tested>& group) {
    SituationId last = group.front().readings.situation;
    for (const Tested& tested : group)
      if (last < tested.readings.situation) last = tested.readings.situation;
    return last;
  }

  /// '3', or 'A 3, B 4' where the hook-ups count their situations otherwise.
  static std::string number_text(const std::vector<Tested>& group) {
    const auto number = [](const Tested& tested) { return std::to_string(tested.readings.situation.index + 1); };
    if (std::all_of(group.begin(), group.end(), [&](const Tested& t) { return number(t) == number(group.front()); }))
      return number(group.front());
    std::vector<std::string> texts;
    for (const Tested& tested : group)
      texts.push_back(hook_up_letter(tested.one->context.build_index) + "\u00a0" + number(tested));
    return join(texts, ", ");
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
    Block block = make_reminder(words_(key), flow_.width(), words_, flow_.setting());
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
      const ReadingLimits limits = find_reading_limits(as_tested(tested.build(), tested.readings), tested.readings.solution);
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
      const std::string back = line.has_back ? touched_there(build, reading.back) + ": " +
                                                   range_text(line.back_least, line.back_most)
                                             : std::string();
      table.rows.push_back(
          {{test_tick_cell(), text_cell(inside_name(build, reading.consumer) + state_note(reading.state) + load_note(build, reading.consumer),
                      look::table_bold),
            terminal_cell(tested.one->context, reading.feed, {}), volts_cell(reading, line.volts),
            text_cell(range_text(line.least, line.most)), text_cell(back), reading_blank_cell(),
            else_cell(*tested.one, reading.consumer, tested.readings.situation)}});
    }
    for (const InsideRef what : tested.readings.stay_off) {
      table.rows.push_back(
          {{test_tick_cell(), text_cell(words_("tests.stays_off", {{"what", off_name(build, what)}}), look::table_bold),
            text_cell(""), text_cell(""), text_cell(words_("tests.off")), text_cell(""), text_cell(""),
            odd_cell(tested, what)}});
      table.rows.back().cells[1].runs_on = true;
    }
    return table;
  }

  /// What the probe goes on: a part's body bears no mark.
  std::string touched_there(const Build& build, TerminalId terminal) const {
    const KindTerminal* kind = kind_terminal_of(build, terminal);
    return kind != nullptr && kind->form == TerminalForm::body ? words_("tests.metal") : terminal_mark(build, terminal);
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

  /// The fault chart for a consumer that fails there, else one that asks for it; else the list of charts.
  Cell else_cell(const FaultEntry& one, InsideRef consumer, SituationId situation) const {
    if (one.plan.charts.empty()) return text_cell("");
    int chart = one.plan.chart_for(consumer, situation);
    if (chart < 0) chart = one.plan.chart_suspecting(consumer.part);
    return page_cell(chart < 0 ? std::string()
                               : fault_page_number(one.numbers[static_cast<std::size_t>(chart)], words_));
  }

  /// The row of what is on and should not be: of this situation, else of another one.
  static std::string odd_row(const Tested& tested, InsideRef what) {
    const auto is_of = [&](const Symptom& symptom, bool is_here) {
      const bool is_same = symptom.what == what || (what.inside < 0 && symptom.what.part == what.part);
      return is_same && symptom.expected == Expected::off && symptom.seen == Expected::on &&
             (!is_here || symptom.situation == tested.readings.situation);
    };
    for (const bool is_here : {true, false})
      for (const OddSymptom& odd : tested.one->plan.odd)
        if (std::any_of(odd.symptoms.begin(), odd.symptoms.end(), [&](const Symptom& s) { return is_of(s, is_here); }))
          return odd_anchor(tested.build(), odd);
    return {};
  }

  /// The page of what is on and should not be.
  Cell odd_cell(const Tested& tested, InsideRef what) const {
    if (tested.one->plan.charts.empty()) return text_cell("");
    if (!faults_.has_odd()) return page_cell({});
    return page_cell(fault_page_number(faults_.odd_index(), words_), odd_row(tested, what));
  }

  Cell page_cell(const std::string& number, const std::string& row = {}) const {
    return fault_page_cell(context_, number, ReferenceLines::one, row);
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
  PageFlow& flow_;
  bool has_said_exhaust_ = false, has_said_cranking_ = false, has_said_gear_ = false, has_put_cap_back_ = false;
};

}  // namespace

void add_situation_tests(PageFlow& flow, const ChartBook& faults) { SituationTests(flow, faults).make(); }

}  // namespace loomfolio
