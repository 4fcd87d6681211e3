// SPDX-License-Identifier: MIT
// The tests: without power, at first power, then in each situation. Every figure is the solver's; blanks are for the
// meter's.
#include <algorithm>
#include <cmath>
#include <iterator>
#include <utility>

#include "base/text.h"
#include "check/paths.h"
#include "sheets/cold_tests.h"
#include "sheets/earth_net.h"
#include "sheets/fault_pages.h"
#include "sheets/fuse_order.h"
#include "sheets/hook_up_tables.h"
#include "sheets/interlock_tests.h"
#include "sheets/meter_test_cells.h"
#include "sheets/meter_test_situations.h"
#include "sheets/names.h"
#include "sheets/page_flow.h"
#include "sheets/panel.h"
#include "sheets/print_text.h"
#include "sheets/reference.h"
#include "sheets/setting_text.h"
#include "sheets/sheet_makers.h"
#include "sheets/table.h"
#include "sheets/wire_cells.h"
#include "solve/meter.h"

namespace loomfolio {
namespace {

constexpr Amperes least_shown(0.05);  // a pocket meter shows nothing of less
constexpr std::size_t most_behind = 6;      // rows: further situations add nothing that the tests after do not prove

/// The tests of one hook-up, or of all in one run: what all have stands once, else its letters beside it.
/// What stands together at the head of the pages: the first table, under its heading.
constexpr Millimetres first_tests(75);

class TestPages {
 public:
  TestPages(const SheetContext& context, const ChartBook& faults)
      : context_(context),
        words_(context.words()),
        faults_(faults),
        cables_(find_earthed_cables(context.build())),
        poles_(test_places(context.build())),
        flow_(context, {"tests", words_("tests.title"), words_("tests.intro", poles_)}) {}

  std::vector<Sheet> make() {
    Block panel = make_panel(panel_from_words(words_, Signal::warning, "tests.panel", poles_), flow_.width(), words_,
                             flow_.setting());
    flow_.keep(panel.height + look::heading_gap * 2 + first_tests);
    flow_.add(std::move(panel), {});
    add_without_power();
    add_first_power();
    add_situation_tests(flow_, faults_);
    add_signature();
    return flow_.take();
  }

 private:
  /// The poles by their signs; which cables of the earthed one are held together, and which of them bolt to metal.
  std::vector<std::pair<std::string, std::string>> test_places(const Build& build) const {
    auto places = pole_names(build, words_);
    const auto named = [&](const char* own, const char* too, const std::vector<WireId>& wires) {
      if (!cables_.has_others) return wire_ids(build, wires);
      return wires.empty() ? words_(own) : words_(too, {{"list", wire_ids(build, wires)}});
    };
    places.emplace_back("cables", named("tests.own_cable", "tests.own_cable_and", cables_.all));
    places.emplace_back("straps", named("tests.own_cable", "tests.own_cable_and", cables_.straps));
    return places;
  }

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
      table.rows.push_back({{text_cell(std::to_string(i), look::heading), test_tick_cell(),
                             text_cell(words_(name, poles_), look::text), text_cell(result, look::text)}});
    }
    add_table(flow_, table, look::paragraph_gap);
  }

  void add_without_power() {
    flow_.add_heading(words_("tests.without_power"));
    flow_.items().push_back(AnchorItem{"cold", {}});
    add_actions("tests.cold");
    add_merged([this](const FaultEntry& one) { return earth_ohms(one); },
               words_(cables_.all.size() + cables_.has_others > 1 ? "tests.earths_together" : "tests.earths", poles_));
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
    flow_.add_lead(text, look::block_gap);
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
          {{test_tick_cell(), terminal_cell(one.context, id, {}), text_cell(way_text(build, id)),
            text_cell(words_("tests.beep_ohms", {{"ohms", print_ohms(beep_limit(ohms))}})), reading_blank_cell()}});
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
      table.rows.push_back({{test_tick_cell(), terminal_cell(one.context, test.at, {}), text_cell(fuse_name(build, test.fuse)),
                             text_cell(must), reading_blank_cell()}});
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
      table.rows.push_back({{test_tick_cell(), terminal_cell(one.context, test.at, {}),
                             text_cell(list_settings(build, words_, with_gear(build, test.settings))), text_cell(words_(key)),
                             reading_blank_cell()}});
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
        table.rows.push_back({{test_tick_cell(), text_cell(inside_name(build, what), look::table_bold),
                               text_cell(words_("tests.diode_probes", {{"red", forward ? first : second},
                                                                       {"black", forward ? second : first}})),
                               text_cell(words_(forward ? "tests.interlock_diode" : "tests.interlock_open")),
                               reading_blank_cell()}});
    }
    return table;
  }

  Table part_ohms(const FaultEntry& one) const {
    const Build& build = one.context.build();
    Table table = ohms_table(words_("tests.part"), words_("tests.across"));
    for (const PartOhms& part : find_part_ohms(build))
      table.rows.push_back(
          {{test_tick_cell(), text_cell(inside_name(build, part.what), look::table_bold),
            text_cell(part.first + " \u2013 " + part.second), text_cell(ohms_text(part)), reading_blank_cell()}});
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
    flow_.add_heading(words_("tests.first_power"));
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
          {{test_tick_cell(), text_cell(list_settings(build, words_, build.situations[trial.situation.at()].settings), look::table_bold),
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
    if (trial.works.empty())
      return words_(trial.drawn < least_shown ? "tests.fuse_holds" : "tests.fuse_adds_nothing");
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
          {{test_tick_cell(), text_cell(fuse_name(build, trial.fuse), look::table_bold),
            text_cell(!build.part(trial.fuse.part).fuse_choice.empty() ? words_("tests.fuse_chosen")
                      : inside.rating                                  ? print_rating(*inside.rating)
                                                                       : ""),
            text_cell(drawn_text(trial)),
            text_cell(holds_text(build, trial))}});
    }
    return table;
  }

  std::string drawn_text(const FuseTrial& trial) const {
    return trial.has_supply ? amperes_text(trial.drawn) : std::string();
  }

  std::string amperes_text(Amperes drawn) const {
    if (drawn < least_shown) return words_("situations.nothing");
    return words_("tests.about", {{"amperes", fixed(drawn.number(), 1)}});
  }

  std::string settings_head(const Build& build, const FuseTrial& trial) const {
    if (!trial.has_supply) return words_("tests.no_supply");
    if (trial.settings.empty()) return words_("tests.key_off");
    return words_("tests.then_set", {{"switches", list_settings(build, words_, trial.settings)}});
  }

  /// Who tested, when and with what: the shop's proof.
  void add_signature() {
    std::vector<std::string> heads;
    for (int i = 1; words_.has("tests.sign_" + std::to_string(i)); ++i)
      heads.push_back(words_("tests.sign_" + std::to_string(i)));
    if (heads.empty()) return;
    // The last is the signature: room for a hand.
    const Millimetres height(17), signature = Millimetres(64) + look::gutter;
    const Millimetres column = (flow_.width() - signature) / static_cast<double>(std::max<std::size_t>(1, heads.size() - 1));
    Block block{flow_.width(), height, {}};
    for (std::size_t i = 0; i < heads.size(); ++i) {
      const Millimetres wide = i + 1 == heads.size() ? signature : column, from = column * static_cast<double>(i);
      const Millimetres x = flow_.setting().is_right_to_left ? flow_.width() - from - wide : from;
      add_line(block.items, {x, height - Millimetres(5)}, {x + wide - look::gutter, height - Millimetres(5)},
               {look::ink, look::line});
      add_text(block.items, {x, height - Millimetres(1)}, heads[i], look::table, look::grey);
    }
    flow_.add_heading(words_("tests.signed"));
    flow_.add(std::move(block), {});
  }

  const SheetContext& context_;
  const Words& words_;
  const ChartBook& faults_;
  EarthedCables cables_;
  std::vector<std::pair<std::string, std::string>> poles_;
  PageFlow flow_;
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
