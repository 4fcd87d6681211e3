// SPDX-License-Identifier: MIT
// Which hook-up is yours: questions that lead to one hook-up and its sheets, on one page. Only where there is a choice.
//
// The questions are a tree: where some of the hook-ups have a part and others have not, it asks for the part; where all
// have the same parts, the author's own words tell them apart.
#include <algorithm>
#include <utility>

#include "sheets/hook_ups.h"
#include "sheets/page_flow.h"
#include "sheets/reference.h"
#include "sheets/sheet_makers.h"
#include "sheets/table.h"

namespace loomfolio {
namespace {

constexpr Millimetres chooser_indent(9), chooser_pad(2.2), branch_gap(3.5), letter_size(8);

using Choices = std::vector<std::size_t>;  ///< hook-ups still possible, by build

const Part* find_part(const Build& build, const std::string& id) {
  for (const Part& part : build.parts)
    if (part.id == id) return &part;
  return nullptr;
}

/// The first part that some of them have and others have not.
const Part* parting_part(const HookUps& hook_ups, const Choices& choices) {
  for (const std::size_t with : choices)
    for (const Part& part : hook_ups.builds[with]->build.parts)
      for (const std::size_t other : choices)
        if (find_part(hook_ups.builds[other]->build, part.id) == nullptr) return &part;
  return nullptr;
}

/// Things one under the other, each at its own indent.
class Ladder {
 public:
  explicit Ladder(Millimetres width) : block_{width, {}, {}} {}
  Point put(Block part, Millimetres x, Millimetres gap) {
    const Millimetres y = block_.height + (block_.height.number() > 0 ? gap : Millimetres(0)), height = part.height;
    place_block(block_.items, std::move(part), {x, y});
    block_.height = y + height;
    return {x, y};
  }
  Items& items() { return block_.items; }
  Millimetres height() const { return block_.height; }
  Block take() { return std::move(block_); }

 private:
  Block block_;
};

class Chooser {
 public:
  explicit Chooser(const SheetContext& context)
      : context_(context),
        hook_ups_(*context.hook_ups),
        words_(context.words()),
        flow_(context, {"chooser", words_("chooser.title"), words_("chooser.intro")}),
        ladder_(flow_.width()) {}

  std::vector<Sheet> make() {
    Choices all;
    for (std::size_t b = 0; b < hook_ups_.builds.size(); ++b) all.push_back(b);
    ask(all, {});
    flow_.add(ladder_.take(), {});
    flow_.add_text(words_("chooser.unsure"), look::text_bold, look::block_gap);
    add_beginning();
    add_differences();
    return flow_.take();
  }

 private:
  /// Puts the question that parts them, and below each answer what then follows.
  void ask(const Choices& choices, Millimetres x) {
    if (choices.size() == 1) return put_leaf(choices.front(), x);
    const Part* part = parting_part(hook_ups_, choices);
    if (part == nullptr) return ask_author(choices, x);
    asked_.push_back(part->id);
    Choices with, without;
    for (const std::size_t b : choices)
      (find_part(hook_ups_.builds[b]->build, part->id) != nullptr ? with : without).push_back(b);
    const char* key = part->provided == Provider::machine ? "chooser.has_part" : "chooser.fit_part";
    const Millimetres from = put_question(words_(key, {{"part", part->label}}), x);
    answer(words_("chooser.yes"), with, x, from);
    answer(words_("chooser.no"), without, x, from);
  }

  void answer(const std::string& text, const Choices& choices, Millimetres x, Millimetres from) {
    const Millimetres at = put_answer(text, x);
    ask(choices, x + chooser_indent);
    draw_branch(x, from, at);
  }

  void ask_author(const Choices& choices, Millimetres x) {
    const Millimetres from = put_question(words_("chooser.which"), x);
    for (const std::size_t b : choices) {
      put_leaf(b, x + chooser_indent);
      draw_branch(x, from, last_leaf_ + letter_size / 2);
    }
  }

  Millimetres put_question(const std::string& text, Millimetres x) {
    const Millimetres width = flow_.width() - x;
    Block inner = set_paragraph({marked_spans(text, look::heading, look::heading), Align::left, "P"},
                                width - chooser_pad * 2, flow_.setting());
    Block box{width, inner.height + chooser_pad * 2, {}};
    add_boxed_rect(box.items, {{}, {}, width, box.height}, look::band, {look::ink, look::part_line}, Millimetres(1.5));
    place_block(box.items, std::move(inner), {chooser_pad, chooser_pad});
    ladder_.put(std::move(box), x, branch_gap);
    return ladder_.height();
  }

  Millimetres put_answer(const std::string& text, Millimetres x) {
    Block block = set_paragraph({{{text, look::text_bold, look::ink, {}}}, Align::left, "P"},
                                flow_.width() - x - chooser_indent, flow_.setting());
    const Millimetres half = block.height / 2;
    return ladder_.put(std::move(block), x + chooser_indent, branch_gap).y + half;
  }

  /// From the question's lower edge down to the answer.
  void draw_branch(Millimetres x, Millimetres from, Millimetres to) {
    const Millimetres stem = x + chooser_indent / 3;
    Items& items = ladder_.items();
    items.push_back(TagOpenItem{"Artifact", {}});
    add_polyline(items, {{stem, from}, {stem, to}, {x + chooser_indent - Millimetres(1.2), to}}, {look::ink, look::part_line});
    items.push_back(TagCloseItem{});
  }

  /// Letter, name, when it is the one, and where its sheets are.
  void put_leaf(std::size_t b, Millimetres x) {
    const Build& build = hook_ups_.builds[b]->build;
    const Millimetres text_x = letter_size + look::gutter, width = flow_.width() - x - text_x;
    Block block{flow_.width() - x, {}, {}};
    const auto put = [&](const Paragraph& paragraph) {
      Block text = set_paragraph(paragraph, width, flow_.setting());
      const Millimetres height = text.height;
      place_block(block.items, std::move(text), {text_x, block.height});
      block.height += height;
    };
    put({{{build.variant_label.empty() ? build.variant : build.variant_label, look::text_bold, look::ink, {}}},
         Align::left,
         "P"});
    if (!build.variant_when.empty()) put({{{build.variant_when, look::text, look::ink, {}}}, Align::left, "P"});
    for (const AuthorStep& step : build.steps)
      if (step.before == "start") put_condition(block, step.text, text_x, width);
    const std::string prefix = build.variant + "/";
    const auto link = [&](const char* key, const std::string& sheet, const std::string& anchor) {
      return Span{words_(key, {{"sheet", sheet_mark(sheet, anchor)}}), look::text_bold, look::accent, {sheet, anchor}};
    };
    put({{link("chooser.diagram", prefix, {}), {"   ", look::text, look::ink, {}}, link("chooser.own", prefix, "own")},
         Align::left,
         "P"});
    block.height = std::max(block.height, letter_size);
    add_boxed_rect(block.items, {{}, {}, letter_size, letter_size}, look::ink, {look::ink, look::part_line},
                   Millimetres(1));
    add_text(block.items, {letter_size / 2, baseline_at_middle(letter_size / 2, look::heading)}, hook_up_letter(b),
             look::heading, look::paper, Align::centre);
    last_leaf_ = ladder_.put(std::move(block), x, branch_gap).y;
  }

  /// What must be true before any work is done, with a box to tick.
  void put_condition(Block& block, const std::string& condition, Millimetres x, Millimetres width) const {
    const Millimetres box(3.6), indent_by = box + Millimetres(2);
    Block text = set_paragraph({{{words_("chooser.conditions") + ": ", look::text_bold, look::ink, {}},
                                 {condition, look::text, look::ink, {}}},
                                Align::left,
                                "P"},
                               width - indent_by, flow_.setting());
    const Millimetres baseline = block.height + look::line_step(look::text) * look::baseline_share;
    add_rect(block.items, {x, baseline - box + Millimetres(0.5), box, box}, {look::ink, look::part_line});
    const Millimetres height = text.height;
    place_block(block.items, std::move(text), {x + indent_by, block.height});
    block.height += height;
  }

  /// Where the work begins, whichever it is.
  void add_beginning() {
    if (context_.build().wires.empty()) return;
    const std::string text = words_("chooser.begin", {{"sheet", sheet_mark("steps")}});
    flow_.add(set_paragraph({{{text, look::text_bold, look::accent, {"steps", {}}}}, Align::left, "P"}, flow_.width(),
                            flow_.setting()),
              look::paragraph_gap);
  }

  /// Which parts each hook-up has that not all have.
  void add_differences() {
    const std::vector<std::pair<std::string, std::vector<bool>>> rows = differing();
    if (rows.empty()) return;
    Table table;
    table.columns.push_back({words_("chooser.part"), CellAlign::near, Wrapping::wraps, 1});
    for (std::size_t b = 0; b < hook_ups_.builds.size(); ++b)
      table.columns.push_back({hook_up_letter(b), CellAlign::near, Wrapping::keeps, 0.12});
    for (const auto& [name, in] : rows) {
      Row row{{text_cell(name, look::text)}};
      for (const bool is_in : in) {
        Cell cell = text_cell("", look::text);
        if (is_in) cell.picture = used_mark();
        row.cells.push_back(std::move(cell));
      }
      table.rows.push_back(std::move(row));
    }
    flow_.add_heading(words_("chooser.differences"));
    flow_.add_lead(words_("chooser.differences_text"), look::paragraph_gap);
    add_table(flow_, table, look::paragraph_gap * 2);
  }

  /// A filled disc; its place in the row says which hook-up.
  static Block used_mark() {
    const Millimetres size(3);
    Block block{size, size, {}};
    add_circle(block.items, {size / 2, size / 2}, size * 0.4, {false, {}}, {true, look::ink});
    return block;
  }

  bool is_asked(const std::string& part) const { return std::find(asked_.begin(), asked_.end(), part) != asked_.end(); }

  /// Names of what differs and was not asked for, in the order of first appearance, and who has it.
  std::vector<std::pair<std::string, std::vector<bool>>> differing() const {
    std::vector<std::pair<std::string, std::vector<bool>>> rows;
    const auto note = [&](const std::string& name, std::size_t b) {
      auto found = std::find_if(rows.begin(), rows.end(), [&](const auto& row) { return row.first == name; });
      if (found == rows.end()) found = rows.insert(rows.end(), {name, std::vector<bool>(hook_ups_.builds.size())});
      found->second[b] = true;
    };
    for (std::size_t b = 0; b < hook_ups_.builds.size(); ++b) {
      const Build& build = hook_ups_.builds[b]->build;
      for (std::size_t p = 0; p < build.parts.size(); ++p)
        if (!hook_ups_.shared[b].parts[p] && !is_asked(build.parts[p].id)) note(build.kind_of(build.parts[p]).name, b);
    }
    return rows;
  }

  const SheetContext& context_;
  const HookUps& hook_ups_;
  const Words& words_;
  PageFlow flow_;
  Ladder ladder_;
  Millimetres last_leaf_;
  std::vector<std::string> asked_;  ///< ids of the parts that a question named
};

}  // namespace

std::vector<Sheet> make_chooser(const SheetContext& context) {
  if (context.hook_ups == nullptr) return {};
  return Chooser(context).make();
}

}  // namespace loomfolio
