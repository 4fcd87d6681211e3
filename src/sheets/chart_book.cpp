// SPDX-License-Identifier: MIT
// Two hook-ups share a chart when it reads the same for both.
#include <algorithm>
#include <utility>

#include "base/side_by_side.h"
#include "sheets/fault_pages.h"
#include "sheets/hook_ups.h"

namespace loomfolio {
namespace {

constexpr std::size_t most_asked = 16;

void add_lines(std::string& text, const std::vector<Paragraph>& lines, const std::string& prefix) {
  for (const Paragraph& line : lines)
    for (const Span& span : line.spans) {
      std::string said = span.text;
      // References name the hook-up's own sheets; where they lead to is told by their anchors.
      for (std::size_t at = said.find(prefix); !prefix.empty() && at != std::string::npos; at = said.find(prefix, at))
        said.erase(at, prefix.size());
      text += said;
    }
  text += '\n';
}

/// All that the chart says, in one text.
std::string text_of(const FaultEntry& entry, const FaultWords& say, const FaultChart& chart) {
  std::string text;
  for (const Symptom& symptom : chart.symptoms) text += say.symptom(symptom) + '\n';
  const SituationId situation = chart.diagnosis.symptom.situation;
  text += say.situation(situation) + '\n' + say.settings(situation) + '\n' + say.not_asked(chart) + '\n';
  for (const DrawnBox& box : boxes_to_draw(entry.plan, say, chart, most_asked)) {
    add_lines(text, box.question, entry.context.id_prefix);
    for (const DrawnExit& exit : box.exits) {
      text += exit.reading + std::to_string(exit.next) + '\n';
      add_lines(text, exit.end, entry.context.id_prefix);
    }
  }
  return text;
}

struct SaidChart {
  std::string title, text;
};

/// What each chart of each entry says, by entry and chart.
std::vector<std::vector<SaidChart>> say_charts(const std::vector<FaultEntry>& entries) {
  std::vector<std::vector<SaidChart>> said;
  for (const FaultEntry& entry : entries) {
    const FaultWords say(entry.context, entry.plan, 0);
    std::vector<SaidChart>& own = said.emplace_back(entry.plan.charts.size());
    work_side_by_side(own.size(), [&](std::size_t c) {
      const FaultChart& chart = entry.plan.charts[c];
      own[c] = {say.symptom(chart.symptoms.front()) + (chart.works_in.is_set() ? "\n" : ""), text_of(entry, say, chart)};
    });
  }
  return said;
}

std::vector<SaidChart>::const_iterator find_text(const std::vector<SaidChart>& known, const std::string& text) {
  return std::find_if(known.begin(), known.end(), [&](const SaidChart& k) { return k.text == text; });
}

/// `known` is what the book's charts say, by chart of the book.
void add_charts(ChartBook& book, std::vector<SaidChart>& known, std::size_t index, const std::vector<SaidChart>& said) {
  for (std::size_t c = 0; c < said.size(); ++c) {
    const SaidChart& one = said[c];
    if (const auto same = find_text(known, one.text); same != known.end()) {
      book.charts[static_cast<std::size_t>(same - known.begin())].entries.push_back(index);
      continue;
    }
    // Behind the last of the same trouble, else at the end.
    const auto alike =
        std::find_if(known.rbegin(), known.rend(), [&](const SaidChart& k) { return k.title == one.title; });
    const auto at = alike == known.rend() ? known.end() - known.begin() : alike.base() - known.begin();
    known.insert(known.begin() + at, one);
    book.charts.insert(book.charts.begin() + at, {{index}, c});
  }
}

}  // namespace

bool ChartBook::has_blows() const {
  return std::any_of(entries.begin(), entries.end(), [](const FaultEntry& entry) { return !entry.plan.blows.empty(); });
}

bool ChartBook::has_odd() const {
  return std::any_of(entries.begin(), entries.end(), [](const FaultEntry& entry) { return !entry.plan.odd.empty(); });
}

std::size_t ChartBook::odd_index() const { return charts.size() + (has_blows() ? 1 : 0); }

ChartBook make_chart_book(const SheetContext& context) {
  ChartBook book;
  const auto add = [&](SheetContext own) {
    const SolvedBuild& solved = own.solved;
    FaultPlan plan;
    if (solved.fault_plan.valid())
      plan = solved.fault_plan.get();
    else if (!solved.solutions.empty())
      plan = plan_faults(solved.build, solved.solutions);
    book.entries.push_back({std::move(own), std::move(plan), {}});
  };
  if (context.hook_ups == nullptr) add(context);
  if (context.hook_ups != nullptr)
    for (SheetContext& own : own_contexts(context)) add(std::move(own));
  const auto said = say_charts(book.entries);
  std::vector<SaidChart> known;
  for (std::size_t e = 0; e < book.entries.size(); ++e) add_charts(book, known, e, said[e]);
  // By text again, now that all have their places: the first hook-up's chart may stand for another's.
  for (std::size_t e = 0; e < book.entries.size(); ++e)
    for (const SaidChart& one : said[e])
      book.entries[e].numbers.push_back(static_cast<std::size_t>(find_text(known, one.text) - known.begin()));
  return book;
}

std::vector<DrawnBox> boxes_to_draw(const FaultPlan& plan, const FaultWords& say, const FaultChart& chart,
                                    std::size_t most) {
  std::vector<DrawnBox> drawn;
  const std::vector<ChartBox> boxes = cut_chart(plan, chart, most);
  for (std::size_t b = 0; b < boxes.size(); ++b) {
    const ChartBox& box = boxes[b];
    DrawnBox out;
    out.below = box.below;
    if (box.probe >= 0) out.question = say.question(chart, boxes, b);
    for (const ChartExit& exit : box.exits)
      out.exits.push_back({box.probe >= 0 ? say.reading(chart, box, exit) : std::string(), exit.next,
                           exit.next < 0 ? say.end(chart, box, exit) : std::vector<Paragraph>()});
    drawn.push_back(std::move(out));
  }
  return drawn;
}

}  // namespace loomfolio
