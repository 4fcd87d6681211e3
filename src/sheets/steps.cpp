// SPDX-License-Identifier: MIT
// The assembly steps: one action each, numbered through, with a box to tick and a picture of what is joined.
//
// Of several hook-ups, the steps that all share stand once. They send the reader to the steps of his own hook-up, which
// are numbered with its letter, before the supply is joined, and those send him back.
#include <algorithm>
#include <utility>

#include "sheets/hook_ups.h"
#include "sheets/names.h"
#include "sheets/page_flow.h"
#include "sheets/panel.h"
#include "sheets/reference.h"
#include "sheets/sheet_makers.h"
#include "sheets/step_writer.h"

namespace loomfolio {
namespace {

constexpr Millimetres number_width(13), box_size(4.2), text_x(21), row_pad(1.3), least_row(9.5);

std::string stage_key(Stage stage) {
  switch (stage) {
    case Stage::bracket:
      return "steps.bracket";
    case Stage::splices:
      return "steps.splices";
    case Stage::earths:
      return "steps.earths";
    case Stage::signals:
      return "steps.signals";
    case Stage::supply:
      return "steps.supply";
    case Stage::fuses:
      return "steps.fuses";
    case Stage::battery:
      return "steps.battery";
    case Stage::tests:
      return "steps.tests";
  }
  return {};
}

bool is_late(Stage stage) { return stage >= Stage::supply; }

/// Number, box, sentence and notes, picture at the far side; a hairline under it.
Block step_row(const PageFlow& flow, const std::string& number, ShownAction shown) {
  const TypeSetting setting = flow.setting();
  const bool is_right_to_left = setting.is_right_to_left;
  const Millimetres picture_width = step_picture_width;
  const Millimetres width = flow.width(), text_width = width - text_x - picture_width - look::gutter;
  Block text = set_paragraph({std::move(shown.sentence), Align::left, "P"}, text_width, setting);
  for (const std::string& said : shown.notes) {
    Block note = set_paragraph({{{said, look::step_note, look::grey, {}}}, Align::left, "P"}, text_width, setting);
    const Millimetres y = text.height, height = note.height;
    place_block(text.items, std::move(note), {{}, y});
    text.height += height;
  }
  const Millimetres content = std::max({least_row, text.height, shown.picture.height});
  Block row{width, content + row_pad * 2, {}};
  const Millimetres middle = row.height / 2;
  const auto x = [&](Millimetres from_near, Millimetres size) {
    return is_right_to_left ? width - from_near - size : from_near;
  };
  row.items.push_back(TagOpenItem{"LI", {}});
  row.items.push_back(TagOpenItem{"Lbl", {}});
  add_text(row.items, {x({}, {}), baseline_at_middle(middle, look::step_number)}, number, look::step_number, look::ink,
           is_right_to_left ? Align::right : Align::left);
  row.items.push_back(TagCloseItem{});
  add_rect(row.items, {x(number_width, box_size), middle - box_size / 2, box_size, box_size},
           {look::ink, look::part_line});
  const Millimetres text_y = middle - text.height / 2, picture_y = middle - shown.picture.height / 2;
  row.items.push_back(TagOpenItem{"LBody", {}});
  place_block(row.items, std::move(text), {x(text_x, text_width), text_y});
  row.items.push_back(TagCloseItem{});
  const Millimetres picture_at = is_right_to_left ? Millimetres(0) : width - picture_width;
  place_block(row.items, std::move(shown.picture), {picture_at, picture_y});
  row.items.push_back(TagCloseItem{});
  add_line(row.items, {{}, row.height}, {width, row.height}, {look::hairline_grey, look::thin_line});
  return row;
}

/// All hook-ups do the same once their signal wires are joined.
bool is_end_shared(const SheetContext& context) {
  for (std::size_t b = 0; b < context.hook_ups->builds.size(); ++b) {
    SheetContext own{context.input, *context.hook_ups->builds[b], {}, {}};
    own.hook_ups = context.hook_ups;
    own.build_index = b;
    own.extent = Extent::own;
    for (const StagePlan& plan : plan_assembly(own.solved, own.words()))
      for (const ActionGroup& group : plan.groups)
        for (const Action& action : group.actions)
          if (is_late(plan.stage) && shows_action(own, action)) return false;
  }
  return true;
}

std::string intro_of(const SheetContext& context) {
  if (context.extent == Extent::own) return context.words()("steps.own_intro");
  return context.words()("steps.intro") + " " + context.words()("steps.ends", {{"sheet", sheet_mark("crimps")}});
}

class StepPages {
 public:
  explicit StepPages(const SheetContext& context)
      : context_(context),
        words_(context.words()),
        flow_(context, {"steps", words_("steps.title"), intro_of(context)}) {}

  std::vector<Sheet> make() {
    const bool is_whole = context_.extent == Extent::whole;
    const bool ends_shared = is_whole || is_end_shared(context_);
    const std::vector<StagePlan> plans = plan_assembly(context_.solved, words_);
    for (const StagePlan& plan : plans)
      if (!is_late(plan.stage)) add_stage(plan);
    if (context_.extent == Extent::common) add_ways_out();
    const bool has_end = is_whole || ends_shared == (context_.extent == Extent::common);
    is_end_ = true;
    for (const StagePlan& plan : plans)
      if (has_end && is_late(plan.stage)) add_stage(plan);
    if (context_.extent == Extent::own && ends_shared) add_way_back();
    return flow_.take();
  }

 private:
  void add_stage(const StagePlan& plan) {
    StagePlan shown{plan.stage, {}};
    for (const ActionGroup& group : plan.groups) {
      ActionGroup kept{group.title, group.part, {}};
      for (const Action& action : group.actions)
        if (is_end_ || shows_action(context_, action)) kept.actions.push_back(action);
      if (!kept.actions.empty()) shown.groups.push_back(std::move(kept));
    }
    if (shown.groups.empty()) return;
    add_stage_head(plan.stage);
    for (const ActionGroup& group : shown.groups) add_group(group);
  }

  void add_stage_head(Stage stage) {
    const std::string key = stage_key(stage);
    flow_.add_heading(words_(key + "_title"), Millimetres(45));
    if (words_.has(key + "_text")) flow_.add_text(words_(key + "_text"), look::text, look::paragraph_gap);
    if (!words_.has(key + "_hazard")) return;
    const Signal signal = stage == Stage::fuses ? Signal::notice : Signal::warning;
    auto values = pole_names(context_.build(), words_);
    values.emplace_back("sheet", sheets_of(context_, "tests"));
    flow_.add(make_panel(panel_from_words(words_, signal, key, values), flow_.width(), words_, flow_.setting()),
              look::gutter);
  }

  void add_group(const ActionGroup& group) {
    for (std::size_t i = 0; i < group.actions.size(); ++i) {
      const Action& action = group.actions[i];
      Block row = step_row(flow_, next_number(), show_action(context_, action));
      Block head = i == 0 && !group.title.empty() ? group_head(group.title) : Block{};
      Block caution = action.caution.empty() ? Block{}
                                             : make_panel({Signal::caution, action.caution, {}, {}}, flow_.width(),
                                                          words_, flow_.setting());
      flow_.keep(head.height + caution.height + row.height + look::block_gap);
      if (head.height.number() > 0) flow_.add(std::move(head), look::gutter);
      if (caution.height.number() > 0) flow_.add(std::move(caution), look::paragraph_gap);
      flow_.add(std::move(row), {});
    }
  }

  /// '7'; in a hook-up's own steps 'B7'.
  std::string next_number() {
    const std::string letter = context_.extent == Extent::own ? hook_up_letter(context_.build_index) : "";
    return letter + std::to_string(++number_);
  }

  Block group_head(const std::string& title) const {
    Block block =
        set_paragraph({{{title, look::text_bold, look::ink, {}}}, Align::left, "H3"}, flow_.width(), flow_.setting());
    block.height += Millimetres(0.8);
    add_line(block.items, {{}, block.height}, {block.width, block.height}, {look::ink, look::part_line});
    return block;
  }

  /// A line in a box that leads somewhere.
  Block way(const std::vector<std::pair<std::string, LinkTarget>>& lines, const std::string& head) const {
    const Millimetres width = flow_.width(), pad = look::panel_pad;
    Block block{width, pad, {}};
    const auto put = [&](const Paragraph& paragraph) {
      Block text = set_paragraph(paragraph, width - pad * 2, flow_.setting());
      const Millimetres height = text.height;
      place_block(block.items, std::move(text), {pad, block.height});
      block.height += height;
    };
    put({{{head, look::heading, look::ink, {}}}, Align::left, "P"});
    block.height += Millimetres(1);
    for (const auto& [text, target] : lines) put({{{text, look::text_bold, look::accent, target}}, Align::left, "P"});
    block.height += pad;
    add_rect(block.items, {{}, {}, width, block.height}, {look::ink, look::heavy_line}, Millimetres(1.5));
    return block;
  }

  void add_ways_out() {
    std::vector<std::pair<std::string, LinkTarget>> lines;
    for (std::size_t b = 0; b < context_.hook_ups->builds.size(); ++b) {
      const Build& build = context_.hook_ups->builds[b]->build;
      const std::string run = build.variant + "/steps";
      const std::string label = build.variant_label.empty() ? build.variant : build.variant_label;
      lines.push_back(
          {words_("steps.way_out", {{"letter", hook_up_letter(b)}, {"label", label}, {"sheet", sheet_mark(run)}}),
           {run, {}}});
    }
    Block block = way(lines, words_("steps.way_out_title"));
    block.items.insert(block.items.begin(), AnchorItem{"steps go on", {}});
    flow_.add(std::move(block), look::heading_gap);
  }

  void add_way_back() {
    const LinkTarget target{"steps", "steps go on"};
    const std::string text = words_("steps.way_back", {{"sheet", sheet_mark("steps", "steps go on")}});
    flow_.add(way({{text, target}}, words_("steps.way_back_title")), look::block_gap);
  }

  const SheetContext& context_;
  const Words& words_;
  PageFlow flow_;
  int number_ = 0;
  bool is_end_ = false;  ///< from here on every action of a stage is shown
};

}  // namespace

std::vector<Sheet> make_steps(const SheetContext& context) {
  if (context.build().wires.empty()) return {};
  return StepPages(context).make();
}

}  // namespace loomfolio
