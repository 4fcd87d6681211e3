// SPDX-License-Identifier: MIT
// Fault finding: a list of what a person may see, a chart for each function that fails, then what blows fuses and what
// is on or weak that should not be. A chart takes at most one page; what it cannot ask for want of room stands together
// in one end.
#include <algorithm>
#include <utility>

#include "check/paths.h"
#include "sheets/fault_chart.h"
#include "sheets/fault_pages.h"
#include "sheets/fault_words.h"
#include "sheets/names.h"
#include "sheets/page_flow.h"
#include "sheets/panel.h"
#include "sheets/reference.h"
#include "sheets/table.h"

namespace loomfolio {
namespace {

constexpr std::size_t most_questions = 16;  // no page has room for more
constexpr Millimetres tab_width(11), tab_height(7.2), head_gap(2.5), hang(5);
constexpr TextStyle cause_style{FaceName::sans, Weight::regular, 9}, seen_style{FaceName::sans, Weight::bold, 9};
constexpr TextStyle tab_style{FaceName::sans, Weight::bold, 12};

class FaultPages {
 public:
  FaultPages(const SheetContext& context, const FaultPlan& plan)
      : context_(context),
        build_(context.build()),
        words_(context.words()),
        plan_(plan),
        say_(context, plan_),
        flow_(context, {"faults", words_("faults.title"), words_("faults.intro")}) {}

  std::vector<Sheet> make() {
    const auto poles = pole_names(build_, words_);
    flow_.add(make_panel(panel_from_words(words_, Signal::warning, "faults.panel", poles), flow_.width(), words_,
                         flow_.setting()),
              {});
    add_rules();
    add_index();
    for (std::size_t c = 0; c < plan_.charts.size(); ++c) add_chart(c);
    if (!plan_.blows.empty()) add_blows();
    if (!plan_.odd.empty()) add_odd();
    return flow_.take();
  }

 private:
  std::string number(std::size_t index) const { return fault_page_number(index, words_); }

  void add_rules() {
    auto values = pole_names(build_, words_);
    values.emplace_back("sheet", sheet_mark(context_.id_prefix + "tests"));
    for (int i = 1; words_.has("faults.rule_" + std::to_string(i)); ++i)
      flow_.add(hanging("\u2022", words_("faults.rule_" + std::to_string(i), values)),
                i == 1 ? look::block_gap : Millimetres(0.6));
  }

  /// A bullet or a number, and its text clear of it on every line.
  Block hanging(const std::string& mark, const std::string& said) const {
    const bool is_right_to_left = flow_.setting().is_right_to_left;
    const Millimetres width = flow_.width();
    Block block{width, {}, {}};
    Block sign = set_text(mark, look::text, hang, flow_.setting());
    Block text = set_paragraph({marked_spans(said, look::text, look::text_bold), Align::left, "P"}, width - hang,
                               flow_.setting());
    block.height = text.height;
    place_block(block.items, std::move(sign), {is_right_to_left ? width - hang : Millimetres(0), {}});
    place_block(block.items, std::move(text), {is_right_to_left ? Millimetres(0) : hang, {}});
    return block;
  }

  Row index_row(const std::vector<std::string>& seen, const std::string& when, std::size_t index) const {
    const LinkTarget target{context_.id_prefix + "faults", number(index)};
    const auto linked = [&](const std::string& text) {
      return Cell{{{{{text, look::table_bold, look::accent, target}}, Align::left, {}}}};
    };
    Cell see;
    for (const std::string& symptom : seen)
      see.lines.push_back({{{symptom, look::table_bold, look::ink, {}}}, Align::left, {}});
    return {{std::move(see), text_cell(when), linked(number(index)), linked(sheet_mark(target.sheet, target.anchor))}};
  }

  /// In words, each once.
  std::vector<std::string> symptoms_of(const std::vector<Symptom>& symptoms) const {
    std::vector<std::string> said;
    for (const Symptom& symptom : symptoms)
      if (const std::string see = say_.symptom(symptom); std::find(said.begin(), said.end(), see) == said.end())
        said.push_back(see);
    return said;
  }

  void add_index() {
    Table table;
    table.columns = {{words_("faults.you_see"), CellAlign::near, Wrapping::wraps, 1},
                     {words_("faults.when"), CellAlign::near, Wrapping::wraps, 0.6},
                     {words_("faults.chart"), CellAlign::near, Wrapping::keeps, 0},
                     {words_("faults.sheet"), CellAlign::near, Wrapping::keeps, 0}};
    for (std::size_t c = 0; c < plan_.charts.size(); ++c)
      table.rows.push_back(index_row(symptoms_of(plan_.charts[c].symptoms),
                                     say_.situation(plan_.charts[c].diagnosis.symptom.situation), c));
    std::size_t next = plan_.charts.size();
    if (!plan_.blows.empty()) table.rows.push_back(index_row({words_("faults.blows_title")}, {}, next++));
    if (!plan_.odd.empty()) table.rows.push_back(index_row({words_("faults.odd_title")}, {}, next));
    if (!plan_.odd.empty() && !plan_.burning.empty())
      table.rows.push_back(index_row({words_("faults.burning")}, {}, next));
    add_table(flow_, table, look::block_gap);
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

  void put_below(Block& block, Block next, Millimetres gap) const {
    const Millimetres y = block.height + gap, height = next.height;
    place_block(block.items, std::move(next), {{}, y});
    block.height = y + height;
  }

  /// What anyone looks at by hand before the first box; nothing for a lamp: its bulb and fuse are boxes.
  static std::string_view hand_key(const FaultChart& chart) {
    if (chart.works_in.is_set()) return {};
    switch (chart.kind) {
      case Ailing::starter:
        return "faults.hand_starter";
      case Ailing::ignition:
        return "faults.hand_ignition";
      case Ailing::charging:
        return "faults.hand_charging";
      default:
        return {};
    }
  }

  Block chart_head(std::size_t c) const {
    const FaultChart& chart = plan_.charts[c];
    Block block = head(c, say_.symptom(chart.symptoms.front()));
    const SituationId situation = chart.diagnosis.symptom.situation;
    std::string set =
        words_("faults.set", {{"situation", say_.situation(situation)}, {"settings", say_.settings(situation)}});
    if (chart.works_in.is_set()) set += " " + words_("faults.only_in", {{"situation", say_.situation(chart.works_in)}});
    if (is_in_gear(build_, plan_.bench.build.situations[situation.at()])) set += " " + words_("faults.in_gear");
    put_below(block,
              set_paragraph({marked_spans(set, look::text, look::text_bold), Align::left, "P"}, flow_.width(),
                            flow_.setting()),
              Millimetres(1.5));
    if (const std::string_view first = hand_key(chart); !first.empty())
      put_below(block, set_text(words_(first), look::text, flow_.width(), flow_.setting()), {});
    if (chart.symptoms.size() < 2) return block;
    std::vector<NamedElement> others;
    for (std::size_t i = 1; i < chart.symptoms.size(); ++i) others.push_back({chart.symptoms[i].what, {}});
    put_below(block,
              set_text(words_("faults.also", {{"list", list_elements(build_, others)}}), look::text, flow_.width(),
                       flow_.setting()),
              {});
    return block;
  }

  std::vector<DrawnBox> boxes_to_draw(const FaultChart& chart, std::size_t most) const {
    std::vector<DrawnBox> drawn;
    const std::vector<ChartBox> boxes = cut_chart(plan_, chart, most);
    for (std::size_t b = 0; b < boxes.size(); ++b) {
      const ChartBox& box = boxes[b];
      DrawnBox out;
      out.below = box.below;
      if (box.probe >= 0) out.question = say_.question(chart, boxes, b);
      for (const ChartExit& exit : box.exits)
        out.exits.push_back({box.probe >= 0 ? say_.reading(chart, box, exit) : std::string(), exit.next,
                             exit.next < 0 ? say_.end(chart, box, exit) : std::vector<Paragraph>()});
      drawn.push_back(std::move(out));
    }
    return drawn;
  }

  /// As many questions as fit on one page.
  Block whole_chart(std::size_t c) const {
    const FaultChart& chart = plan_.charts[c];
    const ChartStyle style{words_("faults.go_to"), flow_.setting()};
    Block block;
    std::size_t last = most_questions + 1;
    for (std::size_t most = most_questions; most > 0; --most) {
      std::vector<DrawnBox> boxes = boxes_to_draw(chart, most);
      if (boxes.size() == last) continue;
      last = boxes.size();
      block = chart_head(c);
      put_below(block, draw_fault_chart(boxes, flow_.width(), style), look::gutter);
      if (const std::string rest = say_.not_asked(chart); !rest.empty() && !chart.works_in.is_set())
        put_below(block, set_text(rest, look::text, flow_.width(), flow_.setting()), Millimetres(2));
      if (block.height <= flow_.full_room()) break;
    }
    return block;
  }

  void add_chart(std::size_t c) { flow_.add(whole_chart(c), Millimetres(11)); }

  void add_blows() {
    const std::size_t index = plan_.charts.size();
    flow_.keep(Millimetres(80));
    flow_.add(head(index, words_("faults.blows_title")), Millimetres(11));
    for (int i = 1; words_.has("faults.blows_" + std::to_string(i)); ++i)
      flow_.add(hanging(std::to_string(i) + ".", words_("faults.blows_" + std::to_string(i))), Millimetres(1));
    Table table;
    table.columns = {{words_("fuses.fuse"), CellAlign::near, Wrapping::wraps, 0.5},
                     {words_("faults.load_side"), CellAlign::near, Wrapping::wraps, 0.25},
                     {words_("faults.first_in"), CellAlign::near, Wrapping::wraps, 0.8},
                     {words_("faults.look_at"), CellAlign::near, Wrapping::wraps, 1}};
    for (const FuseBlow& blow : plan_.blows)
      table.rows.push_back({{text_cell(fuse_name(build_, blow.fuse), seen_style),
                             text_cell(terminal_mark(build_, blow.load_side), cause_style),
                             text_cell(say_.situation(blow.situation), cause_style),
                             text_cell(say_.list_mends(blow.suspects), cause_style)}});
    add_table(flow_, table, look::paragraph_gap);
  }

  void add_odd() {
    const std::size_t index = plan_.charts.size() + (plan_.blows.empty() ? 0 : 1);
    flow_.keep(Millimetres(80));
    flow_.add(head(index, words_("faults.odd_title")), Millimetres(11));
    flow_.add_text(words_("faults.odd_text"), look::text, Millimetres(1.5));
    Table table;
    table.columns = {{words_("faults.you_see"), CellAlign::near, Wrapping::wraps, 1},
                     {words_("faults.when"), CellAlign::near, Wrapping::wraps, 0.6},
                     {words_("faults.look_at"), CellAlign::near, Wrapping::wraps, 1}};
    if (!plan_.burning.empty()) {
      const std::string act = words_("faults.burning_do", {{"list", say_.list_mends(plan_.burning)}});
      table.rows.push_back(
          {{text_cell(words_("faults.burning"), seen_style), text_cell(words_("faults.always"), cause_style),
            Cell{{{marked_spans(act, cause_style, seen_style), Align::left, {}}}}}});
    }
    std::vector<std::string> last;
    for (const OddSymptom& odd : plan_.odd) {
      std::vector<Paragraph> see;
      const std::vector<std::string> said = symptoms_of(odd.symptoms);
      if (said != last)  // of several causes in several situations the symptom is said once
        for (const std::string& one : said) see.push_back({{{one, seen_style, look::ink, {}}}, Align::left, {}});
      last = said;
      table.rows.push_back(
          {{Cell{std::move(see)}, text_cell(say_.situation(odd.symptoms.front().situation), cause_style),
            text_cell(say_.list_mends(odd.suspects), cause_style)}});
    }
    add_table(flow_, table, look::paragraph_gap);
  }

  const SheetContext& context_;
  const Build& build_;
  const Words& words_;
  const FaultPlan& plan_;
  FaultWords say_;
  PageFlow flow_;
};

}  // namespace

std::string fault_page_number(std::size_t index, const Words& words) {
  return words("faults.number", {{"number", std::to_string(index + 1)}});
}

std::vector<Sheet> make_fault_finding(const SheetContext& context, const FaultPlan& plan) {
  if (plan.charts.empty()) return {};
  return FaultPages(context, plan).make();
}

}  // namespace loomfolio
