// SPDX-License-Identifier: MIT
// Fault finding: a list of what a person may see, a chart for each function that fails, then what blows fuses and what
// is on or weak that should not be. A chart takes at most one page; what it cannot ask for want of room stands together
// in one end.
#include <algorithm>
#include <cmath>
#include <memory>
#include <utility>

#include "base/side_by_side.h"
#include "base/text.h"
#include "check/feed.h"
#include "check/paths.h"
#include "sheets/fault_chart.h"
#include "sheets/fault_pages.h"
#include "sheets/fault_words.h"
#include "sheets/hook_up_tables.h"
#include "sheets/hook_ups.h"
#include "sheets/names.h"
#include "sheets/page_flow.h"
#include "sheets/panel.h"
#include "sheets/print_text.h"
#include "sheets/put_below.h"
#include "sheets/reference.h"
#include "sheets/table.h"
#include "solve/battery.h"
#include "solve/charging_path.h"
#include "solve/meter.h"
#include "solve/reading_limits.h"

namespace loomfolio {
namespace {

constexpr std::size_t most_questions = 16;  // no page has room for more
constexpr Millimetres tab_width(11), tab_height(7.2), head_gap(2.5), hang(5), rule_gap(0.6);
constexpr double least_gaps = 0.4;  // of the gaps of the opening page, so that its list is not cut
constexpr TextStyle tab_style{FaceName::sans, Weight::bold, 12};

class FaultPages {
 public:
  FaultPages(const SheetContext& context, const ChartBook& book)
      : context_(context),
        words_(context.words()),
        book_(book),
        flow_(context, {"faults", words_("faults.title"), words_("faults.intro")}) {
    for (const FaultEntry& entry : book_.entries)
      say_.push_back(std::make_unique<FaultWords>(entry.context, entry.plan, book_.charts.size()));
  }

  std::vector<Sheet> make() {
    add_opening();
    std::vector<Block> charts(book_.charts.size());
    work_side_by_side(charts.size(), [&](std::size_t c) { charts[c] = whole_chart(c); });
    for (Block& chart : charts) flow_.add(std::move(chart), Millimetres(11));
    if (book_.has_blows()) add_blows();
    if (book_.has_odd()) add_odd();
    return flow_.take();
  }

 private:
  bool is_several() const { return context_.hook_ups != nullptr; }

  std::string number(std::size_t index) const { return fault_page_number(index, words_); }

  /// Caution, rules and list stand on one page where a page holds them: whoever looks for a fault has them before him. Else the list
  /// stands whole on the next.
  void add_opening() {
    Block panel = make_panel(
        panel_from_words(words_, Signal::warning, "faults.panel", pole_names(context_.build(), words_)), flow_.width(),
        words_, flow_.setting());
    std::vector<Block> rules = make_rules();
    const Table index = make_index();
    const Millimetres list = table_block(index, flow_.width(), flow_.setting()).height;
    Millimetres text = panel.height + list;
    for (const Block& rule : rules) text += rule.height;
    const Millimetres gaps = look::block_gap * 2 + rule_gap * static_cast<double>(rules.size());
    // Where a little is missing, the gaps give way.
    const double share = std::min(1.0, (flow_.room() - text) / gaps), squeeze = share < least_gaps ? 1.0 : share;
    flow_.keep_whole(text + gaps * squeeze);
    flow_.add(std::move(panel), {});
    for (std::size_t i = 0; i < rules.size(); ++i)
      flow_.add(std::move(rules[i]), (i == 0 ? look::block_gap : rule_gap) * squeeze);
    flow_.keep_whole(list, look::block_gap * squeeze);
    add_table(flow_, index, look::block_gap * squeeze);
  }

  std::vector<Block> make_rules() const {
    auto values = pole_names(context_.build(), words_);
    values.emplace_back("sheet", sheet_mark(context_.id_prefix + "tests", "live"));
    std::vector<Block> rules;
    for (int i = 1; words_.has("faults.rule_" + std::to_string(i)); ++i)
      rules.push_back(hanging("\u2022", words_("faults.rule_" + std::to_string(i), values)));
    return rules;
  }

  Block hanging(const std::string& mark, const std::string& said) const {
    return set_list_item({mark}, marked_spans(said, look::text, look::text_bold), hang, flow_.width(), flow_.setting());
  }

  /// A line of the list: what is seen and when, and in each hook-up the chart for it.
  struct IndexLine {
    std::vector<std::string> seen;
    std::string when;
    std::vector<int> charts;  ///< by entry; -1: none
  };

  /// 'F3 sheet 60' as links; with several hook-ups in one narrow cell.
  Cell chart_cell(int chart) const {
    if (chart < 0) return text_cell("");
    return fault_page_cell(context_, number(static_cast<std::size_t>(chart)),
                           is_several() ? ReferenceLines::two : ReferenceLines::one);
  }

  Row index_row(const IndexLine& line) const {
    Cell see;
    for (const std::string& symptom : line.seen)
      see.lines.push_back({{{symptom, look::table_bold, look::ink, {}}}, Align::left, {}});
    Row row{{std::move(see), text_cell(line.when)}};
    for (const int chart : line.charts) row.cells.push_back(chart_cell(chart));
    return row;
  }

  /// In words, each once.
  static std::vector<std::string> symptoms_of(const FaultWords& say, const std::vector<Symptom>& symptoms) {
    std::vector<std::string> said;
    for (const Symptom& symptom : symptoms)
      if (const std::string see = say.symptom(symptom); std::find(said.begin(), said.end(), see) == said.end())
        said.push_back(see);
    return said;
  }

  std::vector<IndexLine> index_lines() const {
    std::vector<IndexLine> lines;
    for (std::size_t b = 0; b < book_.charts.size(); ++b)
      for (const std::size_t e : book_.charts[b].entries) {
        const FaultWords& say = *say_[book_.charts[b].entries.front()];
        const FaultChart& chart = first_of(b);
        IndexLine line{symptoms_of(say, chart.symptoms), say.situation(chart.diagnosis.symptom.situation), {}};
        auto same = std::find_if(lines.begin(), lines.end(), [&](const IndexLine& other) {
          return other.seen == line.seen && other.when == line.when && other.charts[e] < 0;
        });
        if (same == lines.end()) {
          line.charts.assign(book_.entries.size(), -1);
          same = lines.insert(lines.end(), std::move(line));
        }
        same->charts[e] = static_cast<int>(b);
      }
    const auto for_all = [&](const char* title, std::size_t chart) {
      return IndexLine{{words_(title)}, {}, std::vector<int>(book_.entries.size(), static_cast<int>(chart))};
    };
    if (book_.has_blows()) lines.push_back(for_all("faults.blows_title", book_.charts.size()));
    if (!book_.has_odd()) return lines;
    lines.push_back(for_all("faults.odd_title", book_.odd_index()));
    // What cannot wait stands first.
    IndexLine burning = for_all("faults.burning", book_.odd_index());
    burning.when = words_("faults.burning_at_once", pole_names(context_.build(), words_));
    lines.insert(lines.begin(), std::move(burning));
    return lines;
  }

  const FaultChart& first_of(std::size_t chart) const {
    return book_.entries[book_.charts[chart].entries.front()].plan.charts[book_.charts[chart].chart];
  }

  Table make_index() const {
    Table table;
    table.columns = {{words_("faults.you_see"), CellAlign::near, Wrapping::wraps, 1},
                     {words_("faults.when"), CellAlign::near, Wrapping::wraps, 0.6}};
    for (const FaultEntry& entry : book_.entries)
      table.columns.push_back({is_several() ? hook_up_letter(entry.context.build_index) : words_("faults.chart"),
                               CellAlign::near, Wrapping::keeps, 0});
    for (const IndexLine& line : index_lines()) table.rows.push_back(index_row(line));
    return table;
  }

  /// The number on a dark tab, and the trouble beside it.
  Block head(std::size_t index, const std::string& title) const {
    const bool is_right_to_left = flow_.setting().is_right_to_left;
    const Millimetres width = flow_.width(), text_width = width - tab_width - head_gap;
    Block text = set_paragraph({{{title, tab_style, look::ink, {}}}, Align::left, "H2"}, text_width, flow_.setting());
    Block block{width, std::max(tab_height, text.height), {}};
    const Millimetres tab_x = is_right_to_left ? width - tab_width : Millimetres(0);
    block.items.push_back(AnchorItem{number(index), {}});
    add_filled_rect(block.items, {tab_x, {}, tab_width, tab_height}, look::ink, Millimetres(0.8));
    add_text(block.items, {tab_x + tab_width / 2, baseline_at_middle(tab_height / 2, tab_style)}, number(index),
             tab_style, look::paper, Align::centre);
    const Point at{is_right_to_left ? Millimetres(0) : tab_width + head_gap, (block.height - text.height) / 2};
    place_block(block.items, std::move(text), at);
    return block;
  }

  /// What anyone looks at by hand before the first box; nothing for a lamp: its bulb and fuse are boxes.
  std::string by_hand(const FaultEntry& entry, const FaultChart& chart) const {
    if (chart.works_in.is_set()) return {};
    const Build& build = entry.context.build();
    switch (chart.kind) {
      case Ailing::starter:
        return words_(has_stop_switch(build) ? "faults.hand_starter_stop" : "faults.hand_starter",
                      {{"volts", fixed(weak_battery(build), 1)}});
      case Ailing::ignition:
        return words_("faults.hand_ignition");
      case Ailing::charging:
        return words_("faults.hand_charging") + overcharged(entry, chart.diagnosis.symptom.situation);
      default:
        break;
    }
    const std::vector<Inside>& insides = build.part(chart.symptoms.front().what.part).insides;
    const bool is_socket = std::any_of(insides.begin(), insides.end(), [](const Inside& i) { return i.id == "plug"; });
    return is_socket ? words_("faults.hand_socket") : std::string();
  }

  /// What no sound regulator reaches.
  std::string overcharged(const FaultEntry& entry, SituationId situation) const {
    const TerminalId pole = live_pole(entry.context.build());
    if (!pole.is_set()) return {};
    const ReadingLimits limits =
        find_reading_limits(entry.plan.bench.build, entry.plan.bench.solutions[situation.at()]);
    const double most =
        std::max(std::abs(limits.least[pole.at()].number()), std::abs(limits.most[pole.at()].number()));
    return " " + words_("faults.overcharged", {{"volts", fixed(std::ceil(most * 10) / 10, 1)}});
  }

  static bool has_stop_switch(const Build& build) {
    return std::any_of(build.parts.begin(), build.parts.end(), [](const Part& part) {
      return std::any_of(part.insides.begin(), part.insides.end(), [](const Inside& i) {
        return i.type == InsideType::switch_ && (i.id == "run" || i.id == "kill" || i.id == "stop");
      });
    });
  }

  /// At rest; below it the battery is less than three quarters full.
  static double weak_battery(const Build& build) {
    return rest_volts(BatteryType::flooded, sound::least_charge, build.electrics.nominal).number();
  }

  Block chart_head(std::size_t c) const {
    const FaultChart& chart = first_of(c);
    const BookChart& in_book = book_.charts[c];
    const FaultEntry& entry = book_.entries[in_book.entries.front()];
    const FaultWords& say = *say_[in_book.entries.front()];
    const Build& build = entry.context.build();
    std::string title = say.symptom(chart.symptoms.front());
    if (in_book.entries.size() < book_.entries.size())
      title += " (" + hook_ups_text(in_book.entries, words_) + ")";
    Block block = head(c, title);
    const SituationId situation = chart.diagnosis.symptom.situation;
    std::string set =
        words_("faults.set", {{"situation", say.situation(situation)}, {"settings", say.settings(situation)}});
    if (chart.works_in.is_set()) set += " " + words_("faults.only_in", {{"situation", say.situation(chart.works_in)}});
    const Situation& head_set = entry.plan.bench.build.situations[situation.at()];
    const bool is_in = is_in_gear(build, head_set), cranks = head_set.engine == EngineState::cranking;
    if (cranks) set += " " + words_("faults.keep_from_firing");
    if (is_in) set += " " + words_("faults.in_gear");
    if (cranks && !is_in) set += " " + words_("faults.in_neutral");
    put_below(block,
              set_paragraph({marked_spans(set, look::text, look::text_bold), Align::left, "P"}, flow_.width(),
                            flow_.setting()),
              Millimetres(1.5));
    if (const std::string first = by_hand(entry, chart); !first.empty())
      put_below(block, set_text(first, look::text, flow_.width(), flow_.setting()), {});
    std::vector<NamedElement> others;
    for (std::size_t i = 1; i < chart.symptoms.size(); ++i) others.push_back({chart.symptoms[i].what, {}});
    const auto put = [&](const std::string& said) {
      put_below(block, set_paragraph({marked_spans(said, look::text, look::text_bold), Align::left, "P"}, flow_.width(), flow_.setting()), {});
    };
    if (!others.empty()) put(words_("faults.also", {{"list", list_elements(build, others)}}));
    for (const OtherWay& way : chart.other_ways) put(say.other_way(chart, way));
    if (const char* key = odd_key(entry.plan, chart); key != nullptr)
      put(words_(key, {{"chart", number(book_.odd_index())}}));
    return block;
  }

  /// What else the chart's elements may do, which another page tells: lit when they should be off, lit without flashing.
  static const char* odd_key(const FaultPlan& plan, const FaultChart& chart) {
    if (chart.kind != Ailing::shown || chart.works_in.is_set()) return nullptr;
    bool stays_on = false, is_steady = false;
    for (const OddSymptom& odd : plan.odd)
      for (const Symptom& symptom : odd.symptoms) {
        const auto is_same = [&](const Symptom& own) { return own.what == symptom.what; };
        if (std::none_of(chart.symptoms.begin(), chart.symptoms.end(), is_same)) continue;
        stays_on = stays_on || (symptom.expected == Expected::off && symptom.seen == Expected::on);
        is_steady = is_steady || (symptom.expected == Expected::flashing && symptom.seen == Expected::on);
      }
    return is_steady ? "faults.stays_steady" : stays_on ? "faults.stays_on" : nullptr;
  }

  /// As many questions as fit on one page.
  Block whole_chart(std::size_t c) const {
    const FaultChart& chart = first_of(c);
    const std::size_t first = book_.charts[c].entries.front();
    const FaultWords& say = *say_[first];
    const ChartStyle style{words_("faults.go_to"), flow_.setting()};
    SetParagraphs texts(style.setting);
    Block block;
    std::size_t last = most_questions + 1;
    for (std::size_t most = most_questions; most > 0; --most) {
      std::vector<DrawnBox> boxes = boxes_to_draw(book_.entries[first].plan, say, chart, most);
      if (boxes.size() == last) continue;
      last = boxes.size();
      block = chart_head(c);
      put_below(block, draw_fault_chart(boxes, flow_.width(), style, texts), look::gutter);
      if (const std::string rest = say.not_asked(chart); !rest.empty() && !chart.works_in.is_set())
        put_below(block, set_text(rest, look::text, flow_.width(), flow_.setting()), Millimetres(2));
      if (block.height <= flow_.full_room()) break;
    }
    return block;
  }

  void add_blows() {
    const std::size_t index = book_.charts.size();
    flow_.keep(Millimetres(80));
    flow_.add(head(index, words_("faults.blows_title")), Millimetres(11));
    for (int i = 1; words_.has("faults.blows_" + std::to_string(i)); ++i)
      flow_.add(hanging(std::to_string(i) + ".",
                        words_("faults.blows_" + std::to_string(i), pole_names(context_.build(), words_))),
                Millimetres(1));
    add_merged([this](std::size_t e) { return blows_of(e); });
  }

  /// The tables of all hook-ups as one; `make` gives that of an entry.
  template <class Make>
  void add_merged(const Make& make) {
    std::vector<HookUpTable> tables;
    for (std::size_t e = 0; e < book_.entries.size(); ++e)
      tables.push_back({book_.entries[e].context.build_index, make(e)});
    add_table(flow_, merge_tables(context_, std::move(tables), {0}), look::paragraph_gap);
  }

  Table blows_of(std::size_t e) const {
    const FaultPlan& plan = book_.entries[e].plan;
    const Build& build = book_.entries[e].context.build();
    const FaultWords& say = *say_[e];
    Table table;
    table.columns = {{words_("fuses.fuse"), CellAlign::near, Wrapping::wraps, 0.5},
                     {words_("faults.load_side"), CellAlign::near, Wrapping::wraps, 0.25},
                     {words_("faults.first_in"), CellAlign::near, Wrapping::wraps, 0.8},
                     {words_("faults.look_at"), CellAlign::near, Wrapping::wraps, 1}};
    for (const FuseBlow& blow : plan.blows)
      table.rows.push_back({{text_cell(fuse_name(build, blow.fuse), look::table_bold),
                             text_cell(terminal_mark(build, blow.load_side)),
                             text_cell(say.situation(blow.situation)),
                             text_cell(say.list_mends(blow.suspects) + charger_behind(book_.entries[e], blow))}});
    return table;
  }

  /// In the first situation in which it charges.
  static ChargingPath charging_path(const FaultPlan& plan, InsideRef charger) {
    for (const Solution& solution : plan.bench.solutions)
      if (solution.insides[charger.part.at()][static_cast<std::size_t>(charger.inside)].is_on)
        return find_charging_path(plan.bench.build, solution, charger);
    return {};
  }

  /// A regulator whose insides fail to earth blows the fuse that it charges through.
  std::string charger_behind(const FaultEntry& entry, const FuseBlow& blow) const {
    const Build& build = entry.context.build();
    for (std::size_t p = 0; p < build.parts.size(); ++p)
      for (std::size_t i = 0; i < build.parts[p].insides.size(); ++i) {
        const InsideRef what{PartId{static_cast<std::int32_t>(p)}, static_cast<int>(i)};
        if (inside_of(build, what).type != InsideType::charger) continue;
        const ChargingPath path = charging_path(entry.plan, what);
        const bool is_next = path.insides.contains(blow.fuse) && !blow.suspects.empty() &&
                             std::all_of(blow.suspects.begin(), blow.suspects.end(), [&](int f) {
                               const Fault& fault = entry.plan.faults[static_cast<std::size_t>(f)];
                               return !fault.wire.is_set() || path.wires.contains(fault.wire);
                             });
        if (is_next) return "; " + words_("faults.shorted_inside", {{"part", name_in_sentence(words_, build.parts[p].label)}});
      }
    return {};
  }

  void add_odd() {
    flow_.keep(Millimetres(80));
    flow_.add(head(book_.odd_index(), words_("faults.odd_title")), Millimetres(11));
    flow_.add_text(words_("faults.odd_text"), look::text, Millimetres(1.5));
    add_merged([this](std::size_t e) { return odd_of(e); });
  }

  /// A starter that turns by itself is stopped before anything is looked at: often no fuse does it, nor the key.
  /// `poles`: by pole_names.
  std::string look_at(std::size_t e, const OddSymptom& odd, const std::vector<std::pair<std::string, std::string>>& poles) const {
    const Build& build = book_.entries[e].context.build();
    const std::string list = say_[e]->list_mends(odd.suspects);
    const bool turns = std::any_of(odd.symptoms.begin(), odd.symptoms.end(), [&](const Symptom& symptom) {
      return symptom.seen == Expected::on && symptom.what.inside >= 0 && is_starter_motor(build, symptom.what);
    });
    if (!turns) return list;
    return "*" + words_("faults.burning_at_once", poles) + "* " + words_("faults.then_list", {{"list", list}});
  }

  Table odd_of(std::size_t e) const {
    const FaultPlan& plan = book_.entries[e].plan;
    const FaultWords& say = *say_[e];
    Table table;
    table.columns = {{words_("faults.you_see"), CellAlign::near, Wrapping::wraps, 0.9},
                     {words_("faults.when"), CellAlign::near, Wrapping::wraps, 0.65},
                     {words_("faults.look_at"), CellAlign::near, Wrapping::wraps, 1.8}};
    const auto poles = pole_names(book_.entries[e].context.build(), words_);
    std::string act = words_("faults.burning_do", poles);
    if (!plan.burning.empty()) act += " " + words_("faults.burning_unfused", {{"list", say.list_mends(plan.burning)}});
    table.rows.push_back({{text_cell(words_("faults.burning"), look::table_bold), text_cell(words_("faults.always")),
                           Cell{{{marked_spans(act, look::table, look::table_bold), Align::left, {}}}}}});
    std::vector<std::string> last;
    for (const OddSymptom& odd : plan.odd) {
      std::vector<Paragraph> see;
      const std::vector<std::string> said = symptoms_of(say, odd.symptoms);
      if (said != last || is_several())  // of several causes in several situations the symptom is said once
        for (const std::string& one : said) see.push_back({{{one, look::table_bold, look::ink, {}}}, Align::left, {}});
      last = said;
      table.rows.push_back(
          {{Cell{std::move(see)}, text_cell(say.situation(odd.symptoms.front().situation)),
            Cell{{{marked_spans(look_at(e, odd, poles), look::table, look::table_bold), Align::left, {}}}}}});
      table.rows.back().anchor = odd_anchor(book_.entries[e].context.build(), odd);
    }
    return table;
  }

  const SheetContext& context_;
  const Words& words_;
  const ChartBook& book_;
  std::vector<std::unique_ptr<FaultWords>> say_;  ///< by entry
  PageFlow flow_;
};

}  // namespace

std::string fault_page_number(std::size_t index, const Words& words) {
  return words("faults.number", {{"number", std::to_string(index + 1)}});
}

std::string odd_anchor(const Build& build, const OddSymptom& odd) {
  const Symptom& first = odd.symptoms.front();
  return join({"odd", build.part(first.what.part).id, std::to_string(first.what.inside),
               build.situations[first.situation.at()].name, std::to_string(static_cast<int>(first.seen))},
              " ");
}

Cell fault_page_cell(const SheetContext& context, const std::string& number, ReferenceLines lines,
                     const std::string& row) {
  const LinkTarget target{context.id_prefix + "faults", row.empty() ? number : row};
  const std::string sheet = context.words()("tests.sheet", {{"sheet", sheet_mark(target.sheet, target.anchor)}});
  if (number.empty()) return {{{{{sheet, look::table_bold, look::accent, target}}, Align::left, {}}}};
  Cell cell{{{{{number, look::table_bold, look::accent, target}}, Align::left, {}}}};
  if (lines == ReferenceLines::two)
    cell.lines.push_back({{{sheet, look::table_small, look::accent, target}}, Align::left, {}});
  else
    cell.lines.front().spans.push_back({"\u00a0 " + sheet, look::table_small, look::accent, target});
  return cell;
}

std::vector<Sheet> make_fault_finding(const SheetContext& context, const ChartBook& book) {
  if (book.charts.empty()) return {};
  return FaultPages(context, book).make();
}

}  // namespace loomfolio
