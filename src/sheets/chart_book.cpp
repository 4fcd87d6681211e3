// SPDX-License-Identifier: MIT
// Two hook-ups share a chart when it reads the same for both.
#include <algorithm>
#include <utility>

#include "sheets/fault_chart_pages.h"
#include "sheets/hook_ups.h"

namespace loomfolio {
namespace {

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
  for (const DrawnBox& box : boxes_to_draw(entry.plan, say, chart, most_chart_questions)) {
    add_lines(text, box.question, entry.context.id_prefix);
    for (const DrawnExit& exit : box.exits) {
      text += exit.reading + std::to_string(exit.next) + '\n';
      add_lines(text, exit.end, entry.context.id_prefix);
    }
  }
  return text;
}

struct KnownChart {
  std::string title, text;
};

void add_charts(ChartBook& book, std::vector<KnownChart>& known, std::size_t index) {
  const FaultEntry& entry = book.entries[index];
  const FaultWords say(entry.context, entry.plan, 0);
  for (std::size_t c = 0; c < entry.plan.charts.size(); ++c) {
    const FaultChart& chart = entry.plan.charts[c];
    KnownChart one{say.symptom(chart.symptoms.front()) + (chart.works_in.is_set() ? "\n" : ""),
                   text_of(entry, say, chart)};
    const auto same =
        std::find_if(known.begin(), known.end(), [&](const KnownChart& k) { return k.text == one.text; });
    if (same != known.end()) {
      book.charts[static_cast<std::size_t>(same - known.begin())].entries.push_back(index);
      continue;
    }
    // Behind the last of the same trouble, else at the end.
    const auto alike =
        std::find_if(known.rbegin(), known.rend(), [&](const KnownChart& k) { return k.title == one.title; });
    const auto at = alike == known.rend() ? known.end() - known.begin() : alike.base() - known.begin();
    known.insert(known.begin() + at, std::move(one));
    book.charts.insert(book.charts.begin() + at, {{index}, c});
  }
}

/// By text again: the first hook-up's chart may stand for another's. `known` is by chart of the book.
void number_charts(ChartBook& book, const std::vector<KnownChart>& known) {
  for (std::size_t e = 0; e < book.entries.size(); ++e) {
    FaultEntry& entry = book.entries[e];
    const FaultWords say(entry.context, entry.plan, 0);
    for (const FaultChart& chart : entry.plan.charts) {
      const std::string text = text_of(entry, say, chart);
      const auto same = std::find_if(known.begin(), known.end(), [&](const KnownChart& k) { return k.text == text; });
      entry.numbers.push_back(static_cast<std::size_t>(same - known.begin()));
    }
  }
}

}  // namespace

bool ChartBook::has_blows() const {
  return std::any_of(entries.begin(), entries.end(), [](const FaultEntry& entry) { return !entry.plan.blows.empty(); });
}

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
  std::vector<KnownChart> known;
  for (std::size_t e = 0; e < book.entries.size(); ++e) add_charts(book, known, e);
  number_charts(book, known);
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
